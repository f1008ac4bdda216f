/** The altitude curve through one night, drawn: twilight bands, Moon, minimum altitude, own horizon, now, best. */
import {
  SHEET_WIDTH,
  WORD_SIZE,
  besideAxis,
  clock,
  frameWithin,
  hoursWithRoom,
  hourTicks,
  levelLine,
  scale,
  timesIn,
  titleLines,
  titled,
  underAxis,
  uprightLine,
} from './chart-frame.js';
import { CHART } from './palette.js';
import { createLabels, type Place, type PlaceWords } from './labels.js';
import { bestWithin } from './best-within.js';
import type { ChartPoint, NightChart } from './reply.js';
import { area, curve, diamond, dot, rectangle, textWidth, type Point, type Marks } from './marks.js';

const FRAME = frameWithin({ left: 62, right: 22, top: 142, bottom: 44 });
const LOWEST_DEG = -10;
const HIGHEST_DEG = 90;
const yOf = scale([LOWEST_DEG, HIGHEST_DEG], [FRAME.bottom, FRAME.top]);
/** Where words may stand: up to the line over the plot, and not beyond the picture's edges. */
const BOUNDS = { left: FRAME.left, right: SHEET_WIDTH - 2, top: FRAME.top - 26, bottom: FRAME.bottom };

const TWILIGHT_WORD = {
  civil: 'civil twilight',
  nautical: 'nautical twilight',
  astronomical: 'astronomical twilight',
} as const;
/** A narrower band has no room for a word read upwards. */
const UPRIGHT_WORD_PX = 27;

type XOf = (utcMs: number) => number;
type Band = NightChart['bands'][number];

interface NamedSpan {
  readonly left: number;
  readonly right: number;
  readonly word: string;
}

/** Each band that has room for its name; of twilights too narrow, those that follow one another together as "twilight". */
const namedSpans = (bands: readonly Band[], xOf: XOf): NamedSpan[] => {
  const named: NamedSpan[] = [];
  let narrow: NamedSpan[] = [];
  const close = (): void => {
    const [first, last] = [narrow[0], narrow.at(-1)];
    if (first !== undefined && last !== undefined) named.push({ ...first, right: last.right });
    narrow = [];
  };
  for (const { fromUtcMs, toUtcMs, band } of bands) {
    const [left, right] = [xOf(fromUtcMs), xOf(toUtcMs)];
    const isTwilight = band !== 'day' && band !== 'dark';
    if (isTwilight && right - left < UPRIGHT_WORD_PX) {
      narrow.push({ left, right, word: 'twilight' });
      continue;
    }
    close();
    named.push({ left, right, word: isTwilight ? TWILIGHT_WORD[band] : band });
  }
  close();
  return named;
};

const bands = ({ bands: spans }: NightChart, xOf: XOf): Marks =>
  spans.flatMap(({ fromUtcMs, toUtcMs, band }) => {
    const left = xOf(fromUtcMs);
    return rectangle([left, FRAME.top], [xOf(toUtcMs) - left, FRAME.bottom - FRAME.top], CHART.bands[band]);
  });

/** Level under the horizon where a word has room, else upright at the first height that is free. */
const UPRIGHT_PLACES_DEG = [45, 62, 28, 70, 20] as const;
const bandWords = ({ bands: spans }: NightChart, xOf: XOf, place: PlaceWords): Marks =>
  namedSpans(spans, xOf).flatMap(({ left, right, word }) => {
    const middle = (left + right) / 2;
    const style = { size: WORD_SIZE, colour: CHART.faint } as const;
    if (textWidth(word, WORD_SIZE) + 8 <= right - left)
      return place(word, [{ at: [middle, FRAME.bottom - 10], anchor: 'middle' }], style, true);
    if (right - left < UPRIGHT_WORD_PX) return [];
    return place(
      word,
      UPRIGHT_PLACES_DEG.map((deg) => ({ at: [middle + 8, yOf(deg)], anchor: 'middle' }) as const),
      { ...style, isUpright: true },
    );
  });

/** Over its mark, beside it, or over the plot. */
const bestWord = (chart: NightChart, best: ChartPoint, [x, y]: Point, place: PlaceWords): Marks => {
  const text = `best ${clock(best.utcMs, chart.zone)}, ${Math.round(best.altitudeDeg)}°`;
  const over = FRAME.top - 8;
  const middle = 'middle';
  return place(
    text,
    [
      { at: [x, y - 22], anchor: middle },
      { at: [x, y - 40], anchor: middle },
      { at: [x + 20, y - 18] },
      { at: [x - 20, y - 18], anchor: 'end' },
      { at: [x + 22, y + 8] },
      { at: [x - 22, y + 8], anchor: 'end' },
      { at: [x, over], anchor: middle },
      { at: [x + 30, over] },
      { at: [x - 30, over], anchor: 'end' },
      { at: [x + 14, y + 36] },
      { at: [x - 14, y + 36], anchor: 'end' },
      { at: [FRAME.right, y - 22], anchor: 'end' },
      { at: [FRAME.left + 4, y - 22] },
    ],
    { size: WORD_SIZE, colour: CHART.best, rim: CHART.ground },
    true,
  );
};

/** Directions stand by the curve, those that find no free place not at all. */
const compassPoints = ({ compass = [] }: NightChart, xOf: XOf, place: PlaceWords): Marks =>
  compass.flatMap(({ utcMs, altitudeDeg, word }) => {
    const [x, y]: Point = [xOf(utcMs), yOf(altitudeDeg)];
    const said = place(
      word,
      [
        { at: [x, y + 30], anchor: 'middle' },
        { at: [x + 12, y + 26] },
        { at: [x - 12, y + 26], anchor: 'end' },
        { at: [x - 12, y - 8], anchor: 'end' },
        { at: [x + 12, y - 8] },
      ],
      { size: WORD_SIZE, colour: CHART.ink, rim: CHART.ground },
    );
    return said.length === 0 ? [] : [...dot([x, y], 4, CHART.ink), ...said];
  });

const horizonArea = (points: readonly ChartPoint[], xOf: XOf): Marks => {
  const along = points.map(({ utcMs, altitudeDeg }): Point => [
    xOf(utcMs),
    yOf(Math.min(HIGHEST_DEG, Math.max(LOWEST_DEG, altitudeDeg))),
  ]);
  const [first, last] = [along[0], along.at(-1)];
  if (first === undefined || last === undefined) return [];
  return [
    ...area([...along, [last[0], FRAME.bottom], [first[0], FRAME.bottom]], CHART.horizon, 0.75),
    ...curve(along, { colour: CHART.horizon, width: 2 }),
  ];
};

const level = (altitudeDeg: number): readonly Point[] => levelLine(FRAME, yOf(altitudeDeg));

const leastHeight = ({ minimumAltitudeDeg }: NightChart): Marks =>
  minimumAltitudeDeg === null || minimumAltitudeDeg <= 0
    ? []
    : curve(level(minimumAltitudeDeg), { colour: CHART.limit, width: 2, dashes: [2, 3] });

/** At either end of its line, under it or over it. */
const leastWord = ({ minimumAltitudeDeg }: NightChart, place: PlaceWords): Marks => {
  if (minimumAltitudeDeg === null || minimumAltitudeDeg <= 0) return [];
  const [under, over] = [yOf(minimumAltitudeDeg) + 22, yOf(minimumAltitudeDeg) - 7];
  const [left, right] = [FRAME.left + 5, FRAME.right - 3];
  return place(
    `useful from ${minimumAltitudeDeg}°`,
    [under, over].flatMap((y): Place[] => [{ at: [left, y] }, { at: [right, y], anchor: 'end' }]),
    { size: WORD_SIZE, colour: CHART.limit, rim: CHART.ground },
  );
};

/** Where the line for now stands; null where now is of another night. */
const nowXOf = ({ nowUtcMs, startUtcMs, endUtcMs }: NightChart, xOf: XOf): number | null =>
  nowUtcMs === null || nowUtcMs <= startUtcMs || nowUtcMs >= endUtcMs ? null : xOf(nowUtcMs);

const nowLine = (x: number | null): Marks =>
  x === null ? [] : curve(uprightLine(FRAME, x), { colour: CHART.now, width: 2 });

const nowWord = (x: number | null, place: PlaceWords): Marks =>
  x === null
    ? []
    : place('now', [{ at: [x, FRAME.top - 8], anchor: 'middle' }], { size: WORD_SIZE, colour: CHART.now }, true);

const axes = ({ startUtcMs, endUtcMs, zone }: NightChart, xOf: XOf): Marks =>
  [
    ...[30, 60].map((altitudeDeg) => curve(level(altitudeDeg), { colour: CHART.grid, width: 1 })),
    curve(level(0), { colour: CHART.ink, width: 2 }),
    ...[0, 30, 60, 90].map((altitudeDeg) => besideAxis(`${altitudeDeg}°`, yOf(altitudeDeg), FRAME)),
    ...hoursWithRoom(hourTicks(startUtcMs + 1, endUtcMs - 1, zone), xOf).map(({ utcMs, hour }) =>
      underAxis(String(hour).padStart(2, '0'), xOf(utcMs), FRAME),
    ),
  ].flat();

const legend = ({ moonCurve, horizonCurve }: NightChart): string =>
  [moonCurve.length === 0 ? '' : 'Dashed: the Moon.', horizonCurve === undefined ? '' : 'Green: your horizon.']
    .filter((part) => part !== '')
    .join(' ');

/** The chart's marks, on a ground that is there already. */
export const nightChartMarks = (chart: NightChart): Marks => {
  const { title, startUtcMs, endUtcMs, zone, curve: path, moonCurve, horizonCurve } = chart;
  const [name, night] = titleLines(title);
  const best = bestWithin(chart);
  const xOf = scale([startUtcMs, endUtcMs], [FRAME.left, FRAME.right]);
  const nowX = nowXOf(chart, xOf);
  // A curve that leaves the picture is interrupted, not flattened along its edge.
  const inside = (points: readonly ChartPoint[]): (Point | null)[] =>
    points.map(({ utcMs, altitudeDeg }) => (altitudeDeg < LOWEST_DEG ? null : [xOf(utcMs), yOf(altitudeDeg)]));
  const [target, moon] = [inside(path), inside(moonCurve)];
  const bestAt: Point | null = best === null ? null : [xOf(best.utcMs), yOf(best.altitudeDeg)];
  const nowAt = nowX === null ? [] : [[nowX, FRAME.top] as const, [nowX, FRAME.bottom] as const];
  const place = createLabels(BOUNDS, [target, moon, nowAt]);
  // The weightiest first: what comes later makes way.
  const labels = [
    nowWord(nowX, place),
    best === null || bestAt === null ? [] : bestWord(chart, best, bestAt, place),
    compassPoints(chart, xOf, place),
    leastWord(chart, place),
    bandWords(chart, xOf, place),
  ];
  return [
    titled(name, [[night, timesIn(zone)].filter((part) => part !== '').join('. '), legend(chart)]),
    bands(chart, xOf),
    axes(chart, xOf),
    horizonCurve === undefined ? [] : horizonArea(horizonCurve, xOf),
    nowLine(nowX),
    curve(moon, { colour: CHART.moon, width: 2.5, dashes: [9, 5] }),
    leastHeight(chart),
    curve(target, { colour: CHART.target, width: 4 }),
    bestAt === null ? [] : diamond(bestAt, 10, CHART.best, CHART.ground),
    ...labels,
  ].flat();
};
