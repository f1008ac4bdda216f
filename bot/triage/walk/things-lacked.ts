/** What a member says not to have of what a swap would need: no look that needs it is asked for, and it answers none. */
import { thingsLacked, type Lacked, type Reading } from '../../reading/index.js';
import { NOT_HERE } from '../model/references.js';
import { quotedFrom, withFact, withoutGuesses } from './with-fact.js';

interface Swap {
  readonly answer: string;
  readonly check: string;
  readonly label: string;
}

/** Thing → the answer that says so, the look that needs it, and how it is said back. */
const SWAPS: ReadonlyMap<Lacked, Swap> = new Map([
  ['lead', { answer: 'other-lead', check: 'other-cable', label: 'no second lead here' }],
  ['adapter', { answer: 'other-adapter', check: 'other-adapter', label: 'no second adapter here' }],
  ['computer', { answer: 'other-computer', check: 'other-computer', label: 'no second computer here' }],
]);
const SURENESS = 0.85;

export const withThingsLacked = (read: Reading, text: string): Reading => {
  const lacked = [...thingsLacked(text)].flatMap((thing) => SWAPS.get(thing) ?? []);
  return lacked.reduce((told, { answer, check, label }) => {
    const fact = { what: NOT_HERE, answer, sureness: SURENESS, quote: quotedFrom(text), by: 'words' as const };
    const isOfIt = (what: string): boolean => what === check;
    return withoutGuesses(withFact(told, { fact, label }, isOfIt), isOfIt);
  }, read);
};
