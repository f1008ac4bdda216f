/** Finds free places for a chart's words, so that no two meet and none lies on a curve where another place is free. */
import { textWidth, words, type Point, type WordStyle, type Marks } from './marks.js';

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Place {
  readonly at: Point;
  readonly anchor?: WordStyle['anchor'];
}

/** Share of the type size over and under the line on which the letters stand. */
const ASCENT = 0.76;
const DESCENT = 0.2;
const SHARE_BEFORE = { start: 0, middle: 0.5, end: 1 } as const;
/** Room kept round words, in pixels. */
const APART = 3;

const boxOf = (text: string, { at: [x, y], anchor = 'start' }: Place, { size, isUpright = false }: WordStyle): Box => {
  const length = textWidth(text, size);
  const before = length * SHARE_BEFORE[anchor];
  return isUpright
    ? { left: x - size * ASCENT, right: x + size * DESCENT, top: y - (length - before), bottom: y + before }
    : { left: x - before, right: x - before + length, top: y - size * ASCENT, bottom: y + size * DESCENT };
};

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right + APART && b.left < a.right + APART && a.top < b.bottom + APART && b.top < a.bottom + APART;

const holds = ({ left, right, top, bottom }: Box, [x, y]: Point): boolean =>
  x > left - APART && x < right + APART && y > top - APART && y < bottom + APART;

const within = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom;

/** Points a few pixels apart along a line, so that none slips between two of them. */
const STEP_PX = 6;
const dense = (line: readonly (Point | null)[]): Point[] =>
  line.flatMap((point, i) => {
    const next = line[i + 1];
    if (point === null) return [];
    if (next === null || next === undefined) return [point];
    const steps = Math.max(1, Math.ceil(Math.hypot(next[0] - point[0], next[1] - point[1]) / STEP_PX));
    return Array.from({ length: steps }, (_, k): Point => [
      point[0] + ((next[0] - point[0]) * k) / steps,
      point[1] + ((next[1] - point[1]) * k) / steps,
    ]);
  });

/** `must`: written even where each place crosses a curve; words never meet words. */
export type PlaceWords = (text: string, places: readonly Place[], style: WordStyle, must?: boolean) => Marks;

/**
 * Takes words in the order of their weight.
 * @param bounds where words may stand
 * @param lines curves they keep clear of
 */
export const createLabels = (bounds: Box, lines: readonly (readonly (Point | null)[])[]): PlaceWords => {
  const taken: Box[] = [];
  const points = lines.flatMap(dense);
  return (text, places, style, must = false) => {
    const free = places
      .map((place) => ({ place, box: boxOf(text, place, style) }))
      .filter(({ box }) => within(box, bounds) && !taken.some((other) => meet(box, other)));
    const crossings = ({ box }: (typeof free)[number]): number => points.filter((point) => holds(box, point)).length;
    const chosen =
      free.find(({ box }) => !points.some((point) => holds(box, point))) ??
      (must
        ? free.map((each) => ({ ...each, crossed: crossings(each) })).sort((a, b) => a.crossed - b.crossed)[0]
        : undefined);
    if (chosen === undefined) return [];
    taken.push(chosen.box);
    const { at, anchor } = chosen.place;
    return words(text, at, { ...style, ...(anchor === undefined ? {} : { anchor }) });
  };
};
