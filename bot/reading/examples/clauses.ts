/** Sentences parted at their commas into clauses. */
import type { Clauses } from '../words/sentences.js';

/** Tokens `from` up to `to` of a sentence. */
export interface Clause {
  readonly sentence: Clauses;
  /** Sentences in their order; clauses of one have the same. */
  readonly number: number;
  readonly from: number;
  readonly to: number;
}

/** @param most so many at most, the first */
export const clausesOf = (sentences: Iterable<Clauses>, most = Infinity): readonly Clause[] => {
  const clauses: Clause[] = [];
  let number = 0;
  for (const sentence of sentences) {
    const { tokens } = sentence;
    let from = 0;
    for (let to = 0; to <= tokens.length; to++) {
      if (to < tokens.length && tokens[to]?.kind !== 'pause') continue;
      if (to > from && clauses.push({ sentence, number, from, to }) >= most) return clauses;
      from = to + 1;
    }
    number += 1;
  }
  return clauses;
};
