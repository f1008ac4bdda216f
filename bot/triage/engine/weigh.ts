/**
 * What follows from one evidence in one situation, remembered for a while: a turn begins where the last one ended, and many
 * walks begin alike. Kept by what was answered and tried, as numbers: nothing that a member wrote is in it.
 */
import { onceOf } from '../../ground/once.js';
import { createKept } from '../../ground/kept.js';
import { beliefFrom, type Belief } from './belief.js';
import type { Choice } from './choice.js';
import { rankSteps } from './choose-step.js';
import type { Evidence } from './evidence.js';
import type { Situation } from './situation.js';

interface Weighed {
  readonly belief: Belief;
  /** Ranked with the usual foresight; null: nobody has asked yet. */
  ranked: readonly Choice[] | null;
}

/** Some 6 kB each. */
const MOST_KEPT = 250;
const kept = createKept<string, Weighed>(MOST_KEPT);

let situations = 0;
const numberOf = onceOf((_: Situation) => situations++);

/** All of the evidence, in its order. */
const keyOf = (situation: Situation, evidence: Evidence): string =>
  `${numberOf(situation)} ${JSON.stringify(evidence, (_, value: unknown) => (value instanceof Map || value instanceof Set ? [...(value as Iterable<unknown>)] : value))}`;

const weighed = (situation: Situation, evidence: Evidence): Weighed =>
  kept(keyOf(situation, evidence), () => ({ belief: beliefFrom(situation, evidence), ranked: null }));

/** As `beliefFrom`; not to be written to. */
export const believed = (situation: Situation, evidence: Evidence): Belief => weighed(situation, evidence).belief;

/** As `rankSteps` on that belief, with the usual foresight. */
export const rankedSteps = (situation: Situation, evidence: Evidence): readonly Choice[] => {
  const known = weighed(situation, evidence);
  known.ranked ??= rankSteps(situation, evidence, known.belief);
  return known.ranked;
};
