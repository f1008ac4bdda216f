/** What the charts have in common: size, scales, title, clock and axis words. */
import { DateTime } from 'luxon';
import { MS_PER_HOUR, MS_PER_MINUTE } from '../ground/durations.js';
import type { UtcMs } from '../sky/types.js';
import { CHART } from './palette.js';
import { fitted, words, type Point } from './svg.js';

export const CHART_WIDTH = 1000;
export const CHART_HEIGHT = 640;

export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The place for the curves: what is left of the picture inside these margins. */
export const frameWithin = (margins: Frame): Frame => ({
  left: margins.left,
  right: CHART_WIDTH - margins.right,
  top: margins.top,
  bottom: CHART_HEIGHT - margins.bottom,
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
export const compassUnder = (xOf: (azimuthDeg: number) => number, frame: Frame): string =>
  ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW', 'N'].map((word, i) => underAxis(word, xOf(45 * i), frame)).join('');

/** To the nearest minute, as the words beside the chart have it. */
export const clock = (utcMs: UtcMs, zone: string): string =>
  DateTime.fromMillis(Math.round(utcMs / MS_PER_MINUTE) * MS_PER_MINUTE, { zone }).toFormat('HH:mm');

export interface HourTick {
  readonly utcMs: UtcMs;
  readonly hour: number;
}

/** The whole hours of the site's clocks within the span. */
export const hourTicks = (startUtcMs: UtcMs, endUtcMs: UtcMs, zone: string): HourTick[] => {
  const ticks: HourTick[] = [];
  const first = DateTime.fromMillis(startUtcMs, { zone }).startOf('hour').toMillis();
  for (let utcMs = first; utcMs <= endUtcMs; utcMs += MS_PER_HOUR)
    if (utcMs >= startUtcMs) ticks.push({ utcMs, hour: DateTime.fromMillis(utcMs, { zone }).hour });
  return ticks;
};

export const titled = (title: string, under: string): string =>
  words(fitted(title, 28, 945), [29, 42], { size: 28, colour: CHART.ink }) +
  (under === '' ? '' : words(under, [29, 69], { size: 19, colour: CHART.faint }));

/** Words under the plot, centred on `x`. */
export const underAxis = (text: string, x: number, { bottom }: Frame): string =>
  words(text, [x, bottom + 28], { size: 22, colour: CHART.ink, anchor: 'middle' });

/** Words left of the plot, level with `y`. */
export const besideAxis = (text: string, y: number, { left }: Frame, size = 22): string =>
  words(text, [left - 9, y + size * 0.36], { size, colour: CHART.ink, anchor: 'end' });
