/** Where the tube landed beside each of several stars, drawn over the sky from north round to north, and what a fit leaves of that. */
import {
  SHEET_WIDTH,
  WORD_SIZE,
  besideAxis,
  compassUnder,
  frameWithin,
  levelLine,
  scale,
  titled,
} from './chart-frame.js';
import { createLabels } from './labels.js';
import { CHART } from './palette.js';
import type { MissChart } from './reply.js';
import { curve, diamond, fitted, type Point, type Marks } from './marks.js';

const FRAME = frameWithin({ left: 62, right: 22, top: 132, bottom: 44 });
const HEIGHTS: readonly number[] = [0, 30, 60, 90];
/** The longest miss, and the longest remainder, are drawn so long. */
const LONGEST_PX = 78;
const HEAD_PX = 9;
/** Remainders are drawn larger than the misses by one of these. */
const ENLARGED: readonly number[] = [1, 2, 5, 10, 20, 50, 100];

type Offset = readonly [number, number];

const arrowLine = ([x, y]: Point, [across, up]: Offset, pxPerDeg: number): readonly Point[] => [
  [x, y],
  [x + across * pxPerDeg, y - up * pxPerDeg],
];

const lengthOf = ([across, up]: Offset): number => Math.hypot(across, up);

const arrow = (
  [x, y]: Point,
  [across, up]: Offset,
  pxPerDeg: number,
  style: { colour: string; width: number },
): Marks => {
  const [dx, dy] = [across * pxPerDeg, -up * pxPerDeg];
  const length = Math.hypot(dx, dy);
  if (length < 1) return [];
  const tip: Point = [x + dx, y + dy];
  const barb = (side: 1 | -1): Point => [
    tip[0] - (HEAD_PX * (dx - side * dy * 0.6)) / length,
    tip[1] - (HEAD_PX * (dy + side * dx * 0.6)) / length,
  ];
  return [...curve([[x, y], tip], style), ...curve([barb(1), tip, barb(-1)], style)];
};

/** "1.9°", "42′". */
const angle = (deg: number): string => (deg >= 1.5 ? `${deg.toFixed(1)}°` : `${Math.round(deg * 60)}′`);

/** The chart's marks, on a ground that is there already. */
export const missChartMarks = ({ title, stars }: MissChart): Marks => {
  const xOf = scale([0, 360], [FRAME.left, FRAME.right]);
  const yOf = scale([0, 90], [FRAME.bottom, FRAME.top]);
  const longest = Math.max(1e-6, ...stars.map(({ seen }) => lengthOf(seen)));
  const longestLeft = Math.max(1e-6, ...stars.map(({ left }) => lengthOf(left)));
  const pxPerDeg = LONGEST_PX / longest;
  const enlarged = ENLARGED.filter((times) => longestLeft * times <= longest).at(-1) ?? 1;
  const under = [
    `Thin: the miss, the longest ${angle(longest)}.`,
    `Thick: left over, at most ${angle(longestLeft)}${enlarged === 1 ? '' : `, drawn ${enlarged} times as large`}.`,
  ];
  const spot = ({ altitudeDeg, azimuthDeg }: MissChart['stars'][number]): Point => [xOf(azimuthDeg), yOf(altitudeDeg)];
  const place = createLabels(
    { left: FRAME.left, right: SHEET_WIDTH, top: FRAME.top - 20, bottom: FRAME.bottom },
    stars.flatMap((star) => [[spot(star), spot(star)], arrowLine(spot(star), star.seen, pxPerDeg)]),
  );
  return [
    titled(title, under),
    ...HEIGHTS.map((altitudeDeg) => curve(levelLine(FRAME, yOf(altitudeDeg)), { colour: CHART.grid, width: 1 })),
    ...stars.map((star) => {
      const { name, seen, left } = star;
      const at = spot(star);
      const [x, y] = at;
      return [
        diamond(at, 7, CHART.best, CHART.ground),
        arrow(at, seen, pxPerDeg, { colour: CHART.moon, width: 2 }),
        arrow(at, left, pxPerDeg * enlarged, { colour: CHART.target, width: 5 }),
        place(
          fitted(name, WORD_SIZE, 170),
          [
            { at: [x + 12, y + 28] },
            { at: [x - 12, y + 28], anchor: 'end' },
            { at: [x + 12, y - 14] },
            { at: [x - 12, y - 14], anchor: 'end' },
            { at: [x + 16, y + 8] },
            { at: [x - 16, y + 8], anchor: 'end' },
          ],
          { size: WORD_SIZE, colour: CHART.ink, rim: CHART.ground },
          true,
        ),
      ].flat();
    }),
    ...HEIGHTS.map((altitudeDeg) => besideAxis(`${altitudeDeg}°`, yOf(altitudeDeg), FRAME)),
    compassUnder(xOf, FRAME),
  ].flat();
};
