/** The speller for what one member types: the words of questions, the commands, and the names that are right as they stand. */
import { isProblem } from '../../../ground/problem.js';
import { isGenitive, nameWords, type Catalogue } from '../../../catalogue/index.js';
import { resolvePlace, type Places } from '../../../places/index.js';
import { LITTLE_WORDS } from '../sentence/words.js';
import { makeSpeller, type Speller } from './speller.js';
import { ORDINARY_WORDS } from './ordinary-words.js';
import { SHORT_FORMS } from './short-forms.js';
import { ABBREVIATIONS, SPOKEN_WORDS } from './spoken-words.js';

const kept = new WeakMap<Catalogue, Speller>();

const COMMAND_WORDS = 'triage altitude tonight entries astray mydata causes'.split(' ');

/** One for each catalogue; it is made at the first question and kept. */
export const spellerFor = (catalogue: Catalogue): Speller => {
  const before = kept.get(catalogue);
  if (before !== undefined) return before;
  const names = nameWords(catalogue);
  const right = new Set([...ABBREVIATIONS, ...ORDINARY_WORDS]);
  const speller = makeSpeller(
    [...SPOKEN_WORDS, ...COMMAND_WORDS, ...LITTLE_WORDS],
    (word) => names.has(word) || right.has(word),
  );
  kept.set(catalogue, speller);
  return speller;
};

/** Among the commands' names; a word that is right as it stands is no command with a slip. */
export const commandMeant = (typed: string, catalogue: Catalogue, names: readonly string[]): string | null => {
  const isRight = (word: string): boolean => spellerFor(catalogue).isKnown(word);
  const found = makeSpeller(names, isRight).word(typed.toLowerCase());
  return names.includes(found) ? found : null;
};

/** The marks at the end go with the slips. */
const withoutEnd = (text: string): string => text.replace(/(?<=\p{L})\s*[?!.…]+$/u, '').trim();

export interface Names {
  readonly catalogue: Catalogue;
  readonly places: () => Places;
  /** Of the member and the club. */
  readonly siteNames?: readonly string[];
}

const BEFORE_PLACE = /^(?:from|in|near|at|for)$/u;

/** Words with their slips mended; a saved site's, a town's and a comet's name stay as they are. */
export const mended = (text: string, { catalogue, places, siteNames = [] }: Names): string => {
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
  return withoutEnd(spellerFor(catalogue).text(text, isKept));
};
