/** Spelling correction: the names a few slips of the finger away from what was typed, and the planets among them. */
import { onceOf } from '../ground/once.js';
import { withoutKind } from './catalogue-index.js';
import type { Catalogue } from './catalogue.js';
import { editDistance, forgivenSlips, lettersOf, mayBeWithin } from '../ground/edit-distance.js';

/** A name so near, and so much nearer than any other, that it is what was meant. */
export interface CertainName {
  /** Several where one name is shared; empty where there is none. */
  readonly positions: readonly number[];
  /** How it is spelt. */
  readonly spelling: string;
}

interface Spelling {
  readonly key: string;
  readonly text: string;
  readonly position: number;
  /** Its place in the list of all. */
  readonly order: number;
}

const spellingsOf = onceOf((catalogue: Catalogue): readonly Spelling[] =>
  catalogue.index.names
    .flatMap(({ key, text, position }) => {
      const short = withoutKind(
        text
          .normalize('NFKD')
          .toLowerCase()
          .replace(/[^a-z0-9 ]/g, ''),
      );
      const keys = short === null ? [key] : [key, short];
      return keys.map((one) => ({ key: one, text, position }));
    })
    .map((spelling, order) => ({ ...spelling, order })),
);

interface OfLength {
  readonly spellings: readonly Spelling[];
  /** The letters of each. */
  readonly letters: Int32Array;
}

const NO_SPELLINGS: OfLength = { spellings: [], letters: new Int32Array(0) };

/** By the length of their keys. */
const byLengthOf = onceOf((catalogue: Catalogue): readonly (OfLength | undefined)[] => {
  const all: Spelling[][] = [];
  for (const spelling of spellingsOf(catalogue)) (all[spelling.key.length] ??= []).push(spelling);
  return Array.from(all, (spellings: readonly Spelling[] | undefined) =>
    spellings === undefined
      ? undefined
      : { spellings, letters: Int32Array.from(spellings, ({ key }) => lettersOf(key)) },
  );
});

interface Near {
  readonly distance: number;
  readonly spelling: Spelling;
}

/** The spellings within so many slips, nearest and then best known first. */
const within = (catalogue: Catalogue, key: string, reach: number): readonly Near[] => {
  const own = lettersOf(key);
  const byLength = byLengthOf(catalogue);
  const found: Near[] = [];
  for (let length = Math.max(0, key.length - reach); length <= key.length + reach; length += 1) {
    const { spellings, letters } = byLength[length] ?? NO_SPELLINGS;
    for (const [i, spelling] of spellings.entries()) {
      if (!mayBeWithin(own, letters[i] ?? 0, reach)) continue;
      const distance = editDistance(key, spelling.key, reach);
      if (distance <= reach) found.push({ distance, spelling });
    }
  }
  const rankOf = ({ spelling }: Near): number => catalogue.index.rank[spelling.position] ?? 0;
  return found.sort((a, b) => a.distance - b.distance || rankOf(a) - rankOf(b) || a.spelling.order - b.spelling.order);
};

const NONE: CertainName = { positions: [], spelling: '' };

/** The name that folded words are certainly meant to be. */
export const certainName = (catalogue: Catalogue, words: string): CertainName => {
  const key = words.replaceAll(' ', '');
  const near = within(catalogue, key, forgivenSlips(key.length));
  const [best] = near;
  if (best === undefined) return NONE;
  const same = near.filter(({ distance }) => distance === best.distance);
  return { positions: [...new Set(same.map(({ spelling }) => spelling.position))], spelling: best.spelling.text };
};

/** Positions worth offering for folded words, nearest first. */
export const nearestNames = (catalogue: Catalogue, words: string): readonly number[] => {
  const key = words.replaceAll(' ', '');
  const reach = Math.max(forgivenSlips(key.length), 1 + Number(key.length > 3) + Number(key.length > 5));
  return [...new Set(within(catalogue, key, reach).map(({ spelling }) => spelling.position))];
};

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
