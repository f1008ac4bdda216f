/** Finds the command that answers a question asked in plain words ("what's up tonight"), or says kindly why none does. */
import { cleanText } from '../../ground/fold-text.js';
import { onceOf } from '../../ground/once.js';
import { isProblem, type Problem } from '../../ground/problem.js';
import { withHalfCompleted, withPlainPosition } from '../../places/index.js';
import { mended, mendedWithNames, type Mended } from './spelling/known-words.js';
import type { Outcome } from '../../reply/reply.js';
import { askedAbroad, inEnglish } from './asked-abroad.js';
import { inEnglishNames } from './bodies-abroad.js';
import { cameraFigures } from './camera-figures.js';
import { clockChangeAsked } from './clock-change-asked.js';
import { eyepieceFigures } from './eyepiece-figures.js';
import { neighbour } from './sentence/about-neighbour.js';
import { comets } from './sentence/about-comets.js';
import { ABOUT_GEAR, tellsOfLink } from './sentence/about-gear.js';
import { withoutToDo, withSpokenTwo } from './sentence/about-reminders.js';
import { moonFace, moonMeets, moonNearest } from './sentence/about-moon.js';
import { nightsAsked } from './sentence/about-nights.js';
import { jupiterMoonEvents } from './sentence/about-jupiter-moons.js';
import { planetMoons } from './sentence/about-planet-moons.js';
import { ABOUT_COMING, ABOUT_SKY } from './sentence/about-sky.js';
import { besideSun, byDay } from './sentence/about-sun.js';
import { sunDays } from './sentence/about-sun-days.js';
import { sunBelow } from './sentence/about-twilight.js';
import { leftTracking, moveAtHands, moveByDay, wayBetween } from './sentence/about-way.js';
import { openingUp } from './sentence/opening-up.js';
import { lookingAtSun, sunAlone, sunHarmAnswer, ASKS_WHERE } from './sentence/looking-at-sun.js';
import { withCitiesHeld, withCitiesLoose } from './sentence/city-words.js';
import { moonEclipsed } from './moon-eclipsed.js';
import { moonSafe } from './moon-safe.js';
import { placeAlone } from './sentence/place-alone.js';
import { THANKS_FIRST, withMates } from './talk-among-people.js';
import { talkBeside } from './to-talk.js';
import { topicAnswer } from './topics.js';
import { optionsFrom } from './options-from.js';
import { NEEDS_MORE, talked, UNKNOWN, type PlainReading } from './not-known-here.js';
import { sunTransitAsked } from './sun-transit-asked.js';
import { youngMoon } from './sentence/about-young-moon.js';
import { townAbroad, townMeant } from './town-abroad.js';
import { tubeNumbers } from './tube-numbers.js';
import { withSidesInFull } from './sentence/directions.js';
import { polarFigures } from './polar-figures.js';
import { skyPicture } from './sky-pictures.js';
import { withEasy } from './sentence/for-beginners.js';
import { shapeSeen } from './sentence/shapes.js';
import { withSunMadePlain } from './sentence/sun-words.js';
import { withDayDoubted, withPlaceDoubted, withUnusedSaid } from './sentence/not-used.js';
import { withPlainDates } from './sentence/plain-dates.js';
import { inFull, placeAtEnd, withoutCourtesies, withoutHoliday } from './sentence/plain-words.js';
import { latitudeAsked } from './latitude-asked.js';
import { isTalkOfSun } from './sun-likeness/heard.js';
import { askedOf, type Asked, type Known, type Reading } from './sentence/asked.js';
import { capital } from '../../reply/wording.js';

const LONGEST_QUESTION = 300;

/** A line with the options that were given by name; what it says of the same ones was read from words, and gives way. */
const withNamed = (line: string, named: string): string => {
  const names = [...named.matchAll(/(?:^|\s)([a-z]{2,12}):\S/gu)].map(([, name = '']) => name);
  const rest = names.reduce(
    (left, name) => left.replace(new RegExp(`\\s${name}:(?:"(?:[^"\\\\]|\\\\.)*"|\\S+)`, 'u'), ''),
    line,
  );
  return `${rest}${named}`;
};

const MOVES = /^(?:(?:any )?comets?|asteroids?|minor planets?)\b.*|^[cpdx]\/\s?\d.*|^\d+p\b.*/u;

/** What the first rule that fits makes of it: the Sun beside a target, gear and sites, what is coming, by day, the sky. */
const readByRules = (asked: Asked, known: Known): Reading | Problem | null => {
  const ofSun = (read: (typed: string, known: Known) => Reading | Problem | null) => () => read(asked.typed, known);
  const rules = [
    jupiterMoonEvents,
    planetMoons,
    sunDays,
    moonFace,
    moonNearest,
    youngMoon(known),
    moonMeets,
    sunBelow,
    ...[openingUp, besideSun, wayBetween, leftTracking, moveAtHands, moveByDay].map(ofSun),
    ...ABOUT_GEAR,
    nightsAsked(known),
    ...ABOUT_COMING,
    ofSun(byDay),
    sunAlone,
    comets(known),
    shapeSeen,
    neighbour,
    ...ABOUT_SKY,
  ];
  for (const rule of rules) {
    const read = rule(asked);
    if (read !== null) return read;
  }
  return null;
};

interface Words {
  readonly typed: string;
  /** As they came, and the options after them. */
  readonly words: string;
  readonly named: string;
}

/** A fault told of the link is the walk's, though "nothing" and "scope" stand in it as in other troubles. */
const topicOf = (plain: string, isTargetNamed: boolean, known: Known): Outcome | null =>
  tellsOfLink(plain) ? null : topicAnswer(plain, { isTargetNamed, latitudeDeg: () => latitudeAsked(plain, known) });

/** "Remind me at 10pm to check the dew": what is to be done then is no question. */
const REMINDS_TO =
  /^(?:please |pls |hey |can you |could you )*(?:remind|ping|alert|nudge|poke|wake|tell|warn) (?:me|us)\b.*\b(?:at|by|in|around) .*\bto\b/u;

/** "All" is nothing more of a list here. */
const GREETS_ALL = /^(?:hi|hello|hey|hiya|(?:good )?(?:morning|afternoon|evening)),? all\b/u;

const figuresOf = (plain: string, { catalogue }: Known) =>
  polarFigures(plain) ??
  skyPicture(plain, catalogue) ??
  tubeNumbers(plain) ??
  cameraFigures(plain) ??
  eyepieceFigures(plain, catalogue);

/** What is answered before the sentence is read for its parts: looking at the Sun, talk, what no reckoning answers. */
const wholeAnswer = ({ typed, words, named }: Words, known: Known): PlainReading => {
  const plain = typed.toLowerCase();
  const eaten = moonEclipsed(plain, known);
  if (eaten !== null) return eaten;
  const ofMoon = moonSafe(plain);
  if (ofMoon !== null) return { outcome: ofMoon, isTopic: true };
  const looking = lookingAtSun(typed, known);
  if (looking !== null)
    return isProblem(looking) ? { outcome: looking } : { ...looking, line: withNamed(looking.line, named) };
  const asCame = words
    .trim()
    .toLowerCase()
    .replace(/[?!.]+$/u, (end) => (/^\?+$/u.test(words.trim()) ? end : ''));
  const transit = sunTransitAsked(plain, known.nowUtcMs) ?? clockChangeAsked(plain, known);
  if (transit !== null) return { outcome: transit };
  const first =
    REMINDS_TO.test(plain) || GREETS_ALL.test(asCame) ? null : (talked(UNKNOWN, plain) ?? talked(UNKNOWN, asCame));
  if (first !== null) return 'line' in first ? { line: `${first.line}${named}` } : first;
  const figures = tellsOfLink(plain) ? null : figuresOf(plain, known);
  if (figures !== null) return { outcome: figures };
  const topic = topicOf(plain, true, known);
  return topic === null ? null : { outcome: topic, isTopic: true };
};

const isDay = ({ day }: Known): boolean => day?.isSunUp('now') === true;

/** "What's up now" by day: the list is of the night to come. */
const NOW = /\b(?:now|at the moment|currently|this minute)\b/u;
const withDaySaid = (read: Reading, { plain, place }: Asked, known: Known): Reading =>
  /^tonight\b/u.test(read.line) && read.unsure === undefined && place === null && NOW.test(plain) && isDay(known)
    ? { ...read, unsure: 'It is day now, the Sun is up: this is for the coming night.' }
    : read;

/** "Took “satrun” to be Saturn." */
const withNamesSaid = (read: Reading, { names }: Mended): Reading => {
  const took = names.map(({ typed, found }) => `Took “${typed}” to be ${capital(found)}.`).join(' ');
  return { ...read, note: read.note === undefined ? took : `${took} ${read.note}` };
};

const topicBeside = ({ targets, plain }: Asked, known: Known): PlainReading => {
  const topic = targets.length > 0 ? null : topicOf(plain, false, known);
  return topic === null ? null : { outcome: topic, isTopic: true };
};

/** What words mean whose slips are mended. */
const readSpelt = (spelt: string, { words, named }: Omit<Words, 'typed'>, known: Known): PlainReading => {
  const typed = withSunMadePlain(placeAtEnd(withSpokenTwo(inFull(withoutCourtesies(spelt)))));
  const plain = typed.toLowerCase();
  const whole = wholeAnswer({ typed, words, named }, known);
  if (whole !== null) return whole;
  const asked = { ...askedOf(withoutToDo(typed), plain, known, withoutCourtesies(words.trim())), typed };
  const beside = talkBeside(words.trim(), asked) ?? topicBeside(asked, known);
  if (beside !== null) return beside;
  const ruled = readByRules(asked, known);
  const read = ruled === null || isProblem(ruled) ? ruled : withEasy(ruled, asked);
  if (read !== null)
    return isProblem(read)
      ? { outcome: read }
      : {
          ...withUnusedSaid(withDayDoubted(withPlaceDoubted(withDaySaid(read, asked, known), asked), asked), asked),
          line: withNamed(read.line, named),
        };
  if (MOVES.test(plain)) return { line: `up ${words.trim()}${named}` };
  return talked(NEEDS_MORE, plain) ?? talked(NEEDS_MORE, words.trim().toLowerCase());
};

const readOnce = (text: string, known: Known): PlainReading => {
  const { text: dated, note } = withPlainDates(withoutHoliday(cleanText(text)), known.usual);
  const read = readDated(dated, known);
  if (note === null || read === null || !('line' in read)) return read;
  return { ...read, note: read.note === undefined ? note : `${note} ${read.note}` };
};

/** The words of a city as they were said. */
const loose = (read: PlainReading): PlainReading =>
  read === null || !('line' in read)
    ? read
    : {
        ...read,
        line: withCitiesLoose(read.line),
        ...(read.note === undefined ? {} : { note: withCitiesLoose(read.note) }),
        ...(read.unsure === undefined ? {} : { unsure: withCitiesLoose(read.unsure) }),
      };

const readDated = (text: string, known: Known): PlainReading => {
  const clean = withHalfCompleted(withPlainPosition(text), known.usual ?? null);
  if (clean === '' || clean.length > LONGEST_QUESTION) return null;
  const until = optionsFrom(clean);
  const words = withSidesInFull(clean.slice(0, until));
  const named = clean.slice(until);
  const place = named === '' ? placeAlone(words, known) : null;
  if (place !== null) return { outcome: place };
  const held = withCitiesHeld(words.trim(), known);
  const spelt = mendedWithNames(held, known);
  const found = loose(readSpelt(spelt.text, { words, named }, known));
  if (spelt.names.length === 0) return found;
  // Beside the Sun no name is taken for another.
  if (found !== null && 'isTopic' in found) return found;
  if (found === null || !('line' in found) || /^sun\b/u.test(found.line) || isDay(known))
    return loose(readSpelt(mended(held, known), { words, named }, known));
  return withNamesSaid(found, spelt);
};

/** A plain question in another language, and how it was read. */
const englishOf = (text: string, known: Known): string | null => {
  const parted = text.length > LONGEST_QUESTION ? null : townAbroad(text, known);
  const asked = parted === null ? null : inEnglish(parted.rest, known.catalogue);
  return parted === null || asked === null
    ? askedAbroad(text, known.catalogue)
    : `${asked.english} from ${townMeant(parted.town, asked.language, known)}`;
};

const readAbroad = (text: string, known: Known): PlainReading => {
  const english = englishOf(text, known);
  const read = english === null ? null : readOnce(english, known);
  // A topic too is a question, however it begins.
  if (read === null || !('line' in read)) return read === null ? null : { outcome: read.outcome };
  const note = [`Read as “${english}”.`, ...(read.note === undefined ? [] : [read.note])].join(' ');
  return { ...read, note, isAbroad: true };
};

/** "Thanks, what's up tonight?": what is behind the thanks, where that is a question. */
const readAnew = (text: string, known: Known): PlainReading => {
  const abroad = readAbroad(text, known);
  if (abroad !== null) return abroad;
  const english = inEnglishNames(withMates(text), known);
  const behindThanks = english.replace(THANKS_FIRST, '');
  const asked = behindThanks === english ? null : readOnce(behindThanks, known);
  return asked !== null && 'line' in asked ? asked : readOnce(english, known);
};

/** "Do red dwarfs outlive the Sun" asks neither to look at it nor where it stands. */
const isBesideTalkOfSun = (read: PlainReading, text: string, known: Known): boolean => {
  if (read === null) return false;
  if ('line' in read) return read.line === 'up sun' && !ASKS_WHERE.test(text.toLowerCase()) && isTalkOfSun(text);
  const isWarning = isProblem(read.outcome) && read.outcome.problem === 'not-safe';
  return isWarning && isTalkOfSun(text) && sunHarmAnswer(withSunMadePlain(text), known) === null;
};

const readingsOf = onceOf((_known: Known) => new Map<string, PlainReading>());

/**
 * What to ask instead of words that are no command: talk first, then what is said of gear and sites, then of the sky. Options written after
 * the words (`site:…`) are kept. Several readers ask of the same words: they are read once, as long as `known` lasts.
 */
export const plainQuestion = (text: string, known: Known): PlainReading => {
  const before = readingsOf(known).get(text);
  if (before !== undefined) return before;
  const anew = readAnew(text, known);
  const read = isBesideTalkOfSun(anew, text, known) ? null : anew;
  readingsOf(known).set(text, read);
  return read;
};
