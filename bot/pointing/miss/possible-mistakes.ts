/** Every mistake that can be behind a miss, and which two are made together. */
import type { Circumstances } from './astray-types.js';
import { entryMistakes } from './entry-mistakes.js';
import { mountMistakes } from './mount-mistakes.js';
import type { Mistake } from './mistake-types.js';

export const possibleMistakes = (circumstances: Circumstances, lstHoursSeen: number | null = null): Mistake[] => [
  ...entryMistakes(circumstances, lstHoursSeen),
  ...mountMistakes(circumstances),
];

/** Common practice, no source. */
const SECOND_MISTAKE_RATE = 0.7;

/** Slips of one setting, of which one can be made at a time. */
const ONE_OF: readonly (readonly string[])[] = [
  ['utc-offset-sign', 'utc-offset', 'utc-as-local'],
  ['utc-as-local', 'daylight-saving'],
  ['daylight-saving', 'utc-offset'],
  ['date-off-by-one', 'day-month-swapped'],
  ['twelve-hours', 'date-off-by-one'],
];

/** Two slips of the clock together are rarer than one of the clock and one elsewhere. Common practice, no source. */
const TWO_CLOCKS_RATE = 0.25;

/** How often the second comes with the first, against each by itself. */
export const secondRate = (first: Mistake, second: Mistake): number =>
  SECOND_MISTAKE_RATE * (first.kind === 'clock' && second.kind === 'clock' ? TWO_CLOCKS_RATE : 1);

/** Whether two entries can both be wrong and be told from one wrong entry. */
export const goTogether = (a: Mistake, b: Mistake): boolean =>
  // An amount that may be any stands for whatever else is entered.
  a.id !== b.id &&
  ![a.id, b.id].includes('sidereal-amount') &&
  !ONE_OF.some((ids) => ids.includes(a.id) && ids.includes(b.id));
