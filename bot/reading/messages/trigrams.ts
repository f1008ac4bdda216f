/** Which runs of three characters a text holds, in one pass over it, so that a word that is not in it is told so without a search. */

const SIZE = 1 << 16;

/** Marked at the hash of each run; a mark may stand for other runs as well, a missing mark never lies. */
export type Trigrams = Uint8Array;

const hashAt = (text: string, at: number): number =>
  (Math.imul(Math.imul(text.charCodeAt(at), 0x1f1f) + text.charCodeAt(at + 1), 0x1f1f) + text.charCodeAt(at + 2)) &
  (SIZE - 1);

export const trigramsOf = (text: string): Trigrams => {
  const marks = new Uint8Array(SIZE);
  for (let at = 0; at + 2 < text.length; at++) marks[hashAt(text, at)] = 1;
  return marks;
};

/** The hashes of a word's runs; none for a word of one or two characters, which `mayHold` then lets pass. */
export const runsOf = (word: string): readonly number[] =>
  Array.from({ length: Math.max(0, word.length - 2) }, (_, at) => hashAt(word, at));

export const mayHold = (marks: Trigrams, runs: readonly number[]): boolean => {
  for (const run of runs) if (marks[run] !== 1) return false;
  return true;
};
