/** How many slips of the finger lie between two words: swaps of neighbours, missing, extra and wrong letters. */

/** Whether the first `i` letters of a and `j` of b end in the same two, swapped. */
const endInSwap = (a: string, i: number, b: string, j: number): boolean =>
  i > 1 && j > 1 && a.charCodeAt(i - 1) === b.charCodeAt(j - 2) && a.charCodeAt(i - 2) === b.charCodeAt(j - 1);

/** Three lines of the table, kept from one call to the next. */
const rows: readonly [number[], number[], number[]] = [[], [], []];

/**
 * Optimal string alignment distance (Damerau 1964, restricted to one edit a substring), given up once it must exceed `most`. Of the table
 * only what lies so near its diagonal is worked out: what leaves that has more slips already.
 * @returns the distance, or `most + 1` when it is greater than `most`.
 */
export const editDistance = (a: string, b: string, most: number): number => {
  const beyond = most + 1;
  if (Math.abs(a.length - b.length) > most) return beyond;
  let [before, previous, current] = rows;
  for (let j = 0; j <= b.length && j <= beyond; j += 1) previous[j] = j;
  for (let i = 1; i <= a.length; i += 1) {
    const from = Math.max(1, i - most);
    const to = Math.min(b.length, i + most);
    current[from - 1] = from === 1 ? i : beyond;
    let least = from === 1 ? i : beyond;
    for (let j = from; j <= to; j += 1) {
      const same = a.charCodeAt(i - 1) === b.charCodeAt(j - 1);
      const one = Math.min(previous[j] as number, current[j - 1] as number) + 1;
      const replaced = (previous[j - 1] as number) + (same ? 0 : 1);
      const swapped = endInSwap(a, i, b, j) ? (before[j - 2] as number) + 1 : beyond;
      const cost = Math.min(one, replaced, swapped);
      current[j] = cost;
      if (cost < least) least = cost;
    }
    if (least > most) return beyond;
    current[to + 1] = beyond;
    [before, previous, current] = [previous, current, before];
  }
  return Math.min(previous[b.length] as number, beyond);
};

/** Which letters a word has, each a bit (some share one). */
export const lettersOf = (word: string): number => {
  let letters = 0;
  for (let i = 0; i < word.length; i += 1) letters |= 1 << (word.charCodeAt(i) & 31);
  return letters;
};

/** Whether words with these letters can be so near: a slip brings in one letter and takes out one at most. Quick, for long lists. */
export const mayBeWithin = (a: number, b: number, slips: number): boolean => {
  let different = a ^ b;
  for (let left = 2 * slips; different !== 0; left -= 1) {
    if (left === 0) return false;
    different &= different - 1;
  }
  return true;
};

/** How many slips are forgiven in a word of this length: none up to 3 letters, one to 7, two beyond. */
export const forgivenSlips = (length: number): number => {
  if (length <= 3) return 0;
  return length <= 7 ? 1 : 2;
};

/** The name that a misspelt word most likely means; none where all are further off than `most` slips, or than a word so short would bear. */
export const nearestName = (word: string, names: Iterable<string>, most = 2): string | undefined =>
  [...names]
    .map((name) => ({ name, distance: editDistance(word, name, most) }))
    .filter(
      ({ distance, name }) => distance <= Math.min(most, name.length - 2, Math.max(1, Math.floor(word.length / 2) - 1)),
    )
    .sort((a, b) => a.distance - b.distance)[0]?.name;
