/**
 * What "it" is in a line that may come near the Sun: the Sun, where that was spoken of last; the Moon or another target, where one was. "Can I look at
 * it through my telescope" is warned of or is not by that alone.
 */
import { GUARD, plainHarm, SAYS_DAY, SUN, SUN_ABROAD } from '../sentence/sun-harm.js';
import type { Known } from '../sentence/asked.js';
import type { Deps, SaidWords } from '../../core/command.js';
import { isMoonEclipsedSoon } from '../moon-eclipsed.js';
import { nameOf } from './about-it.js';
import { isNewer, lastAsked } from './last-asked.js';
import { toldLine, type ToldLine } from './told-line.js';

export interface SpokenOf {
  readonly name: string;
  readonly isSun: boolean;
}

const THE_SUN: SpokenOf = { name: 'the sun', isSun: true };

const OF_MOON = /^(?:the )?moon(?: |$)/iu;
const THE_MOON: SpokenOf = { name: 'the moon', isSun: false };
/** Of which body nobody said, it is taken for the Sun's, which harms; but for one of the Moon that is on, or comes tonight. */
const eclipsed = ({ values }: ToldLine, known: Known): SpokenOf => {
  if (values['about'] === 'Moon') return THE_MOON;
  return values['about'] === undefined && isMoonEclipsedSoon(known) ? THE_MOON : THE_SUN;
};

/**
 * @param last the line asked last, while it is fresh
 * @returns null: nothing in the sky, or nobody can tell
 */
export const spokenIn = (last: string | null, known: Known): SpokenOf | null => {
  const told = last === null ? null : toldLine(last, known.allCommands ?? []);
  if (told === null) return null;
  if (told.command.name === 'ahead') return /\beclipses\b/u.test(last ?? '') ? eclipsed(told, known) : null;
  // By day the bright thing up there is the Sun.
  if (told.command.name === 'bright' && known.day?.isSunUp('now') === true) return THE_SUN;
  const name = nameOf(told);
  if (name === null) return told.command.name === 'sun' ? THE_SUN : null;
  if (/^(?:the )?sun$/iu.test(name)) return THE_SUN;
  return OF_MOON.test(name) ? THE_MOON : { name, isSun: false };
};

/** The thing itself, not what stands for nothing: "is it safe", "it is bright" are left. */
const OBJECT =
  /(?<!\b(?:after|before|like|than|about) )\b(?:it|that|this|them|those|him|her)\b(?! (?:safe|ok|okay|dangerous|bad|one|way|time|is|was|will|would)\b)/u;
const SUBJECT = /\b(?:is|was|does|will|would) it\b/u;
const ITS = /\b(?:its|it's|it is|it s)\b/u;
/** What else is looked at, by its name. */
const HAS_OWN =
  /\b(?:moon|venus|mercury|mars|jupiter|saturn|uranus|neptune|stars?|comets?|planets?|galax\w*|nebula\w*)\b/u;

/** Names something to look at by itself, so that "it" is not needed to know what. */
const namesItself = (plain: string): boolean =>
  SUN.test(plain) || SUN_ABROAD.test(plain) || HAS_OWN.test(plain) || SAYS_DAY.test(plain);

/** The line with the name in the place of "it"; where no such word stands, behind it. */
export const withNamed = (text: string, { name }: SpokenOf): string => {
  const words = text.trim().replace(/[\s?!.]+$/u, '');
  if (SUBJECT.test(words)) return words.replace(SUBJECT, (is) => is.replace(/\bit\b/u, name));
  if (OBJECT.test(words)) return words.replace(OBJECT, name);
  if (ITS.test(words)) return words.replace(ITS, `${name} is`);
  return `${words} for ${name}`;
};

/** A short question that says of nothing what is looked at. */
const MOST_WORDS = 16;
export const isOfIt = (text: string): boolean => {
  const plain = plainHarm(text);
  return plain.split(' ').length <= MOST_WORDS && !namesItself(plain);
};

/** "Can I see it from here": whether it comes here, and not whether one may look. */
const FROM_HERE =
  /^(?:(?:and|so|ok|but) )*(?:(?:can|could|will|would) (?:i|we|you) (?:see|watch|get|catch) (?:it|that|this|them)|(?:is|will) (?:it|that|this)(?: be)? (?:seen|visible)) (?:from )?(?:here|my (?:house|home|garden|place|town|window)|our \w+|where i (?:am|live))\b/u;
export const asksFromHere = (text: string): boolean => FROM_HERE.test(plainHarm(text));

const ACTS =
  /\b(?:look\w*|see\w*|zoom\w*|aim\w*|point\w*|find\w*|view\w*|watch\w*|photo\w*|pics?|pictures?|imag\w*|close ?up|track\w*|align\w*|slew\w*|show\w*|magnif\w*|safe\w*|project\w*|scope|telescope|binos?|binoculars|finder|eye ?piece|camera|phone|get|put|turn\w*|focus\w*)\b/u;
/** One does something with "it", or it is of what is held before an eye. */
export const mayMeanIt = (text: string): boolean => {
  const plain = plainHarm(text);
  if (GUARD.test(plain)) return true;
  return !asksFromHere(text) && ACTS.test(plain) && [SUBJECT, OBJECT, ITS].some((word) => word.test(text));
};

/** "With just binos", "can we see it through the telescope": one looks, at nothing that is named. */
const ONLY_LOOKS =
  /^(?:(?:ok|so|and|but|or|what about|how about|hi|hey|please|just|even|only|with|through|in|using|my|the|our|a|some|can|could|may|should|do|does|will|would|is|i|we|you|they|he|she|kids?|children|be|still|also|see|seen|look|looked|looking|view|watch|spot|find|photograph|image|picture|take|get|show|at|of|it|that|this|them|those|one|good|ok|okay|fine|safe|to|for|now|then|here|from|tonight|without|filter|filters|bare|naked|eyes?|by|binos?|binoculars|bins|telescope|scope|dob|refractor|camera|phone|eyepiece|glasses|\d+(?: ?x ?\d+s?| ?mm| ?inch)?) ?)+$/u;
const isBriefLook = (text: string): boolean => ONLY_LOOKS.test(plainHarm(text));

/** "With just binos", by night. */
export const isLookByNight = (text: string, known: Known): boolean =>
  known.day?.isSunUp('now') === false && isOfIt(text) && isBriefLook(text);

/** The Sun where it was warned of last, else what was asked for last; by day a warning just given is not spoken away by the name of a planet. */
export const spokenOf = (
  { store }: Pick<Deps, 'store'>,
  { asker, nowUtcMs }: Pick<SaidWords, 'asker' | 'nowUtcMs'>,
  known: Known,
): SpokenOf | null => {
  const isWarned = lastAsked(store, asker, nowUtcMs, 'sun') !== null;
  const isOfSun = isWarned && (known.day?.isSunUp('now') === true || isNewer(store, asker, nowUtcMs, 'sun', 'line'));
  return isOfSun ? THE_SUN : spokenIn(lastAsked(store, asker, nowUtcMs), known);
};

/** What is looked at is no Sun: another thing was spoken of, or it is night. */
export const isOfOtherSight = (
  text: string,
  deps: Pick<Deps, 'store'>,
  said: Pick<SaidWords, 'asker' | 'nowUtcMs'>,
  known: Known,
): boolean => isLookByNight(text, known) || (isOfIt(text) && spokenOf(deps, said, known)?.isSun === false);
