/** The single words that targets' names are made of: what a mender of slips must leave as it stands. */
import { onceOf } from '../ground/once.js';
import { brightNamedStars } from './bright-stars.js';
import type { Catalogue } from './catalogue.js';
import { CONSTELLATIONS } from './constellations.js';
import { MOVING_NAMES, SOLAR_SYSTEM, SOLAR_SYSTEM_NAMES } from './solar-system.js';
import { foldWords } from '../ground/fold-text.js';

/** In lower case, folded: "cat's eye" gives "cats" and "eye"; constellations by name, genitive and abbreviation. */
export const nameWords = onceOf((catalogue: Catalogue): ReadonlySet<string> => {
  const names = [
    ...catalogue.index.names.map(({ text }) => text),
    ...CONSTELLATIONS.flatMap(({ abbreviation, name, genitive }) => [abbreviation, name, genitive]),
    ...SOLAR_SYSTEM_NAMES,
    ...MOVING_NAMES,
  ];
  return new Set(names.flatMap((name) => foldWords(name).split(' ')));
});

const LEAST_LETTERS = 4;

/** Of these the words that everybody knows: the planets, the constellations, bright stars and the finest showpieces. */
export const popularNames = onceOf((catalogue: Catalogue): ReadonlySet<string> => {
  const { sweep } = catalogue;
  // The best known first: of two as near to a slip the first is meant.
  const names = [...SOLAR_SYSTEM, ...brightNamedStars(catalogue)].map(({ name }) => name);
  names.push(...CONSTELLATIONS.map(({ name }) => name));
  for (let i = 0; i < sweep.length; i++) {
    if (!(sweep.showpieceRank[i]! >= 1 && sweep.showpieceRank[i]! <= 2)) continue;
    const { name, aliases } = catalogue.targetAt(i);
    names.push(name, ...aliases);
  }
  const words = names.flatMap((name) => foldWords(name).split(' '));
  return new Set(words.filter((word) => word.length >= LEAST_LETTERS && /^[a-z]+$/u.test(word)));
});
