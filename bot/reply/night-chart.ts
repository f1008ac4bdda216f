/** The altitude curve through one night, drawn: twilight bands, Moon, minimum altitude, own horizon, now, best. */
import { besideAxis, clock, frameWithin, hourTicks, scale, titled, underAxis } from './chart-frame.js';
import { CHART } from './palette.js';
import type { ChartPoint, NightChart } from './reply.js';
import { area, curve, diamond, dot, rectangle, words, type Point } from './svg.js';

const FRAME = frameWithin({ left: 76, right: 28, top: 112, bottom: 56 });
const LOWEST_DEG = -10;
const HIGHEST_DEG = 90;
const yOf = scale([LOWEST_DEG, HIGHEST_DEG], [FRAME.bottom, FRAME.top]);

const BAND_WORD = {
  day: 'day',
  civil: 'civil twilight',
  nautical: 'nautical twilight',
  astronomical: 'astronomical twilight',
  dark: 'dark',
} as const;
/** Above this share of the width a band's word stands level, above the next upright; in what is narrower it has no room. */
const LEVEL_WORD_SHARE = 0.24;
const UPRIGHT_WORD_SHARE = 0.018;

type XOf = (utcMs: number) => number;

const bands = ({ bands: spans, startUtcMs, endUtcMs }: NightChart, xOf: XOf): string =>
  spans
    .map(({ fromUtcMs, toUtcMs, band }) => {
      const share = (toUtcMs - fromUtcMs) / (endUtcMs - startUtcMs);
      const isShort = band === 'day' || band === 'dark';
      const isLevel = share > (isShort ? LEVEL_WORD_SHARE / 3 : LEVEL_WORD_SHARE);
      const left = xOf(fromUtcMs);
      const middle = (left + xOf(toUtcMs)) / 2;
      const ground = rectangle([left, FRAME.top], [xOf(toUtcMs) - left, FRAME.bottom - FRAME.top], CHART.bands[band]);
      const style = { colour: CHART.faint, anchor: 'middle' } as const;
      if (isLevel) return ground + words(BAND_WORD[band], [middle, FRAME.top + 23], { ...style, size: 20 });
      if (isShort || share <= UPRIGHT_WORD_SHARE) return ground;
      const at: Point = [middle + 5, (FRAME.top + FRAME.bottom) / 2];
      return ground + words(BAND_WORD[band], at, { ...style, size: 15, isUpright: true });
    })
    .join('');

/** Near its best the word stands over the curve, which a direction under it does not meet; at the edges it turns inward. */
const bestWord = ({ startUtcMs, endUtcMs, zone }: NightChart, best: ChartPoint, [x, y]: Point): string => {
  const share = (best.utcMs - startUtcMs) / (endUtcMs - startUtcMs);
  const text = `best ${clock(best.utcMs, zone)}, ${Math.round(best.altitudeDeg)}°`;
  const style = { size: 22, colour: CHART.best, rim: CHART.ground };
  if (share < 0.14) return words(text, [x + 23, y + 8], style);
  if (share > 0.86) return words(text, [x - 23, y + 8], { ...style, anchor: 'end' });
  return words(text, [x, best.altitudeDeg > 78 ? y + 41 : y - 26], { ...style, anchor: 'middle' });
};

/** Directions stand under the curve, but for those that would meet the best's own word. */
const BEST_CLEAR_MS = 45 * 60_000;
const compassPoints = ({ compass = [], best }: NightChart, xOf: XOf): string =>
  compass
    .filter(({ utcMs }) => best === null || best.altitudeDeg <= 78 || Math.abs(utcMs - best.utcMs) > BEST_CLEAR_MS)
    .map(({ utcMs, altitudeDeg, word }) => {
      const [x, y]: Point = [xOf(utcMs), yOf(altitudeDeg)];
      return dot([x, y], 4.5, CHART.ink) + words(word, [x, y + 29], { size: 20, colour: CHART.ink, anchor: 'middle' });
    })
    .join('');

const horizonArea = (points: readonly ChartPoint[], xOf: XOf): string => {
  const along = points.map(({ utcMs, altitudeDeg }): Point => [
    xOf(utcMs),
    yOf(Math.min(HIGHEST_DEG, Math.max(LOWEST_DEG, altitudeDeg))),
  ]);
  const [first, last] = [along[0], along.at(-1)];
  if (first === undefined || last === undefined) return '';
  return (
    area([...along, [last[0], FRAME.bottom], [first[0], FRAME.bottom]], CHART.horizon, 0.75) +
    curve(along, { colour: CHART.horizon, width: 2 })
  );
};

const level = (altitudeDeg: number): Point[] => [
  [FRAME.left, yOf(altitudeDeg)],
  [FRAME.right, yOf(altitudeDeg)],
];

const leastHeight = (minimumAltitudeDeg: number | null): string =>
  minimumAltitudeDeg === null || minimumAltitudeDeg <= 0
    ? ''
    : curve(level(minimumAltitudeDeg), { colour: CHART.limit, width: 2, dashes: [2, 3] }) +
      words(`useful from ${minimumAltitudeDeg}°`, [FRAME.left + 6, yOf(minimumAltitudeDeg) + 20], {
        size: 17,
        colour: CHART.limit,
        rim: CHART.ground,
      });

const nowLine = ({ nowUtcMs, startUtcMs, endUtcMs }: NightChart, xOf: XOf): string => {
  if (nowUtcMs === null || nowUtcMs <= startUtcMs || nowUtcMs >= endUtcMs) return '';
  const x = xOf(nowUtcMs);
  const line: Point[] = [
    [x, FRAME.top],
    [x, FRAME.bottom],
  ];
  return (
    curve(line, { colour: CHART.now, width: 3 }) +
    words('now', [x, FRAME.top - 9], { size: 20, colour: CHART.now, anchor: 'middle' })
  );
};

const axes = ({ startUtcMs, endUtcMs, zone }: NightChart, xOf: XOf): string =>
  [
    ...[30, 60].map((altitudeDeg) => curve(level(altitudeDeg), { colour: CHART.grid, width: 1 })),
    curve(level(0), { colour: CHART.ink, width: 2 }),
    ...[0, 30, 60, 90].map((altitudeDeg) => besideAxis(`${altitudeDeg}°`, yOf(altitudeDeg), FRAME)),
    ...hourTicks(startUtcMs, endUtcMs, zone)
      .filter(({ hour }) => hour % 2 === 0)
      .map(({ utcMs, hour }) => underAxis(String(hour).padStart(2, '0'), xOf(utcMs), FRAME)),
  ].join('');

const under = ({ moonCurve, horizonCurve, zone }: NightChart): string =>
  `${moonCurve.length === 0 ? '' : 'Dashed: the Moon. '}${horizonCurve === undefined ? '' : 'Green: your horizon. '}Times in ${zone.replace(/_/gu, ' ')}`;

/** The chart's marks, on a ground that is there already. */
export const nightChartMarks = (chart: NightChart): string => {
  const { title, startUtcMs, endUtcMs, curve: path, moonCurve, minimumAltitudeDeg, horizonCurve, best } = chart;
  const xOf = scale([startUtcMs, endUtcMs], [FRAME.left, FRAME.right]);
  // A curve that leaves the picture is interrupted, not flattened along its edge.
  const inside = (points: readonly ChartPoint[]): (Point | null)[] =>
    points.map(({ utcMs, altitudeDeg }) => (altitudeDeg < LOWEST_DEG ? null : [xOf(utcMs), yOf(altitudeDeg)]));
  const bestAt: Point | null = best === null ? null : [xOf(best.utcMs), yOf(best.altitudeDeg)];
  return [
    titled(title, under(chart)),
    bands(chart, xOf),
    axes(chart, xOf),
    horizonCurve === undefined ? '' : horizonArea(horizonCurve, xOf),
    nowLine(chart, xOf),
    curve(inside(moonCurve), { colour: CHART.moon, width: 3, dashes: [12, 7] }),
    leastHeight(minimumAltitudeDeg),
    curve(inside(path), { colour: CHART.target, width: 5 }),
    compassPoints(chart, xOf),
    bestAt === null ? '' : diamond(bestAt, 12, CHART.best, CHART.ground),
    best === null || bestAt === null ? '' : bestWord(chart, best, bestAt),
  ].join('');
};
