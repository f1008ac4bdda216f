/** The speller for what one member types: the words of questions, the commands, and the names that are right as they stand. */
import { foldWords } from '../../../ground/fold-text.js';
import { isProblem } from '../../../ground/problem.js';
import { isGenitive, MOON_FEATURES, nameWords, popularNames, type Catalogue } from '../../../catalogue/index.js';
import { countryWords, resolvePlace, type Places } from '../../../places/index.js';
import { beginsTownName, withCitiesHeld, withCitiesLoose } from '../sentence/city-words.js';
import { LITTLE_WORDS } from '../sentence/words.js';
import { heard, slipCost } from './slip-cost.js';
import { makeSpeller, type Mending, type Speller } from './speller.js';
import { ORDINARY_WORDS } from './ordinary-words.js';
import { SHORT_FORMS } from './short-forms.js';
import { ABBREVIATIONS, SPOKEN_WORDS } from './spoken-words.js';

/** Whose words are right as they stand. */
export interface Spelt {
  readonly catalogue: Catalogue;
  readonly commands: readonly { readonly name: string }[];
}

const kept = new WeakMap<Catalogue, { readonly commands: Spelt['commands']; readonly speller: Speller }>();

/** Of craters and the like: Plato is no Pluto. */
const MOON_WORDS = MOON_FEATURES.flatMap(({ name }) => foldWords(name).split(' '));

/** One for each catalogue and list of commands; it is made at the first question and kept. */
export const spellerFor = ({ catalogue, commands }: Spelt): Speller => {
  const before = kept.get(catalogue);
  if (before?.commands === commands) return before.speller;
  const names = nameWords(catalogue);
  const right = new Set([...ABBREVIATIONS, ...ORDINARY_WORDS, ...countryWords(), ...MOON_WORDS]);
  const speller = makeSpeller(
    [...SPOKEN_WORDS, ...commands.map(({ name }) => name), ...LITTLE_WORDS],
    popularNames(catalogue),
    (word) => names.has(word) || right.has(word),
  );
  kept.set(catalogue, { commands, speller });
  return speller;
};

/** What a slip in a command's name may cost: nothing else of the line says that a command is meant. */
const mostInCommand = (letters: number): number => (letters <= 6 ? 0.8 : 1.1);

/** Among the commands' names; a word that is right as it stands is no command with a slip. */
export const commandMeant = (typed: string, spelt: Spelt): string | null => {
  const word = typed.toLowerCase();
  const names = spelt.commands.map(({ name }) => name);
  if (names.includes(word)) return word;
  if (word.length < LEAST_IN_COMMAND || spellerFor(spelt).isKnown(word)) return null;
  const near = names
    .map((name) => ({ name, cost: slipCost(heard(word), heard(name), mostInCommand(name.length)) }))
    .filter(({ name, cost }) => cost <= mostInCommand(name.length))
    .sort((a, b) => a.cost - b.cost);
  return near[0]?.name ?? null;
};
const LEAST_IN_COMMAND = 3;

/** The marks at the end go with the slips. */
const withoutEnd = (text: string): string => text.replace(/(?<=\p{L})\s*[?!.…]+$/u, '').trim();

export interface Names extends Spelt {
  readonly places: () => Places;
  /** Of the member and the club. */
  readonly siteNames?: readonly string[];
}

const KNOWN_TOWN = 5000;
const BEFORE_PLACE = /^(?:from|in|near|at|for)$/u;

export interface Mended {
  readonly text: string;
  /** Names with slips, as typed and as taken: "Took “satrun” to be Saturn" stands under the answer. */
  readonly names: readonly { readonly typed: string; readonly found: string }[];
}

/** Words with their slips mended, those of names too; a saved site's, a town's and a comet's name stay as they are. */
export const mendedWithNames = (text: string, names: Names): Mended => mendedBy(text, names, 'names too');

/** The same, but for targets' names: who looks a target up says himself what he took it for. */
export const mended = (text: string, names: Names): string => mendedBy(text, names, 'words').text;

/** As options of a command are typed: any word may be a place. */
export const mendedOptions = (text: string, names: Names): string =>
  withCitiesLoose(mendedBy(withCitiesHeld(text, names, true), names, 'options').text);

const mendedBy = (text: string, names: Names, what: 'words' | 'names too' | 'options'): Mended => {
  const { catalogue, places, siteNames = [] } = names;
  const speller = spellerFor(names);
  const ofSites = new Set(siteNames.flatMap((name) => name.toLowerCase().split(/\s+/u)));
  const taken: { typed: string; found: string }[] = [];
  // Somewhere is a small town called so; in small letters a slip is likelier.
  const isTown = (word: string, isCapital: boolean): boolean => {
    const found = resolvePlace(places(), word);
    if (isProblem(found)) return found.problem === 'ambiguous-place';
    return isCapital || what === 'options' || found.place.population >= KNOWN_TOWN;
  };
  const isPlace = ({ typed, found, before, isCapital }: Mending): boolean => {
    if (BEFORE_PLACE.test(before) ? beginsTownName(typed) : beginsTownName(before) && !LITTLE_WORDS.has(found))
      return true;
    if (SHORT_FORMS.has(typed) || !(what === 'options' || BEFORE_PLACE.test(before))) return false;
    return found.includes(' ') || isTown(typed, isCapital);
  };
  const isKept = (mending: Mending): boolean => {
    const { typed, found, after } = mending;
    const isKeptName = speller.isName(found) && what !== 'names too';
    // "R Leonis" is no "are Leonis".
    const isVariable = typed.length === 1 && isGenitive(after);
    if (isKeptName || isVariable || ofSites.has(typed)) return true;
    if ((catalogue.moving?.find(typed).length ?? 0) > 0 || isPlace(mending)) return true;
    if (speller.isName(found)) taken.push({ typed, found });
    return false;
  };
  return { text: withoutEnd(speller.text(text, isKept)), names: taken };
};
