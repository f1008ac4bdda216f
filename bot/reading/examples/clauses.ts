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

const countOf = ({ tokens }: Clauses): number => tokens.reduce((sum, { kind }) => sum + (kind === 'pause' ? 1 : 0), 1);

/**
 * Of a long text, as many sentences as have that many clauses: those that tell something come before the rest.
 * @param tells whether a saying stands in a sentence
 * @returns in their order
 */
export const worthHearing = (
  sentences: readonly Clauses[],
  most: number,
  tells: (sentence: Clauses) => boolean,
): readonly Clauses[] => {
  const counts = sentences.map(countOf);
  let room = most;
  if (counts.reduce((sum, count) => sum + count, 0) <= room) return sentences;
  const heard = new Set<number>();
  for (const told of [true, false])
    for (const [i, sentence] of sentences.entries()) {
      const count = counts[i] ?? 0;
      if (room < count || tells(sentence) !== told) continue;
      heard.add(i);
      room -= count;
    }
  return sentences.filter((_, i) => heard.has(i));
};
