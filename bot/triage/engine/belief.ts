/** From what was said to what is believed: Bayes' rule over the causes of a situation, with room for mistaken answers. */
import { keyOf } from '../../reading/index.js';
import type { Evidence } from './evidence.js';
import { admits, observed, reported, slipIn, summed, type Observation } from './mistakes.js';
import type { CheckNumbers, Situation } from './situation.js';

/** Chance that the right remedy shows no cure (done by halves, seen wrongly) where the fault does not say; and that a wrong one seems to cure. */
export const REMEDY_MISSES = 0.08;
const REMEDY_FLUKES = 0.01;
/** A mended cause may come back, or was only mended by halves. */
const MENDED = 0.05;

/** Probability of an answer under a hypothesis, mistakes included. */
const answerLikelihood = (check: CheckNumbers, observation: Observation, hypothesis: number): number =>
  observed(check, observation, summed(check, observation, hypothesis));

/** How often someone who was mistaken says the same when asked once more: the mistake was no slip of the thumb. A guess. */
const KEEPS_TO_IT = 0.6;

/** How a second look at a thing that is `real` is reported, by one who has said `first` of it. */
const reportedAgain = (check: CheckNumbers, first: Observation, second: Observation, real: number): number => {
  const anew = reported(check, second, real);
  if (admits(first, real)) return anew;
  return (second.answer === first.answer ? KEEPS_TO_IT : 0) + (1 - KEEPS_TO_IT) * anew;
};

/**
 * Probability of a second answer to the same check, given the first: both looks see one and the same thing, so under each
 * hypothesis what it is gets summed over.
 */
export const secondLookLikelihood = (
  check: CheckNumbers,
  first: Observation,
  second: Observation,
  hypothesis: number,
): number => {
  let both = 0;
  for (let real = 0; real < check.answers.length; real++) {
    both +=
      (check.odds[real]?.[hypothesis] ?? 0) * reported(check, first, real) * reportedAgain(check, first, second, real);
  }
  return both / answerLikelihood(check, first, hypothesis);
};

/** Scales to a sum of 1; returns the sum before (0 leaves the array as it is). */
export const normalise = (belief: Float64Array): number => {
  let sum = 0;
  for (const p of belief) sum += p;
  if (sum > 0) for (let i = 0; i < belief.length; i++) belief[i] = (belief[i] ?? 0) / sum;
  return sum;
};

/** Takes one answer into a belief (in place, not normalised). `earlier`: the first look at the same thing, where this is the second. */
export const applyAnswer = (
  belief: Float64Array,
  situation: Situation,
  observation: Observation,
  earlier?: Observation,
): void => {
  const numbers = situation.checks[observation.check];
  if (numbers === undefined) return;
  const { slip, mistaken } = slipIn(numbers, observation);
  for (let h = 0; h < belief.length; h++) {
    belief[h] =
      (belief[h] ?? 0) *
      (earlier === undefined
        ? (1 - slip) * summed(numbers, observation, h) + slip * mistaken
        : secondLookLikelihood(numbers, earlier, observation, h));
  }
};

/** Takes "no cure" of one remedy into a belief (in place, not normalised). */
const applyNoCure = (belief: Float64Array, fault: number, misses: number): void => {
  for (let h = 0; h < belief.length; h++) belief[h] = (belief[h] ?? 0) * (h === fault ? misses : 1 - REMEDY_FLUKES);
};

export interface Belief {
  /** Over the faults of the situation, then its unknowns; sums to 1. */
  readonly probabilities: Float64Array;
  /** For each observation, in order: the probability that the answer was a mistake. */
  readonly mistaken: readonly number[];
}

const mistakenShare = (
  numbers: CheckNumbers,
  own: Observation,
  looks: readonly Observation[],
  probabilities: Float64Array,
): number => {
  const [first = own, second] = looks;
  const firstAs = numbers.answers.map((_, real) => reported(numbers, first, real));
  const secondAs = numbers.answers.map((_, real) =>
    second === undefined ? 1 : reportedAgain(numbers, first, second, real),
  );
  let sum = 0;
  for (let h = 0; h < probabilities.length; h++) {
    let right = 0;
    let all = 0;
    for (let real = 0; real < firstAs.length; real++) {
      const seen = (numbers.odds[real]?.[h] ?? 0) * (firstAs[real] ?? 0) * (secondAs[real] ?? 0);
      all += seen;
      if (admits(own, real)) right += seen;
    }
    sum += all > 0 ? (probabilities[h] ?? 0) * (1 - right / all) : 0;
  }
  return sum;
};

/**
 * A cause whose remedy was done and changed nothing is believed no more than this, once or twice: where all answers pointed at
 * it and it did not cure, the tables are as likely wrong as the doing. What is taken from it goes to the others in proportion.
 */
const MOST_AFTER_NO_CURE = [1, 0.35, 0.15] as const;

const capped = (belief: Float64Array, { tried, notTaken }: Evidence): void => {
  let over = 0;
  let rest = 0;
  const caps = new Map<number, number>();
  for (const [fault, times] of tried) {
    const most = notTaken.has(fault) ? 1 : (MOST_AFTER_NO_CURE[Math.min(2, times)] ?? 1);
    if ((belief[fault] ?? 0) <= most) continue;
    caps.set(fault, most);
    over += (belief[fault] ?? 0) - most;
  }
  for (let h = 0; h < belief.length; h++) if (!caps.has(h)) rest += belief[h] ?? 0;
  if (over === 0 || rest === 0) return;
  for (let h = 0; h < belief.length; h++) belief[h] = caps.get(h) ?? ((belief[h] ?? 0) * (rest + over)) / rest;
};

/** Observations of the same thing have the same: two answers to one check, but not two of several that hold at once. */
const keyIn = ({ checks }: Situation, { check, answer }: Observation): string => {
  const numbers = checks[check];
  return keyOf(numbers?.entry.id ?? '', numbers?.answers[answer] ?? '');
};

export const beliefFrom = (situation: Situation, evidence: Evidence): Belief => {
  const probabilities = Float64Array.from(situation.priors);
  for (const [fault, factor] of evidence.factors) probabilities[fault] = (probabilities[fault] ?? 0) * factor;
  normalise(probabilities);
  const first = new Map<string, Observation>();
  for (const observation of evidence.observations) {
    const key = keyIn(situation, observation);
    applyAnswer(probabilities, situation, observation, first.get(key));
    if (!first.has(key)) first.set(key, observation);
    normalise(probabilities);
  }
  for (const [fault, times] of evidence.tried) {
    const misses = situation.faults[fault]?.remedy.misses ?? REMEDY_MISSES;
    for (let i = 0; i < times; i++) applyNoCure(probabilities, fault, misses);
  }
  for (const fault of evidence.mended) applyNoCure(probabilities, fault, MENDED);
  normalise(probabilities);
  capped(probabilities, evidence);
  const mistaken = evidence.observations.map((own) => {
    const numbers = situation.checks[own.check];
    const looks = evidence.observations.filter((look) => keyIn(situation, look) === keyIn(situation, own));
    return numbers === undefined ? 0 : mistakenShare(numbers, own, looks, probabilities);
  });
  return { probabilities, mistaken };
};
