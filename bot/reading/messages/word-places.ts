/**
 * Where words stand in a text. Many words are found together in one pass: each is looked for only where three characters of
 * it stand that few of the others have, so that what a text does not hold costs it nothing.
 */

/** The places of a word in one text, in order, none of them inside the one before. */
export type Places = (word: string) => readonly number[];

const NONE: readonly number[] = [];
const RUN = 3;
const SIZE = 1 << 14;

const hashOf = (first: number, second: number, third: number): number =>
  (Math.imul(Math.imul(first, 0x1f1f) + second, 0x1f1f) + third) & (SIZE - 1);

const hashAt = (text: string, at: number): number =>
  hashOf(text.charCodeAt(at), text.charCodeAt(at + 1), text.charCodeAt(at + 2));

const searchedFor = (text: string, word: string): readonly number[] => {
  const places: number[] = [];
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + word.length)) places.push(at);
  return places;
};

/** Word by word, for a text of which little is asked. */
export const placesBySearch =
  (text: string): Places =>
  (word) =>
    searchedFor(text, word);

/** A word and where in it the three characters stand by which it is found. */
interface Indexed {
  readonly word: string;
  readonly offset: number;
  /** Its first letter: most that share a run differ there already. */
  readonly first: number;
}

const NO_WORDS: readonly Indexed[] = [];

/** Of the runs of three in a word, the one that the fewest words have. */
const rarestRun = (word: string, uses: Uint16Array): number => {
  let best = 0;
  for (let at = 1; at + RUN <= word.length; at++)
    if ((uses[hashAt(word, at)] ?? 0) < (uses[hashAt(word, best)] ?? 0)) best = at;
  return best;
};

export type WordIndex = (text: string) => Places;

/** @param words in the form of the texts; one of less than three characters is searched for when it is asked for */
export const indexWords = (words: Iterable<string>): WordIndex => {
  const long = [...new Set(words)].filter((word) => word.length >= RUN);
  const uses = new Uint16Array(SIZE);
  for (const word of long)
    for (let at = 0; at + RUN <= word.length; at++) uses[hashAt(word, at)] = (uses[hashAt(word, at)] ?? 0) + 1;
  /** Hash of a run → the number of its list, from 1; 0: no word is found by it. */
  const listOf = new Uint16Array(SIZE);
  const lists: Indexed[][] = [[]];
  for (const word of long) {
    const offset = rarestRun(word, uses);
    const hash = hashAt(word, offset);
    if (listOf[hash] === 0) listOf[hash] = lists.push([]) - 1;
    lists[listOf[hash] ?? 0]?.push({ word, offset, first: word.charCodeAt(0) });
  }
  return (text) => {
    const found = new Map<string, number[]>();
    let [first, second] = [text.charCodeAt(0), text.charCodeAt(1)];
    for (let at = 0; at + RUN <= text.length; at++) {
      const third = text.charCodeAt(at + 2);
      const list = listOf[hashOf(first, second, third)] ?? 0;
      first = second;
      second = third;
      if (list === 0) continue;
      for (const { word, offset, first: letter } of lists[list] ?? NO_WORDS) {
        const start = at - offset;
        if (start < 0 || text.charCodeAt(start) !== letter || !text.startsWith(word, start)) continue;
        const before = found.get(word);
        if (before === undefined) found.set(word, [start]);
        else if (start >= (before[before.length - 1] ?? 0) + word.length) before.push(start);
      }
    }
    return (word) => (word.length < RUN ? searchedFor(text, word) : (found.get(word) ?? NONE));
  };
};
