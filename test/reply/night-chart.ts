/** A night as the charts draw it; invented. */
import type { NightChart } from '../../bot/reply/reply.js';

export const HOUR = 3_600_000;
export const start = Date.UTC(2026, 11, 12, 12);
export const curve = (peakHour: number, peakDeg: number) =>
  Array.from({ length: 97 }, (_, i) => ({
    utcMs: start + (i * HOUR) / 4,
    altitudeDeg: peakDeg * Math.cos(((i / 4 - peakHour) / 12) * Math.PI),
  }));

export const nightChart = (title: string): NightChart => ({
  kind: 'night',
  title,
  zone: 'Europe/London',
  startUtcMs: start,
  endUtcMs: start + 24 * HOUR,
  curve: curve(14, 60),
  moonCurve: curve(2, 30),
  minimumAltitudeDeg: 20,
  nowUtcMs: start + 8 * HOUR,
  best: { utcMs: start + 14 * HOUR, altitudeDeg: 60 },
  altText: 'x',
  bands: [
    { fromUtcMs: start, toUtcMs: start + 4 * HOUR, band: 'day' },
    { fromUtcMs: start + 4 * HOUR, toUtcMs: start + 6 * HOUR, band: 'nautical' },
    { fromUtcMs: start + 6 * HOUR, toUtcMs: start + 18 * HOUR, band: 'dark' },
    { fromUtcMs: start + 18 * HOUR, toUtcMs: start + 24 * HOUR, band: 'day' },
  ],
});
