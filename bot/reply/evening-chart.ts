/** The evening at a glance, drawn: a bar a target along the hours, the brighter the higher it stands, its best marked. */
import {
  CHART_WIDTH,
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
  titled,
  underAxis,
  uprightLine,
} from './chart-frame.js';
import { CHART } from './palette.js';
import type { EveningChart } from './reply.js';
import { curve, diamond, fitted, rectangle, textWidth, type Marks } from './marks.js';

const NAME_WIDTH = 262;
const FRAME = frameWithin({ left: NAME_WIDTH + 32, right: 28, top: 130, bottom: 44 });
const LEAST_SHADE = 0.12;
/** Share of a row's height that its bar takes. */
const BAR_SHARE = 0.62;
/** A best at the very beginning must not lie on the name. */
const NAMES = { ...FRAME, left: FRAME.left - 12 };

/** 0 below the least useful height, 1 from 60° up. */
const shade = (altitudeDeg: number, leastDeg: number): number =>
  altitudeDeg < leastDeg
    ? 0
    : LEAST_SHADE + (1 - LEAST_SHADE) * Math.min(1, (altitudeDeg - leastDeg) / (60 - leastDeg));

/** Whole pixels of the picture, so that no seam shows between neighbours. */
const onPixel = (x: number): number => (Math.round((x * CHART_WIDTH) / SHEET_WIDTH) * SHEET_WIDTH) / CHART_WIDTH;

/** "NGC 3372 (Carina Nebula)", or where that has no room, what people call it. */
const rowName = (name: string): string => {
  const called =
    textWidth(name, WORD_SIZE) > NAME_WIDTH ? /\((?<called>.+)\)$/u.exec(name)?.groups?.['called'] : undefined;
  return fitted(called ?? name, WORD_SIZE, NAME_WIDTH);
};

/** The chart's marks, on a ground that is there already. */
export const eveningChartMarks = (chart: EveningChart): Marks => {
  const { title, rows, startUtcMs, endUtcMs, zone, darkFromUtcMs } = chart;
  const xOf = scale([startUtcMs, endUtcMs], [FRAME.left, FRAME.right]);
  const rowHeight = (FRAME.bottom - FRAME.top) / Math.max(1, rows.length);
  const middleOf = (row: number): number => FRAME.top + (row + 0.5) * rowHeight;
  const darkWithin =
    darkFromUtcMs !== null && darkFromUtcMs > startUtcMs && darkFromUtcMs < endUtcMs ? darkFromUtcMs : null;

  const bars = rows.flatMap(({ curve: path, leastDeg }, row) =>
    path.slice(0, -1).flatMap(({ utcMs, altitudeDeg }, i) => {
      const opacity = shade(altitudeDeg, leastDeg);
      const next = path[i + 1];
      if (next === undefined || opacity === 0) return [];
      const height = rowHeight * BAR_SHARE;
      const left = onPixel(xOf(utcMs));
      const width = Math.max(onPixel(1), onPixel(xOf(next.utcMs)) - left);
      return rectangle([left, middleOf(row) - height / 2], [width, height], CHART.target, opacity);
    }),
  );
  const dark =
    darkWithin === null
      ? []
      : curve(uprightLine(FRAME, xOf(darkWithin)), { colour: CHART.ink, width: 2, dashes: [2, 3] });
  const axis = curve(levelLine(FRAME, FRAME.bottom), { colour: CHART.faint, width: 1 });
  return [
    titled(title, [
      `Brighter: higher. ◆ best.${darkWithin === null ? '' : ` Dotted: dark, from ${clock(darkWithin, zone)}.`}`,
      timesIn(zone),
    ]),
    bars,
    axis,
    dark,
    ...hoursWithRoom(hourTicks(startUtcMs + 1, endUtcMs, zone), xOf).map(({ utcMs, hour }) =>
      underAxis(String(hour).padStart(2, '0'), xOf(utcMs), FRAME),
    ),
    ...rows.flatMap(({ name, bestUtcMs }, row) => [
      besideAxis(rowName(name), middleOf(row), NAMES),
      diamond([xOf(bestUtcMs), middleOf(row)], 11, CHART.best, CHART.ground),
    ]),
  ].flat();
};
