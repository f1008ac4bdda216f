/** The single words that targets' names are made of: what a mender of slips must leave as it stands. */
import { onceOf } from '../ground/once.js';
import type { Catalogue } from './catalogue.js';
import { CONSTELLATIONS } from './constellations.js';
import { MOVING_NAMES, SOLAR_SYSTEM } from './solar-system.js';
import { foldWords } from '../ground/fold-text.js';

/** In lower case, folded: "cat's eye" gives "cats" and "eye"; constellations by name, genitive and abbreviation. */
export const nameWords = onceOf((catalogue: Catalogue): ReadonlySet<string> => {
  const names = [
    ...catalogue.index.names.map(({ text }) => text),
    ...CONSTELLATIONS.flatMap(({ abbreviation, name, genitive }) => [abbreviation, name, genitive]),
    ...SOLAR_SYSTEM.map(({ name }) => name),
    ...MOVING_NAMES,
  ];
  return new Set(names.flatMap((name) => foldWords(name).split(' ')));
});
