/** When Mercury or Venus next passes before the Sun, as the Earth's centre has it. */
import { Body, SearchTransit } from 'astronomy-engine';
import { engineTime } from './engine-time.js';
import type { TimeSpan } from './night.js';
import type { UtcMs } from './types.js';

export const nextSunTransit = (planet: 'Mercury' | 'Venus', fromUtcMs: UtcMs): TimeSpan => {
  const { start, finish } = SearchTransit(Body[planet], engineTime(fromUtcMs));
  return { startUtcMs: start.date.getTime(), endUtcMs: finish.date.getTime() };
};
