/** How likely a line tells each outcome of a remedy, judged by what some thousand members' lines told. */
import type { SaidText } from '../answers/said-words.js';
import { likelyOf } from '../examples/likely-of.js';
import type { Weights } from '../examples/weights.js';
import { outcomeMarks, SHAPE } from './outcome-marks.js';

/** What weights may be fitted to; `nothing` stands as NOTHING among them. */
export const LEARNED_OUTCOMES = [
  'cured',
  'partly',
  'worse',
  'unchanged',
  'could-not',
  'done',
  'not-yet',
  'asks-back',
] as const;
export type LearnedOutcome = (typeof LEARNED_OUTCOMES)[number];

/** @returns outcome → probability; a line of which no word is known tells nothing */
export const likelyOutcomes = (weights: Weights, said: SaidText): ReadonlyMap<string, number> =>
  likelyOf(weights, outcomeMarks(said), (mark) => !mark.startsWith(SHAPE));
