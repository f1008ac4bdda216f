/**
 * How likely a line comes near what the Sun does to eyes, cameras and tubes, judged by some two thousand lines whose meaning is known
 * (scripts/reading/sun): it hears what no rule has a word for. Pure.
 */
import { likelyOf, NOTHING, type Weights } from '../../../reading/index.js';
import { sunMarks } from './sun-marks.js';

/**
 * `looks`: somebody looks, points or takes pictures at the Sun or beside it. `open`: a tube stands open, or runs alone, by day. `harmed`: it has
 * happened. `guarded`: with what is proper. `talk`: of the Sun, and of no harm.
 */
export const SUN_KINDS = ['looks', 'open', 'harmed', 'guarded', 'talk'] as const;

const HARMS = ['looks', 'open', 'harmed'] as const;
export type HarmKind = (typeof HARMS)[number];

export interface LikelySun {
  /** The likeliest of the three that hurt. */
  readonly harm: HarmKind;
  /** How likely it is one of the three, 0 to 1. */
  readonly danger: number;
  /** How likely it is none of them, nor of a guard, 0 to 1. */
  readonly harmless: number;
}

export const likelySun = (weights: Weights, text: string): LikelySun => {
  const likely = likelyOf(weights, sunMarks(text));
  const oddsOf = (kind: string): number => likely.get(kind) ?? 0;
  return {
    harm: HARMS.reduce((one, other) => (oddsOf(other) > oddsOf(one) ? other : one)),
    danger: HARMS.reduce((sum, kind) => sum + oddsOf(kind), 0),
    // A line of which nothing is known is no sign of harm.
    harmless: likely.size === 0 ? 1 : oddsOf('talk') + oddsOf(NOTHING),
  };
};
