/** How likely a line tells each of a few kinds, by its marks and the weights that were fitted to them. */
import { onceOf } from '../../ground/once.js';
import { NOTHING, STEP, type Weights } from './weights.js';

/** Mark → its number. */
const numbersOf = onceOf(({ marks }: Weights) => new Map(marks.map((mark, i) => [mark, i])));

/**
 * @param isWord what tells by itself, and not only by the shape of the line; where none of it is known the line tells nothing
 * @returns kind → probability; a multinomial logistic model, after its softmax
 */
export const likelyOf = (
  weights: Weights,
  lineMarks: Iterable<string>,
  isWord: (mark: string) => boolean,
): ReadonlyMap<string, number> => {
  const { answers, starts, of, steps } = weights;
  const sums = new Float64Array(answers.length);
  const numbers = numbersOf(weights);
  let [known, knowsWords] = [0, false];
  for (const name of lineMarks) {
    const mark = numbers.get(name);
    if (mark === undefined) continue;
    known += 1;
    knowsWords ||= isWord(name);
    const end = starts[mark + 1] ?? 0;
    for (let k = starts[mark] ?? 0; k < end; k++) {
      const answer = of[k] ?? 0;
      sums[answer] = (sums[answer] ?? 0) + (steps[k] ?? 0);
    }
  }
  if (!knowsWords) return new Map([[NOTHING, 1]]);
  const scale = STEP / Math.sqrt(known + 1);
  const most = Math.max(...sums);
  const odds = sums.map((sum) => Math.exp((sum - most) * scale));
  const all = odds.reduce((total, odd) => total + odd, 0);
  return new Map(answers.map((answer, i) => [answer, (odds[i] ?? 0) / all]));
};
