/** The speller for what one member types: the words of questions, the commands, and the names that are right as they stand. */
import { isProblem } from '../../../ground/problem.js';
import { isGenitive, nameWords, type Catalogue } from '../../../catalogue/index.js';
import { resolvePlace, type Places } from '../../../places/index.js';
import { LITTLE_WORDS } from '../sentence/words.js';
import { makeSpeller, type Speller } from './speller.js';
import { ORDINARY_WORDS } from './ordinary-words.js';
import { SHORT_FORMS } from './short-forms.js';
import { ABBREVIATIONS, SPOKEN_WORDS } from './spoken-words.js';

/** Whose words are right as they stand. */
export interface Spelt {
  readonly catalogue: Catalogue;
  readonly commands: readonly { readonly name: string }[];
}

const kept = new WeakMap<Catalogue, { readonly commands: Spelt['commands']; readonly speller: Speller }>();

/** One for each catalogue and list of commands; it is made at the first question and kept. */
export const spellerFor = ({ catalogue, commands }: Spelt): Speller => {
  const before = kept.get(catalogue);
  if (before?.commands === commands) return before.speller;
  const names = nameWords(catalogue);
  const right = new Set([...ABBREVIATIONS, ...ORDINARY_WORDS]);
  const speller = makeSpeller(
    [...SPOKEN_WORDS, ...commands.map(({ name }) => name), ...LITTLE_WORDS],
    (word) => names.has(word) || right.has(word),
  );
  kept.set(catalogue, { commands, speller });
  return speller;
};

/** Among the commands' names; a word that is right as it stands is no command with a slip. */
export const commandMeant = (typed: string, spelt: Spelt): string | null => {
  const isRight = (word: string): boolean => spellerFor(spelt).isKnown(word);
  const names = spelt.commands.map(({ name }) => name);
  const found = makeSpeller(names, isRight).word(typed.toLowerCase());
  return names.includes(found) ? found : null;
};

/** The marks at the end go with the slips. */
const withoutEnd = (text: string): string => text.replace(/(?<=\p{L})\s*[?!.…]+$/u, '').trim();

export interface Names extends Spelt {
  readonly places: () => Places;
  /** Of the member and the club. */
  readonly siteNames?: readonly string[];
}

const BEFORE_PLACE = /^(?:from|in|near|at|for)$/u;

/** Words with their slips mended; a saved site's, a town's and a comet's name stay as they are. */
export const mended = (text: string, names: Names): string => {
  const { catalogue, places, siteNames = [] } = names;
  const ofSites = new Set(siteNames.flatMap((name) => name.toLowerCase().split(/\s+/u)));
  const isTown = (word: string): boolean => {
    const found = resolvePlace(places(), word);
    return !isProblem(found) || found.problem === 'ambiguous-place';
  };
  const isKept = (word: string, before: string, after: string): boolean =>
    ofSites.has(word) ||
    // "R Leonis" is no "are Leonis".
    (word.length === 1 && isGenitive(after)) ||
    (catalogue.moving?.find(word).length ?? 0) > 0 ||
    (BEFORE_PLACE.test(before) && !SHORT_FORMS.has(word) && isTown(word));
  return withoutEnd(spellerFor(names).text(text, isKept));
};
