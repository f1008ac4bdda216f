/** Which mistake explains a miss: every possible one, and every two, are played through and weighed by how well they predict what was seen. */
import { angleBetween, unitFromEquatorial } from '../../sky/angles.js';
import type { Circumstances, Observation, PointedTarget } from './astray-types.js';
import { rightBelief, type Belief } from './controller-belief.js';
import { landedVector } from './landing.js';
import type { Part } from './mistake-types.js';
import { leftOverDeg, misfitOf, standardResiduals } from './observation-misfit.js';
import { logSum } from './log-sum.js';
import { possibleMistakes } from './possible-mistakes.js';
import { weighUnexplained } from './unexplained.js';
import { weighMistakes, type Spread, type Weighed } from './weigh-mistakes.js';

/** A cause at its best-fitting form: one mistake, or two made together. */
export interface Explanation {
  readonly parts: readonly [Part] | readonly [Part, Part];
  /** 0..1, of everything considered. */
  readonly probability: number;
  readonly belief: Belief;
  /** For causes with a size: how sure it is. */
  readonly spread: Spread | null;
  /** How far the tube would land from the target. */
  readonly predictedMissDeg: number;
  readonly residualDeg: number;
}

export interface Diagnosis {
  /** Most probable first; every cause that could have been made. */
  readonly causes: readonly Explanation[];
  /** What was seen is as near to right as it can be read. */
  readonly isRight: boolean;
  /** Nothing is wrong beyond the uncertainty of what was seen. */
  readonly noMistakeProbability: number;
  /** None of the causes known here. */
  readonly unexplainedProbability: number;
}

/** Mean square of the residuals, in sigmas, up to which readings count as right: chance alone stays under it five times in six. */
const NEAR_ENOUGH = 1.8;
/** Beyond this many causes nobody looks. */
const MOST_CAUSES = 40;

/** A second mistake that betters the misfit (half the sum of squares) by less than this is not seen at work. */
const SEEN_AT_WORK = 1;

/**
 * A cause with a second mistake that cannot be seen beside it is told as the cause alone: what is to be set right is the same, and the
 * list has room for what is truly another cause.
 */
const withoutUnseen = (
  circumstances: Circumstances,
  observations: readonly Observation[],
  weighed: readonly Weighed[],
): Weighed[] => {
  const singles = new Map(
    weighed.filter(({ parts }) => parts.length === 1).map((single) => [single.parts[0].id, single]),
  );
  const misfits = new Map<Weighed, number>();
  const misfit = (cause: Weighed): number => {
    const known = misfits.get(cause) ?? misfitOf(circumstances, cause.belief, observations);
    misfits.set(cause, known);
    return known;
  };
  const joined = new Map<Weighed, number[]>();
  const kept = weighed.filter((cause) => {
    if (cause.parts.length === 1) return true;
    const [likelier] = cause.parts
      .flatMap(({ id }) => singles.get(id) ?? [])
      .filter((single) => single.logWeight > cause.logWeight && misfit(single) - misfit(cause) < SEEN_AT_WORK)
      .sort((a, b) => b.logWeight - a.logWeight);
    if (likelier === undefined) return true;
    joined.set(likelier, [...(joined.get(likelier) ?? []), cause.logWeight]);
    return false;
  });
  return kept.map((cause) => ({ ...cause, logWeight: logSum([cause.logWeight, ...(joined.get(cause) ?? [])]) }));
};

/** A cause's ids as one word: "daylight-saving", "daylight-saving+longitude-sign". */
export const causeKey = ({ parts }: Pick<Explanation, 'parts'>): string => parts.map(({ id }) => id).join('+');

/**
 * Ranks the causes of a miss (Bayes' rule; forms of a cause and sizes of a mistake are summed over, so that a cause which
 * could explain anything is believed less than one which predicted just this).
 */
export const explainMiss = (
  circumstances: Circumstances,
  target: PointedTarget,
  observations: readonly Observation[],
): Diagnosis => {
  const right = rightBelief(circumstances);
  const { noMistake, unexplained } = weighUnexplained(circumstances, right, observations);
  const lst = observations.find(({ kind }) => kind === 'lst');
  const mistakes = possibleMistakes(circumstances, lst?.kind === 'lst' ? lst.lstHours : null);
  const weighed = withoutUnseen(
    circumstances,
    observations,
    weighMistakes(circumstances, mistakes, observations, Math.max(noMistake, unexplained)),
  );
  const total = logSum([...weighed.map(({ logWeight }) => logWeight), noMistake, unexplained]);
  const aim = unitFromEquatorial(target.ofDate);
  const residuals = standardResiduals(circumstances, right, observations);
  const meanSquare = residuals.reduce((sum, residual) => sum + residual * residual, 0) / residuals.length;
  return {
    isRight: meanSquare < NEAR_ENOUGH && noMistake > unexplained,
    causes: [...weighed]
      .sort((a, b) => b.logWeight - a.logWeight)
      .slice(0, MOST_CAUSES)
      .map(({ logWeight, ...explained }): Explanation => ({
        ...explained,
        probability: Math.exp(logWeight - total),
        predictedMissDeg: angleBetween(aim, landedVector(circumstances, explained.belief, target)),
        residualDeg: leftOverDeg(circumstances, explained.belief, observations),
      })),
    noMistakeProbability: Math.exp(noMistake - total),
    unexplainedProbability: Math.exp(unexplained - total),
  };
};
