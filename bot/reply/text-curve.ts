/** A night's altitude curve in a few rows of characters, for terminals and as a fallback where no image can go. */
import { bestWithin } from './best-within.js';
import { clock, hourTicks } from './chart-frame.js';
import type { ChartPoint, NightChart } from './reply.js';

const STEPS = [' ', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'] as const;
const ROWS = 4;
const ROW_DEG = 90 / ROWS;
const ROW_LABELS = [' 0°', '45°'] as const;
const LABEL_WIDTH = 5;

interface Columns {
  readonly count: number;
  /** The instant in the middle of a column. */
  readonly utcMsAt: (column: number) => number;
  readonly valueAt: (points: readonly ChartPoint[], column: number) => number;
}

const columnsOf = ({ startUtcMs, endUtcMs }: NightChart, width: number): Columns => {
  const count = Math.max(24, Math.min(width, 96) - LABEL_WIDTH - 1);
  const span = endUtcMs - startUtcMs;
  return {
    count,
    utcMsAt: (column) => startUtcMs + (span * (column + 0.5)) / count,
    valueAt: (points, column) => points[Math.round(((column + 0.5) / count) * (points.length - 1))]?.altitudeDeg ?? -90,
  };
};

const rowLabel = (row: number): string => {
  if (row === ROWS - 1) return '90°';
  return row % 2 === 0 ? (ROW_LABELS[row / 2] ?? '') : '';
};

const barCell = (altitudeDeg: number, behindDeg: number, row: number, plain: boolean): string => {
  const base = ROW_DEG * row;
  const filled = Math.max(0, Math.min(1, (altitudeDeg - base) / ROW_DEG));
  if (altitudeDeg <= base) return ' ';
  const isBehind = altitudeDeg < behindDeg;
  if (plain && filled <= 0.5) return ' ';
  if (plain) return isBehind ? ':' : '*';
  if (isBehind) return '░';
  return STEPS[Math.max(1, Math.round(filled * 8))] ?? ' ';
};

const skyCell = ({ bands }: NightChart, utcMs: number): string => {
  const band = bands.find(({ fromUtcMs, toUtcMs }) => utcMs >= fromUtcMs && utcMs < toUtcMs)?.band;
  if (band === 'dark') return '#';
  return band === 'day' || band === undefined ? '.' : '+';
};

const labelled = (label: string, cells: readonly string[]): string =>
  `${label.padEnd(LABEL_WIDTH)}${cells.join('')}`.trimEnd();

const hoursRow = ({ startUtcMs, endUtcMs, zone }: NightChart, count: number): string => {
  const cells = Array.from({ length: count }, () => ' ');
  // An hour at the very edge has no room.
  for (const { utcMs, hour } of hourTicks(startUtcMs + 1, endUtcMs - 1, zone)) {
    const column = Math.floor(((utcMs - startUtcMs) / (endUtcMs - startUtcMs)) * count);
    if (hour % 4 !== 0 || column + 2 > count) continue;
    const label = String(hour).padStart(2, '0');
    cells[column] = label[0] ?? ' ';
    cells[column + 1] = label[1] ?? ' ';
  }
  return labelled('hour', cells);
};

const bestRow = (chart: NightChart, count: number): string | null => {
  const best = bestWithin(chart);
  if (best === null) return null;
  const { startUtcMs, endUtcMs, zone } = chart;
  const column = Math.min(count - 1, Math.floor(((best.utcMs - startUtcMs) / (endUtcMs - startUtcMs)) * count));
  const words = `best ${clock(best.utcMs, zone)}`;
  const fitsAfter = column + 2 + words.length <= count;
  return labelled('', [fitsAfter ? `${' '.repeat(column)}^ ${words}` : `${`${words} `.padStart(column)}^`]);
};

/** In as many rows as it takes, no entry parted. */
const wrapped = (entries: readonly string[], width: number): string[] => {
  const indent = ' '.repeat(LABEL_WIDTH);
  return entries.reduce<string[]>((rows, entry) => {
    const row = rows.at(-1);
    return row !== undefined && row.length + 2 + entry.length <= width
      ? [...rows.slice(0, -1), `${row}  ${entry}`]
      : [...rows, indent + entry];
  }, []);
};

/**
 * Rows of at most `width` characters: the target's height as bars (each row 22.5°), what the sky does below it, when the Moon is
 * up, the hours, and a legend of the signs used. `plain` avoids block characters.
 */
export const textCurve = (chart: NightChart, width = 60, plain = false): readonly string[] => {
  const { curve, moonCurve, horizonCurve } = chart;
  if (curve.length === 0) return [];
  const { count, utcMsAt, valueAt } = columnsOf(chart, width);
  const columns = Array.from({ length: count }, (_, column) => column);
  const behind = (column: number): number => (horizonCurve === undefined ? -90 : valueAt(horizonCurve, column));
  // What it never reaches need not be drawn: a phone has few rows.
  const top = Math.max(0, ...columns.map((column) => valueAt(curve, column)));
  const needed = Math.max(2, Math.min(ROWS, Math.ceil(top / ROW_DEG)));
  const rows = Array.from({ length: needed }, (_, i) => needed - 1 - i).map((row) =>
    labelled(
      rowLabel(row),
      columns.map((column) => barCell(valueAt(curve, column), behind(column), row, plain)),
    ),
  );
  const isHidden = columns.some((column) => valueAt(curve, column) > 0 && valueAt(curve, column) < behind(column));
  const moon = columns.map((column) => (valueAt(moonCurve, column) > 0 ? ')' : ' '));
  const hasMoon = moonCurve.length > 0 && moon.includes(')');
  const best = bestRow(chart, count);
  const legend = [
    `${plain ? '*' : '█'} height`,
    ...(isHidden ? [`${plain ? ':' : '░'} behind your horizon`] : []),
    '# dark',
    '+ twilight',
    '. day',
    ...(hasMoon ? [') Moon up'] : []),
  ];
  return [
    ...rows,
    ...(best === null ? [] : [best]),
    labelled(
      'sky',
      columns.map((column) => skyCell(chart, utcMsAt(column))),
    ),
    ...(hasMoon ? [labelled('Moon', moon)] : []),
    hoursRow(chart, count),
    ...wrapped(legend, Math.max(width, 40)),
  ];
};
