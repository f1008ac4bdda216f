/** Which mistake explains a miss: every possible one is played through, and weighed by how well it predicts what was seen. */
import { angleBetween, unitFromEquatorial } from '../../sky/angles.js';
import type { CauseId, Circumstances, Observation, PointedTarget } from './astray-types.js';
import { landedVector, rightBelief, type Belief } from './controller-belief.js';
import { fitContinuum } from './fit-continuum.js';
import { possibleMistakes, type Continuum, type Slip } from './mistakes.js';
import { leftOverDeg, logAnything, standardResiduals } from './observation-misfit.js';

/** A cause at its best-fitting form. */
export interface Explanation {
  readonly id: CauseId;
  /** 0..1, of everything considered. */
  readonly probability: number;
  readonly belief: Belief;
  readonly slip: Slip;
  /** Size of the mistake in its own units, for causes that have one. */
  readonly size: readonly number[] | null;
  /** For causes with a size: how sure it is. */
  readonly spread: {
    readonly continuum: Continuum;
    readonly parameters: readonly number[];
    readonly covariance: readonly (readonly number[])[];
  } | null;
  /** How far the tube would land from the target. */
  readonly predictedMissDeg: number;
  readonly residualDeg: number;
}

export interface Diagnosis {
  /** Most probable first; every cause that could have been made. */
  readonly causes: readonly Explanation[];
  /** Nothing is wrong beyond the uncertainty of what was seen. */
  readonly noMistakeProbability: number;
  /** None of the causes known here. */
  readonly unexplainedProbability: number;
}

/** Frequencies before anything is seen, on the scale of the mistakes' priors. Common practice, no source. */
const NO_MISTAKE_PRIOR = 12;
const UNEXPLAINED_PRIOR = 3;
/** A residual beyond this many sigmas counts as this many: members misread, and one bad number must not decide alone. */
const OUTLIER_SIGMAS = 12;

const sumOfSquares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);

const logSum = (logs: readonly number[]): number => {
  const top = Math.max(...logs);
  return top === -Infinity ? top : top + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - top), 0));
};

/**
 * Ranks the causes of a miss (Bayes' rule; forms of a cause and sizes of a mistake are summed over, so that a cause which
 * could explain anything is believed less than one which predicted just this).
 */
export const explainMiss = (
  circumstances: Circumstances,
  target: PointedTarget,
  observations: readonly Observation[],
): Diagnosis => {
  const predictedMissDeg = (belief: Belief): number =>
    angleBetween(unitFromEquatorial(target.ofDate), landedVector(circumstances, belief, target));
  const misfit = (belief: Belief): number =>
    sumOfSquares(
      standardResiduals(circumstances, belief, observations).map((r) =>
        Math.max(-OUTLIER_SIGMAS, Math.min(OUTLIER_SIGMAS, r)),
      ),
    ) / 2;
  const weighed = possibleMistakes(circumstances).map((mistake) => {
    const explained = (
      logLikelihood: number,
      belief: Belief,
      slip: Slip,
      size: Explanation['size'],
      spread: Explanation['spread'],
    ) => ({ id: mistake.id, logWeight: Math.log(mistake.prior) + logLikelihood, belief, slip, size, spread });
    if (mistake.continuum !== null) {
      const { continuum } = mistake;
      const fit = fitContinuum(continuum.dimensions, (p) =>
        standardResiduals(circumstances, continuum.beliefAt(p), observations),
      );
      return explained(
        fit.logEvidence,
        continuum.beliefAt(fit.parameters),
        { kind: 'plain' },
        continuum.sizeAt(fit.parameters),
        { continuum, parameters: fit.parameters, covariance: fit.covariance },
      );
    }
    const logs = mistake.variants.map(({ share, belief }) => Math.log(share) - misfit(belief));
    const best = mistake.variants[logs.indexOf(Math.max(...logs))]!;
    return explained(logSum(logs), best.belief, best.slip, null, null);
  });
  const noMistake = Math.log(NO_MISTAKE_PRIOR) - misfit(rightBelief(circumstances));
  // Anything goes: all of it, or the landing alone (a slipped clutch, a lost step) while the display is right.
  const right = rightBelief(circumstances);
  const landings = observations.filter(({ kind }) => kind === 'landed');
  const displays = observations.filter(({ kind }) => kind !== 'landed');
  const anything = (list: readonly Observation[]): number =>
    list.reduce((sum, observation) => sum + logAnything(observation), 0);
  const unexplained =
    Math.log(UNEXPLAINED_PRIOR / 2) +
    logSum([
      anything(observations),
      anything(landings) - sumOfSquares(standardResiduals(circumstances, right, displays)) / 2,
    ]);
  const total = logSum([...weighed.map(({ logWeight }) => logWeight), noMistake, unexplained]);
  return {
    causes: weighed
      .map(({ logWeight, ...explanation }): Explanation => ({
        ...explanation,
        probability: Math.exp(logWeight - total),
        predictedMissDeg: predictedMissDeg(explanation.belief),
        residualDeg: leftOverDeg(circumstances, explanation.belief, observations),
      }))
      .sort((a, b) => b.probability - a.probability),
    noMistakeProbability: Math.exp(noMistake - total),
    unexplainedProbability: Math.exp(unexplained - total),
  };
};
