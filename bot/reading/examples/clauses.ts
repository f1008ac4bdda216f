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

export const clausesOf = (sentences: readonly Clauses[]): readonly Clause[] => {
  const clauses: Clause[] = [];
  for (const [number, sentence] of sentences.entries()) {
    let from = 0;
    const end = (to: number): void => {
      if (to > from) clauses.push({ sentence, number, from, to });
      from = to + 1;
    };
    for (const [i, { kind }] of sentence.tokens.entries()) if (kind === 'pause') end(i);
    end(sentence.tokens.length);
  }
  return clauses;
};
