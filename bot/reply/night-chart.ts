/** The altitude curve through one night, drawn: twilight bands, Moon, minimum altitude, own horizon, now, best. */
import {
  besideAxis,
  clock,
  frameWithin,
  hourTicks,
  levelLine,
  scale,
  titled,
  underAxis,
  uprightLine,
} from './chart-frame.js';
import { CHART } from './palette.js';
import { bestWithin } from './best-within.js';
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

/** Half the height of an upright word, and how near a curve may come to it, in degrees of altitude. */
const WORD_HALF_DEG = 17;
const CLEAR_DEG = 4;
const UPRIGHT_PLACES_DEG = [45, 70, 20] as const;

/** The first place at which no curve runs through a word that stands in a span; the freest where each does. */
const freePlaceDeg = ({ curve: path, moonCurve }: NightChart, fromUtcMs: number, toUtcMs: number): number => {
  const there = [...path, ...moonCurve].filter(({ utcMs }) => utcMs >= fromUtcMs && utcMs <= toUtcMs);
  const roomAt = (placeDeg: number): number =>
    Math.min(...there.map(({ altitudeDeg }) => Math.abs(altitudeDeg - placeDeg)), 90);
  const free = UPRIGHT_PLACES_DEG.find((placeDeg) => roomAt(placeDeg) > WORD_HALF_DEG + CLEAR_DEG);
  return free ?? [...UPRIGHT_PLACES_DEG].sort((a, b) => roomAt(b) - roomAt(a))[0] ?? 45;
};

const bands = (chart: NightChart, xOf: XOf): string => {
  const { bands: spans, startUtcMs, endUtcMs } = chart;
  return spans
    .map(({ fromUtcMs, toUtcMs, band }) => {
      const share = (toUtcMs - fromUtcMs) / (endUtcMs - startUtcMs);
      const isShort = band === 'day' || band === 'dark';
      const isLevel = share > (isShort ? LEVEL_WORD_SHARE / 3 : LEVEL_WORD_SHARE);
      const left = xOf(fromUtcMs);
      const middle = (left + xOf(toUtcMs)) / 2;
      const ground = rectangle([left, FRAME.top], [xOf(toUtcMs) - left, FRAME.bottom - FRAME.top], CHART.bands[band]);
      const style = { colour: CHART.faint, anchor: 'middle' } as const;
      // Under the horizon, where no curve runs for long.
      if (isLevel) return ground + words(BAND_WORD[band], [middle, FRAME.bottom - 13], { ...style, size: 20 });
      if (isShort || share <= UPRIGHT_WORD_SHARE) return ground;
      const at: Point = [middle + 5, yOf(freePlaceDeg(chart, fromUtcMs, toUtcMs))];
      return ground + words(BAND_WORD[band], at, { ...style, size: 15, isUpright: true });
    })
    .join('');
};

/** Higher than this a word over the curve would leave the frame; nearer than that to the word for now it would meet it. */
const HIGH_DEG = 78;
const NOW_CLEAR = 130;

/** Near its best the word stands over the curve, which a direction under it does not meet; at the edges it turns inward. */
const bestWord = (chart: NightChart, best: ChartPoint, [x, y]: Point, nowX: number | null): string => {
  const { startUtcMs, endUtcMs, zone } = chart;
  const share = (best.utcMs - startUtcMs) / (endUtcMs - startUtcMs);
  const text = `best ${clock(best.utcMs, zone)}, ${Math.round(best.altitudeDeg)}°`;
  const style = { size: 22, colour: CHART.best, rim: CHART.ground };
  if (share < 0.14) return words(text, [x + 23, y + 8], style);
  if (share > 0.86) return words(text, [x - 23, y + 8], { ...style, anchor: 'end' });
  // Near the zenith it stands over the frame, beside the word for now.
  if (best.altitudeDeg <= HIGH_DEG) return words(text, [x, y - 26], { ...style, anchor: 'middle' });
  if (nowX === null || Math.abs(nowX - x) > NOW_CLEAR)
    return words(text, [x, FRAME.top - 9], { ...style, anchor: 'middle' });
  const isRight = nowX > x;
  return words(text, [nowX + (isRight ? -28 : 28), FRAME.top - 9], { ...style, anchor: isRight ? 'end' : 'start' });
};

/** Directions stand under the curve, but for those that would lie on the line for now. */
const NOW_LINE_CLEAR = 26;
const compassPoints = ({ compass = [] }: NightChart, xOf: XOf, nowX: number | null): string =>
  compass
    .filter(({ utcMs }) => nowX === null || Math.abs(xOf(utcMs) - nowX) > NOW_LINE_CLEAR)
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

const level = (altitudeDeg: number): readonly Point[] => levelLine(FRAME, yOf(altitudeDeg));

/** Its word stands at the left under the line, or at the right or over it where the curve runs there. */
const leastWord = (minimumAltitudeDeg: number, path: readonly ChartPoint[]): string => {
  const share = Math.ceil(path.length * 0.17);
  const isFree = (points: readonly ChartPoint[]): boolean =>
    points.every(({ altitudeDeg }) => altitudeDeg > minimumAltitudeDeg + 1 || altitudeDeg < minimumAltitudeDeg - 7);
  const [isLeft, isRight] = [isFree(path.slice(0, share)), isFree(path.slice(-share))];
  const y = yOf(minimumAltitudeDeg) + (isLeft || isRight ? 20 : -8);
  const isAtRight = !isLeft && isRight;
  return words(`useful from ${minimumAltitudeDeg}°`, [isAtRight ? FRAME.right - 6 : FRAME.left + 6, y], {
    size: 17,
    colour: CHART.limit,
    rim: CHART.ground,
    anchor: isAtRight ? 'end' : 'start',
  });
};

const leastHeight = ({ minimumAltitudeDeg, curve: path }: NightChart): string =>
  minimumAltitudeDeg === null || minimumAltitudeDeg <= 0
    ? ''
    : curve(level(minimumAltitudeDeg), { colour: CHART.limit, width: 2, dashes: [2, 3] }) +
      leastWord(minimumAltitudeDeg, path);

/** Where the line for now stands; null where now is of another night. */
const nowXOf = ({ nowUtcMs, startUtcMs, endUtcMs }: NightChart, xOf: XOf): number | null =>
  nowUtcMs === null || nowUtcMs <= startUtcMs || nowUtcMs >= endUtcMs ? null : xOf(nowUtcMs);

const nowLine = (x: number | null): string => {
  if (x === null) return '';
  return (
    curve(uprightLine(FRAME, x), { colour: CHART.now, width: 3 }) +
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
  const { title, startUtcMs, endUtcMs, curve: path, moonCurve, horizonCurve } = chart;
  const best = bestWithin(chart);
  const xOf = scale([startUtcMs, endUtcMs], [FRAME.left, FRAME.right]);
  const nowX = nowXOf(chart, xOf);
  // A curve that leaves the picture is interrupted, not flattened along its edge.
  const inside = (points: readonly ChartPoint[]): (Point | null)[] =>
    points.map(({ utcMs, altitudeDeg }) => (altitudeDeg < LOWEST_DEG ? null : [xOf(utcMs), yOf(altitudeDeg)]));
  const bestAt: Point | null = best === null ? null : [xOf(best.utcMs), yOf(best.altitudeDeg)];
  return [
    titled(title, under(chart)),
    bands(chart, xOf),
    axes(chart, xOf),
    horizonCurve === undefined ? '' : horizonArea(horizonCurve, xOf),
    nowLine(nowX),
    curve(inside(moonCurve), { colour: CHART.moon, width: 3, dashes: [12, 7] }),
    leastHeight(chart),
    curve(inside(path), { colour: CHART.target, width: 5 }),
    compassPoints(chart, xOf, nowX),
    bestAt === null ? '' : diamond(bestAt, 12, CHART.best, CHART.ground),
    best === null || bestAt === null ? '' : bestWord(chart, best, bestAt, nowX),
  ].join('');
};
