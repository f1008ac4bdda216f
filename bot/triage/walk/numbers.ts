/** When a walk asks for the numbers of a miss: once it is plain that the mount moves and lands elsewhere. */
import type { Belief } from '../engine/belief.js';
import type { Evidence } from '../engine/evidence.js';
import type { Situation } from '../engine/situation.js';
import type { WalkEvent } from './walk-state.js';
import { tableOf } from '../../ground/table-of.js';

/** The step's id, and the check id under which "no numbers now" is kept. */
export const NUMBERS = 'numbers';

/** Numbers pay once what they can tell apart is this likely together, and no single cause stands out. */
const ENTRIES_LIKELY = 0.75;
const ALREADY_PLAIN = 0.6;
const LANDS_ELSEWHERE = tableOf({ 'how-far': 'elsewhere', 'mount-does': 'elsewhere' });

export const numbersWanted = (
  situation: Situation,
  evidence: Evidence,
  { probabilities }: Belief,
  events: readonly WalkEvent[],
): boolean => {
  const asked = events.some((event) => event.kind === 'found' || (event.kind === 'answer' && event.check === NUMBERS));
  if (asked) return false;
  const elsewhere = evidence.observations.some(({ check, answer }) => {
    const numbers = situation.checks[check];
    return LANDS_ELSEWHERE.get(numbers?.entry.id ?? '') === numbers?.answers[answer] && numbers !== undefined;
  });
  if (!elsewhere) return false;
  let entries = 0;
  let most = 0;
  for (const [f, fault] of situation.faults.entries()) {
    if (fault.astrayCauses !== undefined) entries += probabilities[f] ?? 0;
    most = Math.max(most, probabilities[f] ?? 0);
  }
  return entries >= ENTRIES_LIKELY && most < ALREADY_PLAIN;
};
