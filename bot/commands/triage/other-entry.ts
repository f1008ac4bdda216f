/** "The clock is right", where the remedy is of summer time: neither the remedy done nor a word against its cause. */
import { entriesNamed, entriesRight } from '../../reading/index.js';
import type { Began } from './turn.js';

/** Of place and time the words name others than the remedy in hand is for. */
export const isOfOtherEntry = ({ before: { step } }: Began, text: string): boolean => {
  const own = step.kind === 'try' ? entriesNamed(step.fault.title) : null;
  const named = own === null || own.size === 0 ? null : entriesNamed(text);
  return named !== null && named.size > 0 && ![...named].some((entry) => own?.has(entry));
};

const STANDS = /\b(?:still|same|again|no (?:change|difference))\b/iu;

/** … and call those right, with no word of the trouble. */
export const callsOtherRight = (began: Began, text: string): boolean =>
  isOfOtherEntry(began, text) && entriesRight(text).size > 0 && !STANDS.test(text);
