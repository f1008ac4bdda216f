/** What the charts have in common: size, scales, title, clock and axis words. */
import { DateTime } from 'luxon';
import { MS_PER_HOUR, MS_PER_MINUTE } from '../ground/durations.js';
import type { UtcMs } from '../sky/types.js';
import { CHART } from './palette.js';
import { fitted, words, type Point, type Marks } from './marks.js';

/** The picture's size in pixels. */
export const CHART_WIDTH = 960;
export const CHART_HEIGHT = 720;
/** Drawn on a sheet of so many units, half of which are a pixel where a phone shows the picture 360 pixels wide. */
export const SHEET_WIDTH = 720;
export const SHEET_HEIGHT = 540;
/** The smallest type: 11 pixels on that phone. */
export const WORD_SIZE = 22;
const TITLE_SIZE = 25;
const TITLE_LEFT = 14;

export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The place for the curves: what is left of the picture inside these margins. */
export const frameWithin = (margins: Frame): Frame => ({
  left: margins.left,
  right: SHEET_WIDTH - margins.right,
  top: margins.top,
  bottom: SHEET_HEIGHT - margins.bottom,
});

/** From a value between `from` and `to` to a pixel between `start` and `end`. */
export const scale =
  ([from, to]: readonly [number, number], [start, end]: readonly [number, number]) =>
  (value: number): number =>
    start + ((value - from) / (to - from)) * (end - start);

/** From one side of the frame to the other, level with `y`. */
export const levelLine = ({ left, right }: Frame, y: number): readonly Point[] => [
  [left, y],
  [right, y],
];

/** From the top of the frame to its bottom, at `x`. */
export const uprightLine = ({ top, bottom }: Frame, x: number): readonly Point[] => [
  [x, top],
  [x, bottom],
];

/** The compass along the foot of a chart that goes all round, north to north; `xOf` takes an azimuth in degrees. */
export const compassUnder = (xOf: (azimuthDeg: number) => number, frame: Frame): Marks =>
  ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW', 'N'].flatMap((word, i) => underAxis(word, xOf(45 * i), frame));

/** To the nearest minute, as the words beside the chart have it. */
export const clock = (utcMs: UtcMs, zone: string): string =>
  DateTime.fromMillis(Math.round(utcMs / MS_PER_MINUTE) * MS_PER_MINUTE, { zone }).toFormat('HH:mm');

export interface HourTick {
  readonly utcMs: UtcMs;
  readonly hour: number;
}

/** The whole hours of the site's clocks within the span, at most a day and a half. */
export const hourTicks = (startUtcMs: UtcMs, endUtcMs: UtcMs, zone: string): HourTick[] => {
  const ticks: HourTick[] = [];
  const first = DateTime.fromMillis(startUtcMs, { zone }).startOf('hour');
  // Clocks are asked hour by hour in the few nights alone in which they are changed.
  const isOneClock = first.offset === DateTime.fromMillis(endUtcMs, { zone }).offset;
  for (let utcMs = first.toMillis(), passed = 0; utcMs <= endUtcMs; utcMs += MS_PER_HOUR, passed++) {
    if (utcMs < startUtcMs) continue;
    const hour = isOneClock ? (first.hour + passed) % 24 : DateTime.fromMillis(utcMs, { zone }).hour;
    ticks.push({ utcMs, hour });
  }
  return ticks;
};

/** The title, cut where it is too long, and under it a few lines. */
export const titled = (title: string, under: readonly string[]): Marks => {
  const width = SHEET_WIDTH - 2 * TITLE_LEFT;
  return [
    words(fitted(title, TITLE_SIZE, width), [TITLE_LEFT, 32], { size: TITLE_SIZE, colour: CHART.ink }),
    ...under
      .filter((line) => line !== '')
      .map((line, i) =>
        words(fitted(line, WORD_SIZE, width), [TITLE_LEFT, 60 + 27 * i], { size: WORD_SIZE, colour: CHART.faint }),
      ),
  ].flat();
};

/** "M 31, night of Sat 12 Dec 2026" as the title and the line under it. */
export const titleLines = (title: string): readonly [string, string] => {
  const at = title.lastIndexOf(', ');
  return at === -1 ? [title, ''] : [title.slice(0, at), title.slice(at + 2)];
};

export const timesIn = (zone: string): string => `Times in ${zone.replace(/_/gu, ' ')}`;

/** The hours that have room for their words, every one, second, third, fourth or sixth. */
export const hoursWithRoom = (ticks: readonly HourTick[], xOf: (utcMs: UtcMs) => number): readonly HourTick[] => {
  const [first, second] = ticks;
  if (first === undefined || second === undefined) return ticks;
  const apart = Math.abs(xOf(second.utcMs) - xOf(first.utcMs));
  const every = [1, 2, 3, 4].find((hours) => hours * apart >= LEAST_HOURS_APART) ?? 6;
  return ticks.filter(({ hour }) => hour % every === 0);
};
const LEAST_HOURS_APART = 44;

/** Words under the plot, centred on `x`. */
export const underAxis = (text: string, x: number, { bottom }: Frame): Marks =>
  words(text, [x, bottom + 27], { size: WORD_SIZE, colour: CHART.ink, anchor: 'middle' });

/** Words left of the plot, level with `y`. */
export const besideAxis = (text: string, y: number, { left }: Frame): Marks =>
  words(text, [left - 8, y + WORD_SIZE * 0.36], { size: WORD_SIZE, colour: CHART.ink, anchor: 'end' });
