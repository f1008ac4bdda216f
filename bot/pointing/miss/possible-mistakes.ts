/** Every mistake that can be behind a miss, and which two are made together. */
import type { Circumstances } from './astray-types.js';
import { entryMistakes } from './entry-mistakes.js';
import { mountMistakes } from './mount-mistakes.js';
import type { Mistake } from './mistake-types.js';

export const possibleMistakes = (circumstances: Circumstances): Mistake[] => [
  ...entryMistakes(circumstances),
  ...mountMistakes(circumstances),
];

/** How often a second mistake comes with a first, against each by itself. Common practice, no source. */
export const SECOND_MISTAKE_RATE = 0.4;

/** Slips of one setting, of which one can be made at a time. */
const ONE_OF: readonly (readonly string[])[] = [
  ['utc-offset-sign', 'utc-offset', 'utc-as-local'],
  ['utc-as-local', 'daylight-saving'],
  ['daylight-saving', 'utc-offset'],
  ['date-off-by-one', 'day-month-swapped'],
  ['longitude-sign', 'latitude-longitude-swapped'],
  ['latitude-sign', 'latitude-longitude-swapped'],
  ['twelve-hours', 'date-off-by-one'],
];

/** Whether two entries can both be wrong and be told from one wrong entry. */
export const goTogether = (a: Mistake, b: Mistake): boolean =>
  a.id !== b.id && !ONE_OF.some((ids) => ids.includes(a.id) && ids.includes(b.id));
