/** The place in a sentence: a position, a saved site, a word for home, or a town after a word that says it is one. */
import { beginsConstellation } from '../../../catalogue/index.js';
import { isProblem } from '../../../ground/problem.js';
import {
  foldPlace,
  isPosition,
  namesRegion,
  populationFound,
  resolvePlace,
  type PlaceRecord,
  type PlaceResolution,
  type Places,
} from '../../../places/index.js';
import { isPrivateWord, sameSiteName } from '../resolve-site.js';
import { savedNameMeant } from '../saved-name-meant.js';
import { beginsTownName } from './city-words.js';
import { countryIn } from './country-said.js';
import type { PlaceKnowledge } from './place-knowledge.js';
import { isGreatCity, isOfThing, isSaidAsWord, LEADS_TO_TOWN, NO_TOWN } from './town-or-word.js';
import { isLittle, runAt, runsOf, take, takeFirst, wordBefore, type Run, type Sentence } from './words.js';

const PREPOSITION = /^(?:at|from|in|near|over|around|outside|by|to|is|as|use|save|store|add)$/u;
/** A town after these is one however small; after others it may be another word. */
const SAYS_PLACE = /^(?:from|near|outside)$/u;
const LEAST_POPULATION = 5000;
const MONTH = /^(?:january|february|march|april|may|june|july|august|september|october|november|december)(?: |$)/iu;

const isPlainPosition = ({ typed }: Run): boolean => {
  if (!/\d/u.test(typed)) return false;
  const hasMark = /\d\s*,\s*[-+−\d]|\d\s*[°'"′″]*\s*[ns]\b.*\d\s*[°'"′″]*\s*[ew]\b/iu.test(typed);
  // Two plain numbers are a position where both have their decimals.
  const isPair = /^[-+−]?\d{1,2}\.\d+ [-+−]?\d{1,3}\.\d+$/u.test(typed);
  return (hasMark || isPair) && isPosition(typed);
};

const positionText = ({ typed }: Run): string =>
  /[a-z]/iu.test(typed) ? typed : typed.replace(/^([^\s,]+)[\s,]+(\S+)$/u, '$1,$2');

const withoutOwner = (text: string): string => text.replace(/^(?:my|our|the) /iu, '');

/** A word for where someone lives: "my garden", "from home", "at the club". */
const privateIn = (run: Run, before: string): string | null => {
  const name = withoutOwner(run.plain);
  const isOwned = name !== run.plain;
  if (!isPrivateWord(name) || name === 'here') return null;
  const isWeak = /^(?:place|site|work|school|club|house|field|pier|obs|dome)$/u.test(name);
  if (/^(?:site|place)$/u.test(name)) return null;
  return (isOwned && (!isWeak || PREPOSITION.test(before))) || (PREPOSITION.test(before) && !isWeak) ? name : null;
};

/** A city whose name is a target's as well ("cork" is a nebula's) is the city after "in"; a constellation is not. */
const CITY_POPULATION = 50_000;
const SAYS_WHERE = /^(?:in|from|near|use)$/u;

const isWanted = (run: Run, before: string, population: number, known: PlaceKnowledge): boolean => {
  // No target is meant by an everyday word: Eye and Nice after "from" are towns.
  if (!isLittle(run.plain) && (known.isTarget(run.plain) || known.isSlip(run.plain)))
    return (
      known.isOfPair !== true &&
      SAYS_WHERE.test(before) &&
      population >= CITY_POPULATION &&
      !known.isSeveralTargets(run.plain)
    );
  return /^\p{Lu}\p{Ll}/u.test(run.typed) || SAYS_PLACE.test(before) || population >= LEAST_POPULATION;
};

/** Towns whose names are words as well, where a capital and "from" or "in" say that the town is meant: Nice, Best, March, Eye. */
const isNamedLikeWord = ({ typed, plain, count }: Run, before: string): boolean =>
  count === 1 && /^\p{Lu}\p{Ll}+$/u.test(typed) && /^(?:from|in|near)$/u.test(before) && !NO_TOWN.test(plain);
/**
 * Words of the trade that towns are called by as well (Meridian, Delta, Split, Due for Douai): a town only straight after what leads to
 * one, as "in the meridian" and "due north" are of the sky.
 */
const OF_TRADE =
  /^(?:alpha|beta|gamma|delta|epsilon|zeta|eta|theta|iota|kappa|lambda|mu|nu|xi|omicron|pi|rho|sigma|tau|upsilon|phi|chi|psi|omega|meridian|transit|apex|split|due|band|pole|angle|tilt|crescent|bias|lens|star|gap|limit|mare|date|list|lit)$/u;
const GREEK =
  /^(?:alpha|beta|gamma|delta|epsilon|zeta|eta|theta|iota|kappa|lambda|mu|nu|xi|omicron|pi|rho|sigma|tau|upsilon|phi|chi|psi|omega)\d?$/u;
const LONGEST_NAME = 3;

/** "delta cephei", "the pole star": a word that begins or ends a target's name, with the words beside it, is no town. */
const isPartOfName = ({ words }: Sentence, { at, count, plain }: Run, known: PlaceKnowledge): boolean => {
  const next = words[at + count]?.plain ?? '';
  if (GREEK.test(plain) && next !== '' && beginsConstellation(next)) return true;
  const beside = [1, 2].flatMap((more) => [
    plainOf(words.slice(at, at + count + more)),
    plainOf(words.slice(Math.max(0, at - more), at + count)),
  ]);
  return (
    OF_TRADE.test(plain) &&
    beside.some((name) => name !== plain && name.split(' ').length <= LONGEST_NAME && known.isTarget(name))
  );
};

const isOfTrade = (sentence: Sentence, run: Run, known: PlaceKnowledge): boolean =>
  OF_TRADE.test(run.plain) && (!LEADS_TO_TOWN.test(wordBefore(sentence, run.at)) || isPartOfName(sentence, run, known));

/** "San" before "Frobto" is no town of itself. */
const isPartOfTown = (
  { words }: Sentence,
  { at, count, plain }: Run,
  { isWord, isTarget }: PlaceKnowledge,
): boolean => {
  const next = words[at + count]?.plain ?? '';
  return beginsTownName(plain) && /^\p{L}{3,}$/u.test(next) && !isLittle(next) && !isWord(next) && !isTarget(next);
};

const mayBeTown = (run: Run, before: string): boolean => {
  const words = run.plain.split(' ');
  const isPlainWord = !isNamedLikeWord(run, before) && (isLittle(words[0] ?? '') || isLittle(words.at(-1) ?? ''));
  return (
    PREPOSITION.test(before) &&
    !isPlainWord &&
    !MONTH.test(run.plain) &&
    run.plain.length >= 3 &&
    /^\p{L}[\p{L}'., -]+$/u.test(run.typed)
  );
};

/** A name nobody knows: the answer says so, rather than for another place. */
const isUnknownTown = (run: Run, before: string, known: PlaceKnowledge): boolean => {
  const isNamed = /^\p{Lu}\p{Ll}/u.test(run.typed) ? run.count === 1 : /,/u.test(run.typed) && SAYS_PLACE.test(before);
  return isNamed && SAYS_WHERE.test(before) && !known.isTarget(run.plain);
};

const candidatesOf = (found: PlaceResolution): readonly PlaceRecord[] => {
  if (!isProblem(found)) return [found.place];
  return found.problem === 'ambiguous-place' ? found.candidates : [];
};

/**
 * Whether a town is called so by its own name, or a city by another: "tilt" and "angle" are what some language calls a small town, and
 * beside a target nobody means it.
 */
export const isOwnName = (places: Places, text: string): boolean => {
  const found = resolvePlace(places, text);
  if (!isProblem(found) && found.isQualified) return true;
  const name = foldPlace(text.split(',')[0] ?? '');
  return candidatesOf(found).some((place) => foldPlace(place.name) === name || place.population >= CITY_POPULATION);
};

/** What one does with a target. */
const OBSERVES =
  /^(?:split|splits|resolve|separate|divide|catch|bag|spot|snag|grab|nail|hunt|chase|image|shoot|sketch|try|track|watch|star|hop|tour|sweep|mount|align)\b/u;

const townIn = (run: Run, before: string, known: PlaceKnowledge, isLast = false): string | null => {
  if (run.isCity || (isLast && isGreatCity(run, before, known))) return run.plain;
  if (!mayBeTown(run, before) || run.plain === 'earth' || (/^(?:to|near)$/u.test(before) && OBSERVES.test(run.plain)))
    return null;
  const population = populationFound(resolvePlace(known.places(), run.typed));
  const isMeant = population === null ? isUnknownTown(run, before, known) : isWanted(run, before, population, known);
  return isMeant ? run.typed.toLowerCase() : null;
};

const LONGEST = 4;
/** "51 30 12 n 0 7 39 w". */
const LONGEST_POSITION = 8;
/** "from", and "in" or "at" where the words end or a part of the question follows. */
const LEADS_TO_PLACE = /^(?:from|in|at|outside)$/u;

const plainOf = (words: Sentence['words']): string => words.map(({ plain }) => plain).join(' ');

/** Whether a word may be one of a place that nobody knows. */
const mayNamePlace = ({ words, taken }: Sentence, at: number, { isWord }: PlaceKnowledge): boolean => {
  const word = words[at]?.plain ?? '';
  return taken[at] === false && /^\p{L}[\p{L}'-]+$/u.test(word) && !isLittle(word) && !isWord(word);
};

/** Where the words of a place end that begin at `first`: "hill", "farm" and the like are of it after a name. */
const endOfPlace = ({ words, taken }: Sentence, first: number): number => {
  let end = first;
  while (end < first + LONGEST && taken[end] === false && !isLittle(words[end]?.plain ?? '')) end++;
  return end;
};

/** "m 13 in herc" and "m 42 in colour" are in no town; "at kielder" may be, "at bedtime" is not. */
const mayBeNoTown = ({ words }: Sentence, at: number, known: PlaceKnowledge): boolean =>
  words[at]?.plain === 'at' ||
  [1, 2, 3].some((count) => known.isTarget(plainOf(words.slice(Math.max(0, at - count), at))));

export interface UnknownPlace {
  readonly name: string;
  /** "m 42 in zzyzx" may be a place, "m 42 in colour" is none: the answer says that it is for the usual site. */
  readonly isPerhaps: boolean;
}

/** What follows a word that may lead to a place; its words are taken. */
const unknownAfter = (sentence: Sentence, at: number, known: PlaceKnowledge): UnknownPlace | null => {
  const { words, taken } = sentence;
  const lead = words[at]?.plain ?? '';
  if (!LEADS_TO_PLACE.test(lead) || taken[at] === true) return null;
  const first = /^(?:the|my|our)$/u.test(words[at + 1]?.plain ?? '') ? at + 2 : at + 1;
  const end = endOfPlace(sentence, first);
  // "cape twon": one of its words is enough.
  const among = lead === 'from' ? words.slice(first, end).map((_, i) => first + i) : [first];
  const name = plainOf(words.slice(first, end));
  const isWhole = lead === 'from' || end === words.length || taken[end] === true;
  if (!isWhole || !among.some((i) => mayNamePlace(sentence, i, known)) || isNoPlace(name, known)) return null;
  take(sentence, { at, count: end - at });
  return { name, isPerhaps: lead !== 'from' && mayBeNoTown(sentence, at, known) };
};

/** "from blackdown hill": words that are neither a place nor anything else we know, as many as there are; the answer says so. */
export const takeUnknownPlace = (sentence: Sentence, known: PlaceKnowledge): UnknownPlace | null => {
  for (const at of sentence.words.keys()) {
    const found = unknownAfter(sentence, at, known);
    if (found !== null) return found;
  }
  return null;
};

/** What something may be seen in that is no place: a constellation by its short name, and how a picture is taken. */
const isNowhere = (name: string): boolean =>
  beginsConstellation(name) || /^(?:colou?r|detail|stereo|mono|earth|space|[ns][ew])$/u.test(name);

const isNoPlace = (name: string, known: PlaceKnowledge): boolean => {
  const isOneTarget = (word: string): boolean => known.isTarget(word) && !known.isSeveralTargets(word);
  return name.split(' ').some(isOneTarget) || mayBeTarget(name, known) || isNowhere(name);
};

const mayBeTarget = (name: string, known: PlaceKnowledge): boolean => known.isTarget(name) || known.isSlip(name);

/** A saved name with a slip in it, or one word of it, where no town of a size bears it. */
const savedSlip = (run: Run, before: string, known: PlaceKnowledge): string | null => {
  if (!SAYS_SAVED.test(before) || known.isTarget(run.plain)) return null;
  const found = savedNameMeant(run.plain, known.siteNames);
  if (found === null) return null;
  return (populationFound(resolvePlace(known.places(), run.typed)) ?? 0) < LEAST_POPULATION
    ? found.toLowerCase()
    : null;
};
const SAYS_SAVED = /^(?:at|from|in|near|the|my|our|use|to)$/u;

/** "my site is …", "move our place to …": what is told of a site, and only then where it is. */
const OF_SITE =
  /^(?:(?:ok|hi|please|and|no|sorry|actually) )*(?:(?:change|set|move|put|make|update) )?(?:my|our|the) (?:new |usual |observing )?(?:site|place|spot|location|position)(?:'s| is| to)(?: now)?(?= )/u;
const NEAR_TOWN = /^(?:near|outside)$/u;

/** "Whitby Ontario", where the town of that name that we know is in England: with what it is said to lie in, which is taken too. */
const withRegion = (sentence: Sentence, town: string, begins: number, { places }: PlaceKnowledge): string => {
  for (let count = MOST_IN_REGION; count >= 1; count--) {
    const region = runAt(sentence, begins, count);
    if (region === null || isLittle(region.plain) || !namesRegion(places(), region.plain)) continue;
    take(sentence, region);
    return `${town}, ${region.plain}`;
  }
  return town;
};
const MOST_IN_REGION = 3;

/** The place as the site rooms read it, or null; its words are taken. */
export const takePlace = (sentence: Sentence, known: PlaceKnowledge): string | null => {
  const whole = plainOf(sentence.words);
  const placeFrom = OF_SITE.exec(whole)?.[0].split(' ').length ?? 0;
  const saved = (run: Run): string | null =>
    run.at < placeFrom
      ? null
      : (known.siteNames.find((name) => sameSiteName(name, run.plain) || sameSiteName(name, withoutOwner(run.plain))) ??
        null);
  const positionIn = (longest: number): string | null =>
    takeFirst(sentence, longest, (run) => (isPlainPosition(run) ? positionText(run) : null), PREPOSITION)?.text ?? null;
  // The number before "52.7,0.1" is a target's or an hour.
  const position = positionIn(1) ?? positionIn(LONGEST_POSITION);
  if (position !== null) return position;
  const country = takeFirst(sentence, LONGEST, (run, before) => countryIn(run, before, known), PREPOSITION);
  if (country !== null) return country.text || null;
  const town = (run: Run, before: string): string | null =>
    isOfTrade(sentence, run, known) || isPartOfTown(sentence, run, known) || isOfThing(sentence, run)
      ? null
      : townIn(run, before, known, run.at + run.count === sentence.words.length);
  const nearTown = (run: Run, before: string): string | null => (NEAR_TOWN.test(before) ? town(run, before) : null);
  const readings: readonly ((run: Run, before: string) => string | null)[] = [
    (run, before) => (PREPOSITION.test(before) || run.count > 1 ? saved(run) : null)?.toLowerCase() ?? null,
    // "At the club field near Nairobi" says where that is.
    nearTown,
    (run, before) => (run.at < placeFrom ? null : privateIn(run, before)),
    (run, before) => (run.at < placeFrom ? null : savedSlip(run, before, known)),
    town,
  ];
  for (const read of readings) {
    const place = takeFirst(sentence, LONGEST, read, PREPOSITION);
    if (place !== null)
      return read === town || read === nearTown
        ? withRegion(sentence, place.text, place.at + place.count, known)
        : place.text;
  }
  return null;
};

/** What is left at the end and is a town, as in "whats up cork": only when nothing else is left. */
export const townLeft = (sentence: Sentence, known: PlaceKnowledge, isTargetNamed: boolean): string | null => {
  const { words, taken } = sentence;
  const left = words.filter(({ plain }, i) => taken[i] !== true && !isLittle(plain));
  const last = runsOf(sentence, LONGEST).find(({ at, count }) => at + count === words.length && count === left.length);
  if (last === undefined || left.length === 0 || isOfTrade(sentence, last, known)) return null;
  if (isSaidAsWord(sentence, last, known, isTargetNamed)) return null;
  const place = townIn(last, 'near', known);
  if (place === null || populationFound(resolvePlace(known.places(), place)) === null) return null;
  return !isTargetNamed || isOwnName(known.places(), place) ? place : null;
};
