/** How likely a line tells each of a few kinds, by its marks and the weights that were fitted to them. */
import { onceOf } from '../../ground/once.js';
import { STEP, type Weights } from './weights.js';

/** Begins the marks of how long a line is and whether it asks, which no word stands behind. */
export const SHAPE = '=';

/** Mark → its number. */
const numbersOf = onceOf(({ marks }: Weights) => new Map(marks.map((mark, i) => [mark, i])));

/** A single word, and not words in a row, kinds of words or the line's shape. */
const isWord = (mark: string): boolean => !mark.includes(' ') && !mark.startsWith('@') && !mark.startsWith(SHAPE);

const NOTHING_KNOWN: ReadonlyMap<string, number> = new Map();

/**
 * @param leastKnown of fewer words that are known nothing is told
 * @returns kind → probability; a multinomial logistic model, after its softmax
 */
export const likelyOf = (
  weights: Weights,
  lineMarks: Iterable<string>,
  leastKnown = 1,
): ReadonlyMap<string, number> => {
  const { answers, starts, of, steps } = weights;
  const sums = new Float64Array(answers.length);
  const numbers = numbersOf(weights);
  let [known, knownWords] = [0, 0];
  for (const name of lineMarks) {
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
  if (knownWords < leastKnown) return NOTHING_KNOWN;
  const scale = STEP / Math.sqrt(known + 1);
  const most = Math.max(...sums);
  const odds = sums.map((sum) => Math.exp((sum - most) * scale));
  const all = odds.reduce((total, odd) => total + odd, 0);
  return new Map(answers.map((answer, i) => [answer, (odds[i] ?? 0) / all]));
};
