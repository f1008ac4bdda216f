/** Spelling correction: the names a few slips of the finger away from what was typed, and the planets among them. */
import { createKept, type Kept } from '../ground/kept.js';
import { onceOf } from '../ground/once.js';
import { withoutKind } from './catalogue-index.js';
import type { Catalogue } from './catalogue.js';
import { editDistance, forgivenSlips, lettersOf, mayBeWithin } from '../ground/edit-distance.js';

export interface NearestNames {
  /** Positions so near, and so much nearer than any other, that they are what was meant; several where one name is shared. */
  readonly certain: readonly number[];
  /** How the certain name is spelt. */
  readonly spelling: string;
  /** Positions worth offering, nearest first. */
  readonly nearest: readonly number[];
}

interface Spelling {
  readonly key: string;
  readonly text: string;
  readonly position: number;
  readonly letters: number;
}

const spellingsOf = onceOf((catalogue: Catalogue): readonly Spelling[] =>
  catalogue.index.names.flatMap(({ key, text, position }) => {
    const short = withoutKind(
      text
        .normalize('NFKD')
        .toLowerCase()
        .replace(/[^a-z0-9 ]/g, ''),
    );
    const keys = short === null ? [key] : [key, short];
    return keys.map((one) => ({ key: one, text, position, letters: lettersOf(one) }));
  }),
);

const lookedUp = (catalogue: Catalogue, words: string): NearestNames => {
  const key = words.replaceAll(' ', '');
  const forgiven = forgivenSlips(key.length);
  const reach = Math.max(forgiven, 1 + Number(key.length > 3) + Number(key.length > 5));
  const found: { distance: number; spelling: Spelling }[] = [];
  const letters = lettersOf(key);
  for (const spelling of spellingsOf(catalogue)) {
    if (!mayBeWithin(letters, spelling.letters, reach)) continue;
    const distance = editDistance(key, spelling.key, reach);
    if (distance <= reach) found.push({ distance, spelling });
  }
  const { rank } = catalogue.index;
  found.sort((a, b) => a.distance - b.distance || (rank[a.spelling.position] ?? 0) - (rank[b.spelling.position] ?? 0));
  const best = found[0];
  const nearest = [...new Set(found.map((f) => f.spelling.position))];
  if (!best || best.distance > forgiven) return { certain: [], spelling: '', nearest };
  const same = found.filter((f) => f.distance === best.distance);
  return { certain: [...new Set(same.map((f) => f.spelling.position))], spelling: best.spelling.text, nearest };
};

/** One sentence is tried in many ways, and the same words of it each time. */
const WORDS_KEPT = 200;
const keptOf = onceOf((_: Catalogue): Kept<string, NearestNames> => createKept(WORDS_KEPT));

/** The names nearest to folded words. */
export const nearestNames = (catalogue: Catalogue, words: string): NearestNames =>
  keptOf(catalogue)(words, () => lookedUp(catalogue, words));

/** Positions of names that begin nearly as typed so far, best known first; the first letter is taken to be right. */
export const namesBeginningNearly = (catalogue: Catalogue, key: string, most: number): readonly number[] => {
  const forgiven = forgivenSlips(key.length);
  const { rank } = catalogue.index;
  const found = new Set<number>();
  for (const spelling of spellingsOf(catalogue)) {
    if (spelling.key.charCodeAt(0) !== key.charCodeAt(0)) continue;
    for (let length = key.length - forgiven; length <= key.length + forgiven; length += 1) {
      if (editDistance(key, spelling.key.slice(0, length), forgiven) <= forgiven) found.add(spelling.position);
    }
  }
  return [...found].sort((a, b) => (rank[a] ?? 0) - (rank[b] ?? 0)).slice(0, most);
};
