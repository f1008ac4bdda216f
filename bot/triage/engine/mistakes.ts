/**
 * How members' looks go wrong. A mistaken answer is most often "all is well" (a wrong "they match"), now and then any other;
 * so no single answer can rule a cause out for good.
 */
import type { CheckNumbers } from './situation.js';

/** A second look at the same thing is wrong less often by this factor. */
const RELOOK = 0.15;
/** Of the mistaken answers, the share that say nothing is wrong; the rest falls on any answer. */
export const SAYS_GOOD = 0.42;

export type Look = 'look' | 'relook';

export interface Observation {
  readonly check: number;
  readonly answer: number;
  /** Further answers: it was told that one of these or that one holds, not which, or that they hold by turns. */
  readonly or?: readonly number[];
  readonly look: Look;
  /** Given before a remedy changed something: what it saw may be otherwise now, so it is no slip where it fits ill. */
  readonly before?: boolean;
  /** Read from words: the chance that it was not meant so; in place of the check's own. */
  readonly slip?: number;
  /** Words were only like such an answer: it weighs a little, and its question stays open. */
  readonly guessed?: true;
}

export const slipOf = (check: Pick<CheckNumbers, 'slip'>, { look, slip }: Pick<Observation, 'look' | 'slip'>): number =>
  slip ?? check.slip * (look === 'relook' ? RELOOK : 1);

/** Whether what was told fits a thing that is `real`. */
export const admits = ({ answer, or }: Pick<Observation, 'answer' | 'or'>, real: number): boolean =>
  answer === real || or?.includes(real) === true;

/** How likely one of the answers told is. */
export const summed = (
  { odds }: Pick<CheckNumbers, 'odds'>,
  { answer, or = [] }: Pick<Observation, 'answer' | 'or'>,
  hypothesis: number,
): number => or.reduce((sum, other) => sum + (odds[other]?.[hypothesis] ?? 0), odds[answer]?.[hypothesis] ?? 0);

/** Which answer a mistake gives; sums to 1 over the answers. */
export const mistakenFor = ({ answers, good }: Pick<CheckNumbers, 'answers' | 'good'>, answer: number): number =>
  (answer === good ? SAYS_GOOD : 0) + (1 - (good < 0 ? 0 : SAYS_GOOD)) / answers.length;

/**
 * Which answer a mistake gives. Words misread give any of them alike, "all is well" as seldom as the rest: there the reader
 * errs, not the member who looks too quickly. (Less than 1 in all: most misread words say nothing.)
 */
const mistakenIn = (check: Pick<CheckNumbers, 'answers' | 'good'>, { answer, or = [], slip }: Observation): number =>
  slip === undefined ? mistakenFor(check, answer) : ((1 - SAYS_GOOD) * (1 + or.length)) / check.answers.length;

/** How likely an observation is a mistake, and how likely a mistake shows as it. */
export const slipIn = (
  check: CheckNumbers,
  observation: Observation,
): { readonly slip: number; readonly mistaken: number } => ({
  slip: slipOf(check, observation),
  mistaken: mistakenIn(check, observation),
});

/** How likely this is observed where the thing answers so with this probability. */
export const observed = (check: CheckNumbers, observation: Observation, probability: number): number => {
  const { slip, mistaken } = slipIn(check, observation);
  return (1 - slip) * probability + slip * mistaken;
};

/** How a thing that is `real` is reported. */
export const reported = (check: CheckNumbers, observation: Observation, real: number): number =>
  observed(check, observation, admits(observation, real) ? 1 : 0);
