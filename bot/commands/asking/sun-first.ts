/** A line that comes near what the Sun does to eyes and cameras is answered before anything that waits: a walk, a question, what was asked last. */
import { cleanText } from '../../ground/fold-text.js';
import { isProblem, type Problem } from '../../ground/problem.js';
import type { Outcome } from '../../reply/reply.js';
import { orWhenSilent } from '../../store/or-when-silent.js';
import type { Deps, SaidWords, WordsRead, WordsReader } from '../core/command.js';
import { readText } from '../../reading/index.js';
import { followedAbroad } from './asked-abroad.js';
import { readWhole } from './following/about-it.js';
import { keepLastAsked, lastAsked } from './following/last-asked.js';
import {
  asksFromHere,
  isLookByNight,
  isOfIt,
  mayMeanIt,
  spokenIn,
  spokenOf,
  withNamed,
  type SpokenOf,
} from './following/spoken-of.js';
import { sunFollowed, type SunFollowed } from './following/sun-followed.js';
import { moonSafe } from './moon-safe.js';
import type { PlainReading } from './not-known-here.js';
import { commandLine } from './question-parts.js';
import { plainQuestion } from './plain-question.js';
import { knownFor } from './plain-reader.js';
import { inEnglishNames } from './bodies-abroad.js';
import type { Known } from './sentence/asked.js';
import { eclipseKindSaid } from './sentence/eclipse-kind.js';
import { answerTo, lookingAtSun, sunCautionIn, sunHarmAnswer } from './sentence/looking-at-sun.js';
import type { SunCaution } from './sentence/sun-guards.js';
import { sunBriefly } from './sentence/sun-briefly.js';
import { LOOKS, plainHarm, SUN, SUN_ABROAD } from './sentence/sun-harm.js';
import { quotesSunWarning, withSunMadePlain } from './sentence/sun-words.js';
import { severalIn } from './several-requests.js';
import { mended } from './spelling/known-words.js';
import { heardHarm, isTalkOfSun, mayBeFact } from './sun-likeness/heard.js';
import type { HarmKind } from './sun-likeness/likely-sun.js';
import { daySight, sunFact } from './sun-facts.js';

/** More is a message or an account, which the walk reads. */
const LONGEST = 300;

/** The warning is remembered, as what is said next may follow it: that gets its own point in short. */
const warned = (outcome: Problem, { store }: Deps, { asker, nowUtcMs, text }: SaidWords): WordsRead => {
  const isTalk = lastAsked(store, asker, nowUtcMs, 'sun') !== null;
  const brief = isTalk ? sunBriefly(plainHarm(text), outcome.message) : null;
  keepLastAsked(store, asker, outcome.message, nowUtcMs, 'sun');
  return { outcome: brief === null ? outcome : { ...outcome, message: brief } };
};

const followed = (text: string, deps: Deps, { asker, nowUtcMs }: SaidWords, known: Known): SunFollowed | null => {
  const last = lastAsked(deps.store, asker, nowUtcMs);
  const isTalk = lastAsked(deps.store, asker, nowUtcMs, 'sun') !== null;
  if (last === null && !isTalk && known.day?.isSunUp('now') !== true) return null;
  const follows = sunFollowed(text, last, isTalk, known);
  const english = isTalk && follows === null ? followedAbroad(text, known.catalogue) : null;
  return english === null ? follows : sunFollowed(english, last, isTalk, known);
};

/** What has an answer of the Sun's own, or asks to be warned, is not warned of besides. */
const OF_SUN = /^(?:sun|dark|remind|ahead)\b/u;
/** By day these tell of the Sun beside what is named, if no word was left over. */
const OF_TARGET = /^(?:up|altitude|meridian|alignment)\b(?!.* first:filter)/u;
const WARNS = /\b(?:caps?|Sun)\b/u;
const isAnswered = (read: PlainReading, harm: HarmKind): boolean => {
  if (read === null) return false;
  if ('outcome' in read)
    return isProblem(read.outcome) && (read.outcome.problem === 'which-target' || WARNS.test(read.outcome.message));
  if (OF_SUN.test(read.line) || WARNS.test(`${read.note ?? ''} ${read.unsure ?? ''}`)) return true;
  return harm === 'looks' && OF_TARGET.test(read.line) && (read.unread ?? 0) === 0;
};

/** Told to the walk; or of what a mount does where it stands: "at the far end of the garden it loses the mount". */
const isOfMount = (text: string, harm: HarmKind, deps: Deps): boolean =>
  harm !== 'harmed' &&
  (/^\s*triage\b/iu.test(text) || (harm === 'open' && readText(deps.triage().reading, text).facts.length > 0));

/** "With just binos", said by night: nobody speaks of the Sun, and no more is said of what is looked at. */
const isOfStars = (text: string, harm: HarmKind, known: Known): boolean =>
  harm === 'looks' && isLookByNight(text, known);

/** A warning, or what answers in its place; as yet nothing is remembered of it. */
type Heard = WordsRead | { readonly harm: Problem };

/** What no rule has a word for. */
const heardIn = async (text: string, deps: Deps, said: SaidWords, known: Known): Promise<Heard | null> => {
  const heard = heardHarm(text);
  if (heard === null || isOfMount(text, heard.harm, deps) || isOfStars(text, heard.harm, known)) return null;
  const { clubId, memberId } = said.asker;
  const walk = heard.isSureInWalk ? null : await orWhenSilent(() => deps.store.walks.active(clubId, memberId), null);
  if (walk !== null) return null;
  const read = plainQuestion(text, known);
  if (isAnswered(read, heard.harm)) {
    // No trouble is heard in it, nor half of it alone.
    const isWhole = severalIn(text, known) === null;
    return isWhole && read !== null && 'line' in read && OF_SUN.test(read.line) ? read : null;
  }
  return { harm: answerTo(text.toLowerCase(), heard.caution) };
};

/** What a rule or a likeness makes of these words alone. */
const harmIn = async (text: string, deps: Deps, said: SaidWords, known: Known): Promise<Heard | null> => {
  const english = inEnglishNames(text, known);
  // As it came as well: what is asked in another language throughout is known by its own words.
  for (const words of english === text ? [text] : [english, text]) {
    const harm = sunHarmAnswer(withSunMadePlain(words), known);
    if (harm !== null) return { harm };
  }
  const follows = followed(text, deps, said, known);
  if (follows !== null) return follows;
  // "What about solar", after the Moon's eclipse, is of no looking.
  if (eclipseKindSaid(text) !== null) return null;
  const fact = mayBeFact(text) ? sunFact(text) : null;
  if (fact !== null) return { outcome: fact };
  if (isTalkOfSun(text)) return null;
  const read = lookingAtSun(withSunMadePlain(mended(english, known)), known);
  if (read !== null) return isProblem(read) ? { harm: read } : null;
  return heardIn(text, deps, said, known);
};

/** These are of looking, and of nothing that has happened or stands open. */
const OF_LOOKING: readonly (SunCaution | null)[] = [
  'sun-looking',
  'sun-how',
  'sun-aim',
  'sun-camera',
  'sun-filter',
  'sun-guards',
  'sun-still-yours',
  'sun-glasses',
  'sun-glasses-bare',
  'sun-eyepiece-filter',
];
const isOfLooking = (text: string, known: Known): boolean => {
  const caution = sunCautionIn(withSunMadePlain(text).toLowerCase(), known.day ?? null);
  return caution === null ? heardHarm(text)?.harm !== 'open' : OF_LOOKING.includes(caution);
};

const BEHIND = /\bsuns?(?: \w+){0,3} (?:behind|at the back of) (?:me|us|my|the (?:scope|telescope))\b/u;
/** "I look at a church tower", "the Sun is behind me": nothing to be refused, unless the Sun is what is looked at. */
const sightIn = (text: string): Outcome | null => {
  const plain = plainHarm(text);
  const isOfSun = SUN.test(plain) || SUN_ABROAD.test(plain) || ECLIPSES.test(plain);
  return isOfSun && (!BEHIND.test(plain) || LOOKS.test(plain)) ? null : daySight(text);
};
const ECLIPSES = /\beclip\w*/u;

/** What is said of the Sun in these words, whatever was spoken of before. */
const heardOf = async (text: string, deps: Deps, said: SaidWords, known: Known): Promise<Heard | null> => {
  const behind = BEHIND.test(plainHarm(text)) ? sightIn(text) : null;
  if (behind !== null) return { outcome: behind };
  const heard = await harmIn(text, deps, said, known);
  const isRefused = heard !== null && ('harm' in heard ? isOfLooking(text, known) : 'line' in heard);
  const sight = isRefused ? sightIn(text) : null;
  return sight === null ? heard : { outcome: sight };
};

const OF_EYES = /\b(?:eyes?|eyesight|look\w*|see|view\w*|glasses|filter|blind\w*|dazzl\w*)\b/iu;

const safeIn = (named: string): Heard | null => {
  const safe = moonSafe(named.toLowerCase());
  return safe === null ? null : { outcome: safe };
};
const toldOf = (named: string, known: Known): Heard | null => {
  const line = readWhole(named, known);
  return safeIn(named) ?? (line === null ? null : { line });
};

/** "Can the kids look at it", after Saturn: asked of Saturn, it may be warned of still. */
const heardOfOther = async (
  text: string,
  other: SpokenOf,
  deps: Deps,
  said: SaidWords,
  known: Known,
): Promise<Heard | null> => {
  const heard = await heardOf(text, deps, said, known);
  const named = withNamed(text, other);
  if (heard === null) {
    if (!OF_EYES.test(text)) return null;
    return isLookByNight(text, known) ? toldOf(named, known) : safeIn(named);
  }
  if (!('harm' in heard) || !isOfLooking(text, known)) return heard;
  return (await heardOf(named, deps, said, known)) ?? toldOf(named, known);
};

const WORRIES =
  /\b(?:(?:need|have|got|should i|do i) (?:to )?|should i )?(?:worry|worried|bother|be careful|watch out|look out|beware|mind|be wary|concerned)(?: (?:about|for|of|with))? (?:the )?sun\b|\bis the sun (?:a |any )?(?:danger|problem|risk|worry)\b/u;
/** A line that says more of what was asked last: the eclipse from here, how near the Sun the target stands. */
const ofLast = (text: string, deps: Deps, { asker, nowUtcMs }: SaidWords, known: Known): Heard | null => {
  const last = lastAsked(deps.store, asker, nowUtcMs);
  if (last !== null && /^ahead .*\beclipses\b/u.test(last) && asksFromHere(text)) return { line: last };
  const plain = plainHarm(text);
  if (!WORRIES.test(plain)) return null;
  const spoken = spokenIn(last, known);
  return spoken === null || spoken.isSun ? { harm: answerTo(plain) } : { line: commandLine('sun', spoken.name, {}) };
};

const heardHere = async (text: string, deps: Deps, said: SaidWords, known: Known): Promise<Heard | null> => {
  const more = ofLast(text, deps, said, known);
  if (more !== null) return more;
  const spoken = isOfIt(text) ? spokenOf(deps, said, known) : null;
  if (spoken?.isSun === false) return heardOfOther(text, spoken, deps, said, known);
  const heard = await heardOf(text, deps, said, known);
  return heard !== null || spoken?.isSun !== true || !mayMeanIt(text)
    ? heard
    : heardOf(withNamed(text, spoken), deps, said, known);
};

export const sunFirst: WordsReader = {
  name: 'looking at the Sun',
  beforeCommands: true,
  read: async (deps, said) => {
    const text = cleanText(said.text);
    if (text === '' || text.length > LONGEST || quotesSunWarning(text)) return null;
    const heard = await heardHere(text, deps, said, await knownFor(deps, said));
    return heard !== null && 'harm' in heard ? warned(heard.harm, deps, said) : heard;
  },
};
