/** How likely a line tells each outcome of a remedy, judged by what some thousand members' lines told. */
import { onceOf } from '../../ground/once.js';
import type { SaidText } from '../answers/said-words.js';
import { STEP, type Weights } from '../examples/weights.js';
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

/** Of a line whose words are hardly known, what is known says nothing. */
const [LEAST_KNOWN, SHORT] = [0.34, 4];
const NOTHING_KNOWN: ReadonlyMap<string, number> = new Map();

const isWord = (mark: string): boolean => !mark.includes(' ') && !mark.startsWith('@') && !mark.startsWith(SHAPE);

/** Mark → its number. */
const numbersOf = onceOf(({ marks }: Weights) => new Map(marks.map((mark, i) => [mark, i])));

/** @returns outcome → probability; a multinomial logistic model, after its softmax; a line of which hardly a word is known tells of none of them */
export const likelyOutcomes = (weights: Weights, said: SaidText): ReadonlyMap<string, number> => {
  const { answers, starts, of, steps } = weights;
  const sums = new Float64Array(answers.length);
  const numbers = numbersOf(weights);
  let [known, knownWords] = [0, 0];
  for (const name of outcomeMarks(said)) {
    const mark = numbers.get(name);
    if (mark === undefined) continue;
    known += 1;
    knownWords += isWord(name) ? 1 : 0;
    const end = starts[mark + 1] ?? 0;
    for (let k = starts[mark] ?? 0; k < end; k++) {
      const answer = of[k] ?? 0;
      sums[answer] = (sums[answer] ?? 0) + (steps[k] ?? 0);
    }
  }
  if (knownWords === 0 || (said.words.length > SHORT && knownWords < LEAST_KNOWN * said.words.length))
    return NOTHING_KNOWN;
  const scale = STEP / Math.sqrt(known + 1);
  const most = Math.max(...sums);
  const odds = sums.map((sum) => Math.exp((sum - most) * scale));
  const all = odds.reduce((total, odd) => total + odd, 0);
  return new Map(answers.map((answer, i) => [answer, (odds[i] ?? 0) / all]));
};
