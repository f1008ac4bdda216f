/** How likely a line tells each outcome of a remedy, judged by what some thousand members' lines told. */
import type { SaidText } from '../answers/said-words.js';
import { likelyOf } from '../examples/likely-of.js';
import type { Weights } from '../examples/weights.js';
import { outcomeMarks } from './outcome-marks.js';

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

/** Of a line whose words are hardly known, what is known says nothing; a short one is told by a single word. */
const [LEAST_KNOWN, SHORT] = [0.34, 4];

/** @returns outcome → probability; none of a line of which hardly a word is known */
export const likelyOutcomes = (weights: Weights, said: SaidText): ReadonlyMap<string, number> => {
  const { length } = said.words;
  return likelyOf(weights, outcomeMarks(said), length > SHORT ? LEAST_KNOWN * length : 1);
};
