/** What stands against every cause: that nothing is wrong, and that something is which no cause here predicts. */
import type { Circumstances, Observation } from './astray-types.js';
import type { Belief } from './controller-belief.js';
import { logSum } from './log-sum.js';
import { logAnything, misfitOf } from './observation-misfit.js';

/** Frequencies before anything is seen, on the scale of the mistakes' priors. Common practice, no source. */
const NO_MISTAKE_PRIOR = 5;
const UNEXPLAINED_PRIOR = 16;

/** Which readings may be anything, and how often: all; the landing (a slipped clutch); the display; display and landing. */
const ANYTHING: readonly { readonly share: number; readonly kinds: readonly Observation['kind'][] }[] = [
  { share: 0.4, kinds: ['lst', 'shown', 'landed'] },
  { share: 0.35, kinds: ['landed'] },
  { share: 0.15, kinds: ['shown', 'landed'] },
  { share: 0.05, kinds: ['shown'] },
  { share: 0.05, kinds: ['lst'] },
];

/** Log weights on the scale of {@link weighMistakes}. */
export const weighUnexplained = (
  circumstances: Circumstances,
  right: Belief,
  observations: readonly Observation[],
): { readonly noMistake: number; readonly unexplained: number } => ({
  noMistake: Math.log(NO_MISTAKE_PRIOR) - misfitOf(circumstances, right, observations),
  unexplained: logSum(
    ANYTHING.filter(({ kinds }) => observations.some(({ kind }) => kinds.includes(kind))).map(({ share, kinds }) => {
      const loose = observations.filter(({ kind }) => kinds.includes(kind));
      const tight = observations.filter(({ kind }) => !kinds.includes(kind));
      return (
        Math.log(UNEXPLAINED_PRIOR * share) +
        loose.reduce((sum, observation) => sum + logAnything(observation), 0) -
        misfitOf(circumstances, right, tight)
      );
    }),
  ),
});
