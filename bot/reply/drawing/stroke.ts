/** The shape of a drawn line: outlines of one closed piece each, and the pieces of a dashed line. */
import type { Point } from '../marks.js';

/** A turn sharper than this (as the cosine of the angle) is rounded on its outer side, as the charts' lines are. */
const SHARP_COS = 0.9;
/** Pieces to half a circle. */
const ROUND_PIECES = 8;

const distinct = (points: readonly Point[]): readonly Point[] =>
  points.filter(([x, y], i) => {
    const before = points[i - 1];
    return before === undefined || Math.hypot(x - before[0], y - before[1]) > 1e-6;
  });

const directionOf = ([x0, y0]: Point, [x1, y1]: Point): Point => {
  const length = Math.hypot(x1 - x0, y1 - y0);
  return [(x1 - x0) / length, (y1 - y0) / length];
};

/** The points on one side of a bend: one where it is gentle or on the inner side, an arc on the outer side of a sharp one. */
const sideOfBend = ([x, y]: Point, before: Point, after: Point, half: number): readonly Point[] => {
  const cos = before[0] * after[0] + before[1] * after[1];
  const turn = before[0] * after[1] - before[1] * after[0];
  const isOuter = turn > 0;
  if (cos > SHARP_COS || !isOuter) {
    // Where the two offset lines meet; kept near on a turn that all but goes back.
    const stretch = half / Math.max(0.25, 1 + cos);
    return [[x + (before[1] + after[1]) * stretch, y - (before[0] + after[0]) * stretch]];
  }
  const from = Math.atan2(-before[0], before[1]);
  const angle = Math.atan2(turn, cos);
  const pieces = Math.max(1, Math.ceil((ROUND_PIECES * angle) / Math.PI));
  return Array.from({ length: pieces + 1 }, (_, i): Point => {
    const at = from + (angle * i) / pieces;
    return [x + half * Math.cos(at), y + half * Math.sin(at)];
  });
};

const oneSide = (points: readonly Point[], half: number): Point[] => {
  const ways = points.slice(1).map((point, i) => directionOf(points[i] as Point, point));
  return points.flatMap((point, i): readonly Point[] => {
    const [before = ways[i], after = ways[i - 1]] = [ways[i - 1], ways[i]];
    return sideOfBend(point, before as Point, after as Point, half);
  });
};

/** A line of some width, cut square at its ends, as one closed outline. Nothing of fewer than two points. */
export const strokeOutline = (line: readonly Point[], width: number): readonly Point[] => {
  const points = distinct(line);
  if (points.length < 2) return [];
  return [...oneSide(points, width / 2), ...oneSide([...points].reverse(), width / 2)];
};

/** A line cut into dashes, of this length and with gaps of that. */
export const dashesOf = (line: readonly Point[], [dash, gap]: Point): readonly (readonly Point[])[] => {
  const dashes: Point[][] = [];
  let isDown = true;
  let left = dash;
  let open: Point[] = line[0] === undefined ? [] : [line[0]];
  for (const [i, to] of line.entries()) {
    let from = line[i - 1];
    if (from === undefined) continue;
    let length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    while (length > left) {
      const share = left / length;
      from = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
      length -= left;
      if (isDown) dashes.push([...open, from]);
      isDown = !isDown;
      open = [from];
      left = isDown ? dash : gap;
    }
    left -= length;
    if (isDown) open.push(to);
  }
  if (isDown && open.length > 1) dashes.push(open);
  return dashes;
};
