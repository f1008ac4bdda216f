/**
 * What an answer settles of other checks: who sees both axes run by the hand controller need not be asked whether the switch
 * is on. Only what is certain in the trade is written down, and a mistaken answer settles nothing.
 */
import type { Belief } from './belief.js';
import { settledIn } from './bounded-odds.js';
import type { Evidence } from './evidence.js';
import type { Observation } from './mistakes.js';
import type { Situation } from './situation.js';

/** An answer this likely to be a mistake, or read from words this unsurely, settles nothing. */
const DOUBTFUL = 0.25;

const counts = ({ before, guessed, or, slip = 0 }: Observation, mistaken: number): boolean =>
  before !== true && or === undefined && guessed !== true && Math.max(slip, mistaken) < DOUBTFUL;

/** Checks that need not be asked. Where two answers say otherwise of one, it is asked. */
export const settledChecks = (
  { checks, checkIndex }: Situation,
  { observations }: Evidence,
  { mistaken }: Pick<Belief, 'mistaken'>,
): ReadonlySet<number> => {
  const found = new Map<number, ReadonlySet<string>>();
  for (const [i, observation] of observations.entries()) {
    const numbers = checks[observation.check];
    if (numbers === undefined || !counts(observation, mistaken[i] ?? 0)) continue;
    for (const [id, answer] of settledIn(numbers, numbers.answers[observation.answer] ?? '')) {
      const check = checkIndex.get(id);
      if (check !== undefined) found.set(check, new Set([...(found.get(check) ?? []), answer]));
    }
  }
  return new Set([...found].flatMap(([check, answers]) => (answers.size === 1 ? [check] : [])));
};
