/** Where the tube landed beside each of several stars, drawn over the sky from north round to north, and what a fit leaves of that. */
import { besideAxis, compassUnder, frameWithin, levelLine, scale, titled } from './chart-frame.js';
import { CHART } from './palette.js';
import type { MissChart } from './reply.js';
import { curve, fitted, words, type Point } from './svg.js';

const FRAME = frameWithin({ left: 76, right: 28, top: 92, bottom: 56 });
const HEIGHTS: readonly number[] = [0, 30, 60, 90];
/** The longest miss, and the longest remainder, are drawn so long. */
const LONGEST_PX = 78;
const HEAD_PX = 9;
/** Remainders are drawn larger than the misses by one of these. */
const ENLARGED: readonly number[] = [1, 2, 5, 10, 20, 50, 100];

type Offset = readonly [number, number];
const lengthOf = ([across, up]: Offset): number => Math.hypot(across, up);

const arrow = (
  [x, y]: Point,
  [across, up]: Offset,
  pxPerDeg: number,
  style: { colour: string; width: number },
): string => {
  const [dx, dy] = [across * pxPerDeg, -up * pxPerDeg];
  const length = Math.hypot(dx, dy);
  if (length < 1) return '';
  const tip: Point = [x + dx, y + dy];
  const barb = (side: 1 | -1): Point => [
    tip[0] - (HEAD_PX * (dx - side * dy * 0.6)) / length,
    tip[1] - (HEAD_PX * (dy + side * dx * 0.6)) / length,
  ];
  return curve([[x, y], tip], style) + curve([barb(1), tip, barb(-1)], style);
};

/** "1.9°", "42′". */
const angle = (deg: number): string => (deg >= 1.5 ? `${deg.toFixed(1)}°` : `${Math.round(deg * 60)}′`);

/** The chart's marks, on a ground that is there already. */
export const missChartMarks = ({ title, stars }: MissChart): string => {
  const xOf = scale([0, 360], [FRAME.left, FRAME.right]);
  const yOf = scale([0, 90], [FRAME.bottom, FRAME.top]);
  const longest = Math.max(1e-6, ...stars.map(({ seen }) => lengthOf(seen)));
  const longestLeft = Math.max(1e-6, ...stars.map(({ left }) => lengthOf(left)));
  const pxPerDeg = LONGEST_PX / longest;
  const enlarged = ENLARGED.filter((times) => longestLeft * times <= longest).at(-1) ?? 1;
  const under = `thin: the miss, the longest ${angle(longest)}; thick: what the fit leaves, the most ${angle(longestLeft)}${enlarged === 1 ? '' : `, drawn ${enlarged} times as large`}`;
  return [
    titled(title, under),
    ...HEIGHTS.map((altitudeDeg) => curve(levelLine(FRAME, yOf(altitudeDeg)), { colour: CHART.grid, width: 1 })),
    ...stars.map(({ name, altitudeDeg, azimuthDeg, seen, left }) => {
      const at: Point = [xOf(azimuthDeg), yOf(altitudeDeg)];
      const isRight = azimuthDeg > 300;
      return [
        words('◆', [at[0], at[1] + 6], { size: 16, colour: CHART.best, anchor: 'middle' }),
        arrow(at, seen, pxPerDeg, { colour: CHART.moon, width: 2 }),
        arrow(at, left, pxPerDeg * enlarged, { colour: CHART.target, width: 5 }),
        words(fitted(name, 20, 180), [at[0] + (isRight ? -14 : 14), at[1] + 30], {
          size: 20,
          colour: CHART.ink,
          anchor: isRight ? 'end' : 'start',
          rim: CHART.ground,
        }),
      ].join('');
    }),
    ...HEIGHTS.map((altitudeDeg) => besideAxis(`${altitudeDeg}°`, yOf(altitudeDeg), FRAME)),
    compassUnder(xOf, FRAME),
  ].join('');
};
