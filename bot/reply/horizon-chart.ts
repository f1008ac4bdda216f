/** A site's horizon profile, drawn: what stands in the way, all round from north to north. */
import { besideAxis, compassUnder, frameWithin, levelLine, scale, titled } from './chart-frame.js';
import { CHART } from './palette.js';
import type { HorizonChart } from './reply.js';
import { area, curve, type Point, type Marks } from './marks.js';

const FRAME = frameWithin({ left: 62, right: 22, top: 62, bottom: 44 });

/** The profile closed round the circle: its altitude at 0° and 360° is drawn between its last and first points. */
const closed = (points: HorizonChart['points']): [number, number][] => {
  const sorted = [...points].sort((a, b) => a.azimuthDeg - b.azimuthDeg);
  const first = sorted[0];
  const last = sorted.at(-1);
  if (first === undefined || last === undefined)
    return [
      [0, 0],
      [360, 0],
    ];
  const gap = first.azimuthDeg + 360 - last.azimuthDeg;
  const atNorth =
    gap === 0
      ? first.altitudeDeg
      : last.altitudeDeg + (first.altitudeDeg - last.altitudeDeg) * ((360 - last.azimuthDeg) / gap);
  return [
    [0, atNorth],
    ...sorted.map(({ azimuthDeg, altitudeDeg }): [number, number] => [azimuthDeg, altitudeDeg]),
    [360, atNorth],
  ];
};

/** The chart's marks, on a ground that is there already. */
export const horizonChartMarks = ({ title, points }: HorizonChart): Marks => {
  const topDeg = Math.max(30, ...points.map(({ altitudeDeg }) => Math.ceil(altitudeDeg / 10) * 10));
  const xOf = scale([0, 360], [FRAME.left, FRAME.right]);
  const yOf = scale([0, topDeg], [FRAME.bottom, FRAME.top]);
  const profile = closed(points).map(([azimuthDeg, altitudeDeg]): Point => [xOf(azimuthDeg), yOf(altitudeDeg)]);
  const heights = Array.from({ length: topDeg / 10 + 1 }, (_, i) => 10 * i);
  return [
    titled(title, []),
    ...heights.map((altitudeDeg) => curve(levelLine(FRAME, yOf(altitudeDeg)), { colour: CHART.grid, width: 1 })),
    area([...profile, [FRAME.right, FRAME.bottom], [FRAME.left, FRAME.bottom]], CHART.horizon, 0.9),
    curve(profile, { colour: CHART.limit, width: 4 }),
    ...heights
      .filter((_, i) => heights.length < 7 || i % 2 === 0)
      .map((altitudeDeg) => besideAxis(`${altitudeDeg}°`, yOf(altitudeDeg), FRAME)),
    compassUnder(xOf, FRAME),
  ].flat();
};
