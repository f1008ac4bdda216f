/** What a chart of a night, drawn or in characters, may mark as best. */
import type { ChartPoint, NightChart } from './reply.js';

/** Null where there is none, or it stands outside the picture: the Sun's best hour is by day. */
export const bestWithin = ({ best, startUtcMs, endUtcMs }: NightChart): ChartPoint | null =>
  best === null || best.utcMs < startUtcMs || best.utcMs > endUtcMs ? null : best;
