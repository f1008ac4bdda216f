/**
 * How members' looks go wrong. A mistaken answer is most often "all is well" (a wrong "they match"), now and then any other;
 * so no single answer can rule a cause out for good.
 */
import type { CheckNumbers } from './situation.js';

/** A second look at the same thing is wrong less often by this factor. */
const RELOOK = 0.15;
/** Of the mistaken answers, the share that say nothing is wrong; the rest falls on any answer. */
const SAYS_GOOD = 0.5;

export type Look = 'look' | 'relook';

export interface Observation {
  readonly check: number;
  readonly answer: number;
  readonly look: Look;
  /** Given before a remedy changed something: what it saw may be otherwise now, so it is no slip where it fits ill. */
  readonly before?: boolean;
  /** Read from words: the chance that it was not meant so; in place of the check's own. */
  readonly slip?: number;
}

export const slipOf = (check: Pick<CheckNumbers, 'slip'>, { look, slip }: Pick<Observation, 'look' | 'slip'>): number =>
  slip ?? check.slip * (look === 'relook' ? RELOOK : 1);

/** Which answer a mistake gives; sums to 1 over the answers. */
export const mistakenFor = ({ answers, good }: Pick<CheckNumbers, 'answers' | 'good'>, answer: number): number =>
  (answer === good ? SAYS_GOOD : 0) + (1 - (good < 0 ? 0 : SAYS_GOOD)) / answers.length;

/** How a thing that is `real` is reported. */
export const reported = (check: CheckNumbers, answer: number, real: number, slip: number): number =>
  (answer === real ? 1 - slip : 0) + slip * mistakenFor(check, answer);
