/** Mends slips of a thumb to the nearest of a list of words; how much is forgiven is each list's own rule. */
import { editDistance, lettersOf, mayBeWithin } from './edit-distance.js';

const MOST_SLIPS = 2;

export interface SlipRule {
  /** How many slips are forgiven in a word of so many letters, at most MOST_SLIPS. */
  readonly mostIn: (letters: number) => number;
  /** In a shorter word one wrong letter makes another word; letters left out, doubled or swapped do not. */
  readonly leastForWrongLetter: number;
  /** From so many letters on a letter of the same sound is no wrong one; absent: it always is. */
  readonly leastForSameSound?: number;
}

const SOUNDS = [/[aeiouy]/gu, /[ckqsxz]/gu, /[mn]/gu, /[bp]/gu, /[dt]/gu, /[fv]/gu] as const;

/** What two letters that are taken for one another have in common: "eclipce" sounds as "eclipse". */
const soundOf = (word: string): string => SOUNDS.reduce((heard, alike, i) => heard.replace(alike, String(i)), word);

const sorted = (word: string): string => [...word].sort().join('');

/** How many slips make one word of the other, or infinitely many where it is another word. */
const slipsBetween = (typed: string, meant: string, rule: SlipRule): number => {
  const most = rule.mostIn(meant.length);
  const slips = editDistance(typed, meant, most);
  if (slips > most) return Infinity;
  if (typed.length !== meant.length || typed.length >= rule.leastForWrongLetter) return slips;
  if (typed.length >= (rule.leastForSameSound ?? Infinity) && soundOf(typed) === soundOf(meant)) return slips;
  return sorted(typed) === sorted(meant) ? slips : Infinity;
};

/**
 * @param words to mend to, of the letters a to z; of two equally near the earlier is meant
 * @returns gives the word that one of the same alphabet with slips in it means, or null; the first letter is taken to be right
 */
export const makeMender = (words: Iterable<string>, rule: SlipRule): ((typed: string) => string | null) => {
  const byFirst = new Map<string, { readonly meant: string; readonly letters: number }[]>();
  for (const meant of words) {
    const alike = byFirst.get(meant.charAt(0)) ?? [];
    alike.push({ meant, letters: lettersOf(meant) });
    byFirst.set(meant.charAt(0), alike);
  }
  return (typed) => {
    const letters = lettersOf(typed);
    let found: string | null = null;
    let fewest = Infinity;
    for (const one of byFirst.get(typed.charAt(0)) ?? []) {
      if (Math.abs(one.meant.length - typed.length) > MOST_SLIPS) continue;
      if (!mayBeWithin(letters, one.letters, MOST_SLIPS)) continue;
      const slips = slipsBetween(typed, one.meant, rule);
      if (slips >= fewest) continue;
      fewest = slips;
      found = one.meant;
    }
    return found;
  };
};
