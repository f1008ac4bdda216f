/** A night's altitude curve in a few rows of characters, for terminals and as a fallback where no image can go. */
import { DateTime } from 'luxon';
import type { NightChart } from './reply.js';

const STEPS = [' ', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'] as const;

/**
 * Rows of at most `width` characters: the target's height as bars (each row 22.5°), what the sky does below it
 * (`#` dark, `+` twilight, `.` day), and the hours. `plain` avoids block characters.
 */
export const textCurve = (chart: NightChart, width = 60, plain = false): readonly string[] => {
  const columns = Math.max(24, Math.min(width, 96) - 5);
  const { startUtcMs, endUtcMs, curve, bands, zone } = chart;
  if (curve.length === 0) return [];
  const span = endUtcMs - startUtcMs;
  const at = (column: number): number => startUtcMs + (span * (column + 0.5)) / columns;
  const heights = Array.from({ length: columns }, (_, column) => {
    const index = Math.round(((at(column) - startUtcMs) / span) * (curve.length - 1));
    return curve[index]?.altitudeDeg ?? 0;
  });
  const rows = 4;
  const lines: string[] = [];
  for (let row = rows - 1; row >= 0; row--) {
    const base = (90 / rows) * row;
    const bars = heights
      .map((altitudeDeg) => {
        const filled = Math.max(0, Math.min(1, (altitudeDeg - base) / (90 / rows)));
        if (plain) return filled > 0.5 ? '*' : ' ';
        return STEPS[altitudeDeg > base ? Math.max(1, Math.round(filled * 8)) : 0];
      })
      .join('');
    const label = row === rows - 1 ? '90°' : row === 1 ? '45°' : row === 0 ? ' 0°' : '   ';
    lines.push(`${label} ${bars}`.trimEnd());
  }
  const sky = Array.from({ length: columns }, (_, column) => {
    const band = bands.find(({ fromUtcMs, toUtcMs }) => at(column) >= fromUtcMs && at(column) < toUtcMs)?.band;
    return band === 'dark' ? '#' : band === 'day' || band === undefined ? '.' : '+';
  }).join('');
  lines.push(`sky ${sky}`);
  const hours = Array.from({ length: columns }, () => ' ');
  let tick = DateTime.fromMillis(startUtcMs, { zone }).startOf('hour').plus({ hours: 1 });
  while (tick.toMillis() < endUtcMs) {
    const column = Math.floor(((tick.toMillis() - startUtcMs) / span) * columns);
    if (tick.hour % 4 === 0 && column + 2 <= columns) {
      const label = tick.toFormat('HH');
      hours[column] = label[0] ?? ' ';
      hours[column + 1] = label[1] ?? ' ';
    }
    tick = tick.plus({ hours: 1 });
  }
  lines.push(`h   ${hours.join('')}`.trimEnd());
  return lines;
};
