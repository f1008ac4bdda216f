/** A sentence about the Sun with its parts told apart: the targets, the hour, the site, the mount, and what nobody knows. */
import { resolveTarget } from '../../../catalogue/index.js';
import { isProblem } from '../../../ground/problem.js';
import type { MountKind } from '../../../pointing/mount/mount.js';
import { resolvePlace, resolveSite } from '../../../places/index.js';
import { sameSiteName } from '../resolve-site.js';
import { spellerFor } from '../spelling/known-words.js';
import { placeKnowledge, type Known } from './asked.js';
import { dayAt, type DayAt } from './day-at.js';
import { takeKit } from './kit.js';
import { takeMount } from './mount-said.js';
import type { HourParts } from './sun-hour.js';
import { ownHour, prepared } from './sun-words.js';
import { takeNamed, targetNamed, type NamedTarget } from './targets.js';
import { takeWhen } from './when.js';
import type { PlaceKnowledge } from './place-knowledge.js';
import { takePlace, takeUnknownPlace } from './where.js';
import { isLittle, runsOf, sentenceOf, take, takeFirst, wordBefore, type Sentence } from './words.js';

/** Said of one target, these ask of the Sun whatever else is said. */
export const DANGER = /\b(?:safe|safely|dangerous|danger|risky|hazard\w*|blind\w*)\b/u;
export const ENDS = /^(?:to|towards?|onto|into|for|past|next|2)$/u;
const AT_HOME = /\b(?:from )?(?:the )?(?:home|park|parked)(?: position)?(?= to\b)|\bfrom (?:home|park)\b/u;

/** The Sun's own words are taken. */
const takeSun = (sentence: Sentence): boolean => {
  const mentions = runsOf(sentence, 1).filter(({ plain }) => /^sun(?:'?s)?$/u.test(plain));
  for (const mention of mentions) take(sentence, mention);
  return mentions.length > 0;
};

const MOST_SLIPPED = 3;
const LEAST_LETTERS = 4;

/** Names with a slip in them, beside those that are right; what is part of a saved site's name is none. */
const takeSlips = (sentence: Sentence, known: Known): readonly NamedTarget[] => {
  const { catalogue, siteNames } = known;
  const speller = spellerFor(known);
  const ofSites = new Set(siteNames.flatMap((name) => name.toLowerCase().split(/\s+/u)));
  const isWord = (word: string): boolean =>
    isLittle(word) || ofSites.has(word) || word.length < LEAST_LETTERS || speller.isKnown(word);
  return takeNamed(sentence, MOST_SLIPPED, (plain) => {
    if (plain.split(' ').every(isWord) || plain.split(' ').some(isLittle)) return null;
    const found = resolveTarget(catalogue, plain);
    return !isProblem(found) && found.isSlip === true ? plain : null;
  });
};

export const leftBefore = (sentence: Sentence, at: number): string => {
  const before = wordBefore(sentence, at);
  return /^(?:the|a|star|planet)$/u.test(before) ? wordBefore(sentence, at - 1) : before;
};

/** Words after one that must lead to a name, as they stand: the command says that it does not know them. */
const takeUnknownEnd = (sentence: Sentence): string | null => {
  const run = runsOf(sentence, 1).find(
    ({ at, plain }) => !isLittle(plain) && plain.length > 2 && ENDS.test(leftBefore(sentence, at)),
  );
  if (run === undefined) return null;
  take(sentence, run);
  return run.plain;
};

/** "from rigil to antares": no place, as something ends the way; the command says that it does not know it. */
const takeUnknownStart = (sentence: Sentence, { places }: Known): string | null => {
  const run = runsOf(sentence, 1).find(
    ({ at, plain }) =>
      /^(?:from|leaving)$/u.test(wordBefore(sentence, at)) &&
      /^to(?:wards?)?$/u.test(sentence.words[at + 1]?.plain ?? '') &&
      !isLittle(plain) &&
      isProblem(resolvePlace(places(), plain)),
  );
  if (run === undefined) return null;
  take(sentence, run);
  return run.plain;
};

const CITY_POPULATION = 50_000;
const LONGEST_CITY = 3;
const LEADS_TO_CITY = /^(?:from|in|near|at)$/u;

/** "From Cape Town": a city of several words, none of which is then a star. */
const takeCity = (sentence: Sentence, { places, catalogue }: Known): string | null =>
  takeFirst(
    sentence,
    LONGEST_CITY,
    ({ plain, count }, before) => {
      if (count < 2 || !LEADS_TO_CITY.test(before) || targetNamed(catalogue, plain) !== null) return null;
      const found = resolvePlace(places(), plain);
      return isProblem(found) || found.isQualified || found.place.population < CITY_POPULATION ? null : plain;
    },
    LEADS_TO_CITY,
  )?.text ?? null;

export interface SunParts extends HourParts {
  readonly isSunNamed: boolean;
  readonly named: readonly NamedTarget[];
  readonly site: string | null;
  readonly isFromHome: boolean;
  /** The kind that is named. */
  readonly mount: MountKind | null;
  /** A name that nobody knows, where one is wanted. */
  readonly unknownEnd: string | null;
  readonly unknownStart: string | null;
  /** Words that are left, and none of a question's. */
  readonly unread: string | null;
  readonly sentence: Sentence;
  /** Day and night at the place that is named, else where the asker usually stands. */
  readonly day: DayAt | null;
  /** Whether more than one target makes a way, whatever words stand between them. */
  readonly isWay?: boolean;
}

const homeIn = (text: string, siteNames: readonly string[]): string | null =>
  AT_HOME.test(text) ? (siteNames.find((name) => sameSiteName(name, 'home')) ?? null) : null;

const dayFor = (site: string | undefined, { places, siteNames, usual, day, nowUtcMs }: Known): DayAt | null => {
  if (site === undefined || siteNames.some((name) => sameSiteName(name, site))) return day ?? null;
  const found = resolveSite(places(), site, usual ?? null);
  return isProblem(found) ? (day ?? null) : dayAt(found.site.observer, nowUtcMs);
};

const dayParts = (day: DayAt | null): Pick<SunParts, 'day' | 'isAfternoon' | 'isNight'> => ({
  day,
  isAfternoon: day?.isAfternoon ?? false,
  isNight: day?.isSunUp('now') === false,
});

const unknownIn = (sentence: Sentence, knowledge: PlaceKnowledge): string | undefined => {
  const found = takeUnknownPlace(sentence, knowledge);
  return found === null || found.isPerhaps ? undefined : found.name;
};

export const partsOf = (typed: string, known: Known): SunParts => {
  const { catalogue, siteNames, nowUtcMs } = known;
  const text = prepared(typed);
  const isFromHome = AT_HOME.test(text.toLowerCase());
  const isByNight = /\b(?:tonight|night|evening)\b/iu.test(text);
  const own = isByNight ? null : ownHour(text);
  const sentence = sentenceOf((own?.rest ?? text).replace(AT_HOME, ' '));
  const mount = takeMount(sentence);
  const read = takeWhen(sentence, nowUtcMs);
  const isSunNamed = takeSun(sentence);
  const isOfSun = isSunNamed || DANGER.test(text.toLowerCase());
  const when = own === null || read.hour !== null ? read : { ...read, hour: own.at(read, isOfSun, known.day ?? null) };
  const city = takeCity(sentence, known);
  const whole = takeNamed(sentence, undefined, (plain) => (plain === 'moon' ? plain : targetNamed(catalogue, plain)));
  takeKit(sentence);
  const slipped = takeSlips(sentence, known);
  const named = [...whole, ...slipped].sort((a, b) => a.at - b.at);
  const unknownEnd = takeUnknownEnd(sentence);
  const knowledge = { ...placeKnowledge(known), isSeveralTargets: () => true };
  const unknownStart = takeUnknownStart(sentence, known);
  const site = city ?? takePlace(sentence, knowledge) ?? unknownIn(sentence, knowledge);
  const isWord = spellerFor(known).isKnown;
  const unread = runsOf(sentence, 1).find(({ plain }) => !isLittle(plain) && !isWord(plain));
  return {
    isSunNamed,
    when,
    named,
    site: site ?? homeIn(text.toLowerCase(), siteNames),
    isFromHome,
    mount,
    unknownEnd,
    unknownStart,
    unread: unread?.plain ?? null,
    ...dayParts(dayFor(site, known)),
    sentence,
  };
};
