/** A line that comes near what the Sun does to eyes and cameras is answered before anything that waits: a walk, a question, what was asked last. */
import { cleanText } from '../../ground/fold-text.js';
import { isProblem, type Problem } from '../../ground/problem.js';
import { orWhenSilent } from '../../store/or-when-silent.js';
import type { Deps, SaidWords, WordsRead, WordsReader } from '../core/command.js';
import { readText } from '../../reading/index.js';
import { followedAbroad } from './asked-abroad.js';
import { keepLastAsked, lastAsked } from './following/last-asked.js';
import { sunFollowed, type SunFollowed } from './following/sun-followed.js';
import type { PlainReading } from './not-known-here.js';
import { plainQuestion } from './plain-question.js';
import { knownFor } from './plain-reader.js';
import { inEnglishNames } from './bodies-abroad.js';
import type { Known } from './sentence/asked.js';
import { eclipseKindSaid } from './sentence/eclipse-kind.js';
import { answerTo, lookingAtSun, sunHarmAnswer } from './sentence/looking-at-sun.js';
import { sunBriefly } from './sentence/sun-briefly.js';
import { plainHarm } from './sentence/sun-harm.js';
import { quotesSunWarning, withSunMadePlain } from './sentence/sun-words.js';
import { severalIn } from './several-requests.js';
import { mended } from './spelling/known-words.js';
import { heardHarm, isTalkOfSun, mayBeFact } from './sun-likeness/heard.js';
import type { HarmKind } from './sun-likeness/likely-sun.js';
import { sunFact } from './sun-facts.js';

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

/** What no rule has a word for. */
const heardIn = async (text: string, deps: Deps, said: SaidWords, known: Known): Promise<WordsRead | null> => {
  const heard = heardHarm(text);
  if (heard === null || isOfMount(text, heard.harm, deps)) return null;
  const { clubId, memberId } = said.asker;
  const walk = heard.isSureInWalk ? null : await orWhenSilent(() => deps.store.walks.active(clubId, memberId), null);
  if (walk !== null) return null;
  const read = plainQuestion(text, known);
  if (isAnswered(read, heard.harm)) {
    // No trouble is heard in it, nor half of it alone.
    const isWhole = severalIn(text, known) === null;
    return isWhole && read !== null && 'line' in read && OF_SUN.test(read.line) ? read : null;
  }
  return warned(answerTo(text.toLowerCase(), heard.caution), deps, said);
};

export const sunFirst: WordsReader = {
  name: 'looking at the Sun',
  beforeCommands: true,
  read: async (deps, said) => {
    const text = cleanText(said.text);
    if (text === '' || text.length > LONGEST || quotesSunWarning(text)) return null;
    const known = await knownFor(deps, said);
    const english = inEnglishNames(text, known);
    // As it came as well: what is asked in another language throughout is known by its own words.
    for (const words of english === text ? [text] : [english, text]) {
      const harm = sunHarmAnswer(withSunMadePlain(words), known);
      if (harm !== null) return warned(harm, deps, said);
    }
    const follows = followed(text, deps, said, known);
    if (follows !== null) return 'line' in follows ? follows : warned(follows.harm, deps, said);
    // "What about solar", after the Moon's eclipse, is of no looking.
    if (eclipseKindSaid(text) !== null) return null;
    const fact = mayBeFact(text) ? sunFact(text) : null;
    if (fact !== null) return { outcome: fact };
    if (isTalkOfSun(text)) return null;
    const read = lookingAtSun(withSunMadePlain(mended(english, known)), known);
    if (read !== null) return isProblem(read) ? warned(read, deps, said) : null;
    return heardIn(text, deps, said, known);
  },
};
