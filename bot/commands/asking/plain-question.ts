/** Finds the command that answers a question asked in plain words ("what's up tonight"), or says kindly why none does. */
import { cleanText } from '../../ground/fold-text.js';
import { onceOf } from '../../ground/once.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { withHalfCompleted, withPlainPosition } from '../../places/index.js';
import { mended, mendedWithNames, type Mended } from './spelling/known-words.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { comets } from './sentence/about-comets.js';
import { ABOUT_GEAR, tellsOfLink } from './sentence/about-gear.js';
import { withoutToDo, withSpokenTwo } from './sentence/about-reminders.js';
import { ABOUT_COMING, ABOUT_SKY, jupiterMoonEvents } from './sentence/about-sky.js';
import { besideSun, byDay } from './sentence/about-sun.js';
import { leftTracking, moveAtHands, wayBetween } from './sentence/about-way.js';
import { lookingAtSun, sunAlone } from './sentence/looking-at-sun.js';
import { talkIn, THANKS_FIRST, type Talk } from './talk-among-people.js';
import { topicAnswer } from './topics.js';
import { tubeNumbers } from './tube-numbers.js';
import { withSunriseNamed } from './sentence/sun-words.js';
import { withPlaceDoubted, withUnusedSaid } from './sentence/not-used.js';
import { inFull, placeAtEnd, withoutCourtesies } from './sentence/plain-words.js';
import { askedOf, type Asked, type Known, type Reading } from './sentence/asked.js';

/** The line that answers, or the answer itself where there is no such command; null when the words are no question of ours. */
export type PlainReading = Reading | { readonly outcome: Outcome; readonly isTopic?: true } | null;

/** Reads what a pattern found. */
type Answered = readonly [RegExp, () => PlainReading];

const LONGEST_QUESTION = 300;

const refused = (
  message: string,
  ...next: readonly (readonly [label: string, run: string])[]
): (() => PlainReading) => {
  const choices = next.map(([label, run]) => ({ label, run }));
  return () => ({ outcome: problem('not-known-here', message, choices) });
};

const said = (title: string, summary: string): (() => PlainReading) => {
  const choices = [
    { label: "What's up tonight?", run: 'tonight' },
    { label: 'The mount does not connect', run: 'triage' },
    { label: 'Help', run: 'help' },
  ];
  return () => ({ outcome: reply({ title, summary, choices, pointsAt: NOWHERE }) });
};

/** Greetings, thanks and good-byes; other talk is for people. */
const TO_TALK: Readonly<Partial<Record<Talk, () => PlainReading>>> = {
  hello: said('Hello', 'Ask me what is up tonight, where a target stands, or tell me what your mount will not do.'),
  thanks: said('You are welcome', 'Clear skies. Cap the tube before sunrise.'),
  farewell: said('Good night', 'Cap the tube and park the mount; clear skies.'),
};
/** "Ok", "great, that is clear". */
const ASSENT = /^(?:great|ok|okay|nice|perfect|brilliant|lovely)(?:,? that .{0,25})?$/u;
const LONGEST_BESIDE_THANKS = 30;

/** Talk with me; beside thanks a few words more are none of the sky or the mount. */
const toTalk = (plain: string): PlainReading => {
  if (ASSENT.test(plain)) return TO_TALK.thanks?.() ?? null;
  const talk = talkIn(plain);
  if (talk === null) return null;
  const isAll = talk.unless === null || (talk.kind === 'thanks' && talk.unless.words.length <= LONGEST_BESIDE_THANKS);
  return isAll ? (TO_TALK[talk.kind]?.() ?? null) : null;
};

/** What I do not know; the first match answers, before the sentence is read for its parts. */
const UNKNOWN: readonly Answered[] = [
  [
    /^(?:(?:show|tell|give|list) (?:me |us )?)?(?:more|all|the rest|all of (?:them|it)|all ten|more of (?:them|it))(?: please| pls)?$/u,
    () => ({ line: 'tonight all:yes' }),
  ],
  [
    /^\?+$|^(?:what can (?:you|i) (?:do|ask)|how does this work|commands?|options|menu|who (?:are|made) you|what are you)$/u,
    () => ({ line: 'help' }),
  ],
  [
    /\b(?:iss|space station|satellites?|starlink|tiangong)\b|\bhubble(?! ?'?s variable| nebula)\b/u,
    refused(
      'I do not follow satellites: their orbits change by the day, so a good answer needs fresh elements that I do not have. A pass list made today by a space agency will be right; for the sky behind them, ask tonight.',
      ["What's up tonight?", 'tonight'],
    ),
  ],
  [
    /\b(?:weather|cloudy|forecast|rain(?:ing)?|will it (?:be )?clear|clear sk(?:ies|y|ys) (?:tonight|tomorrow|later|on|this)|is it (?:going to be )?clear(?! of)|the seeing|seeing (?:like|good|bad|tonight)|transparency|dew(?! cap| shield| heater| on | strap|\b.*\b(?:telescope|scope|lens\w*|eyepiece|mirror|corrector|finder|optics|glass|tube|binoculars|form\w*|stop\w*|prevent\w*|off)))\b|\b(?<!magellanic |star )clouds?\b/u,
    refused(
      'I cannot see the weather: your national weather service can. What I know is when it is dark and what is up.',
      ['When is it dark?', 'dark'],
      ["What's up tonight?", 'tonight'],
    ),
  ],
  [
    /\b(?:leave|leaving|left)\b.*\b(?:out|set up|outside|outdoors|uncovered|in the garden|on the (?:patio|lawn|terrace|balcony|deck))\b|\b(?:leav\w*|left|stor\w+|stand\w*|park\w*|keep\w*|put)\b.*\b(?:scope|telescope|tube|dob\w*|refractor|newtonian|reflector|it)\b.*\b(?:uncapped|uncovered|(?:no|without) (?:the |a |its |any )?(?:cap|caps|cover|lid)|(?:caps?|lid|cover) off)\b|\b(?:leave|park|stand|store|left)\b.*\bin (?:the )?(?:full )?sun\b|\b(?:uncapped|(?:no|without) (?:the |a |its )?(?:cap|caps|cover|lid)(?: on)?)\b.*\b(?:day|daytime|daylight|sun|outside|garden|patio)\b|\b(?:day|daytime|daylight|sun|outside|garden|patio)\b.*\b(?:uncapped|(?:no|without) (?:the |a |its )?(?:cap|caps|cover|lid))\b/u,
    refused(
      'No, not open, cap it first: while the Sun is up an uncapped tube or finder may set itself or what is near alight, and blind whoever looks in. I can warn you before sunrise.',
      ['Warn me before sunrise', 'remind sunrise'],
      ['When is sunrise?', 'dark'],
    ),
  ],
  [
    /\b(?:great )?red spot\b|\bcentral meridian\b/u,
    refused(
      'I do not reckon which side of Jupiter faces us, nor when the Red Spot does: its drift has to be measured. I know where Jupiter and its moons stand.',
      ['Jupiter tonight', 'up Jupiter'],
      ['Its moons', 'moons'],
    ),
  ],
  [
    /\boccult(?:s|ed|ation|ations|ing)?\b(?!.*\b(?:io|europa|ganymede|callisto)\b)(?<!\b(?:io|europa|ganymede|callisto)\b.*)|\bmoon (?:hides?|hiding|covers?|covering) /u,
    refused(
      'I do not reckon what the Moon covers: it hangs on where one stands to a few kilometres. I tell when it comes close to planets and bright stars; an almanac or an occultation society has the times.',
      ['Close meetings to come', 'ahead meetings'],
      ['The Moon tonight', 'up Moon'],
    ),
  ],
  [
    /\bstars? (?:are |is )?(?:trail\w*|streak\w*|elongated|not round)\b|\b(?:trailing|elongated) stars?\b/u,
    refused(
      'Stars that trail: the mount does not track, or its polar axis is off. See that tracking is on and its rate sidereal; then set the axis by the pole, and by the drift of a star.',
      ['Where the pole star stands', 'pole'],
      ['By the drift of a star', 'help drift'],
      ['The mount does not move', 'triage the mount does not track'],
    ),
  ],
  [
    /\bstars?\b.*\b(?:in|by|during) (?:the )?(?:day|daytime|daylight|broad daylight)\b/u,
    refused(
      'By day only the brightest stars show, in a telescope that a mount points for you. Never sweep about for one: the Sun blinds in an instant. Ask sun first whether a star stands clear of it.',
      ['Is Vega safe at noon?', 'sun Vega at:noon'],
      ['When is it dark?', 'dark'],
    ),
  ],
  [
    /\b(?:aurora|northern lights|southern lights|zodiacal light|noctilucent)\b/u,
    refused(
      'I do not forecast that: it hangs on the Sun or the high air, and I see neither. I can say when it is dark.',
      ['When is it dark?', 'dark'],
    ),
  ],
];

/** Last of all: what needs a word more than was said. */
const NEEDS_MORE: readonly Answered[] = [
  [
    /\bpoints? (?:straight )?(?:at|to|into|towards?) (?:the )?(?:ground|floor|earth|grass|tripod)\b|\b(?:below|under) the horizon\b.*\b(?:goes|points|slews)\b/u,
    refused(
      'It points at the ground: most often the latitude or longitude has the wrong sign, the clock is half a day out, or the tube was not at its home when switched on. See what the controller should hold; then send it to a star, and tell me where it landed: astray Vega landed:"alt,az".',
      ['What to type into the controller', 'entries'],
      ['It moves the wrong way', 'triage it points at the ground'],
    ),
  ],
  [
    /\b(?:an|one|1|a) ?(?:hr|hour)s?\b(?: \w+)? (?:off|out|wrong|ahead|behind|late|early)\b|\boff by (?:an|one|1|a) ?(?:hr|hour)\b/u,
    refused(
      'An hour off is most often summer time or the time zone typed wrong. See what the controller should hold now; if it is right, say what it was sent to and where it landed: astray Vega landed:"15 degrees west of it".',
      ['What to type into the controller', 'entries'],
      ['The sidereal time it should show', 'sidereal'],
    ),
  ],
  [
    /\b(?:wrong place|wrong spot|wrong star|wrong object|(?:not|isn'?t|won'?t|doesn'?t) (?:going|go|get) to the right|misses|missed|off by|lands? (?:in|at|on)|landed|goto is off|goto (?:misses|wrong)|points? (?:the )?wrong|way off|goto missed)\b/u,
    refused(
      'Tell me what it was sent to and where it landed, and I say which mistake explains it: astray Vega landed:"Deneb", or landed:"20 arcminutes west of it", or landed:"alt,az" in degrees.',
      ['What to type into the controller', 'entries'],
      ['It will not connect', 'triage'],
    ),
  ],
  [
    /^(?:what|which) side of the (?:mount|pier)|meridian flip/u,
    refused(
      'For which target? It hangs on where it stands: meridian M 42 says on which side, when it flips and how long you can follow it.',
      ['For M 42', 'meridian M 42'],
    ),
  ],
];

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

const talked = (patterns: readonly Answered[], plain: string): PlainReading =>
  patterns.find(([pattern]) => pattern.test(plain))?.[1]() ?? null;

/** What the first rule that fits makes of it: the Sun beside a target, gear and sites, what is coming, by day, the sky. */
const readByRules = (asked: Asked, known: Known): Reading | Problem | null => {
  const ofSun = (read: (typed: string, known: Known) => Reading | Problem | null) => () => read(asked.typed, known);
  const rules = [
    jupiterMoonEvents,
    ...[besideSun, wayBetween, leftTracking, moveAtHands].map(ofSun),
    ...ABOUT_GEAR,
    ...ABOUT_COMING,
    ofSun(byDay),
    sunAlone,
    comets(known),
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
const topicOf: typeof topicAnswer = (plain, named) => (tellsOfLink(plain) ? null : topicAnswer(plain, named));

/** What is answered before the sentence is read for its parts: looking at the Sun, talk, what no reckoning answers. */
const wholeAnswer = ({ typed, words, named }: Words, known: Known): PlainReading => {
  const plain = typed.toLowerCase();
  const looking = lookingAtSun(typed, known);
  if (looking !== null) return isProblem(looking) ? { outcome: looking } : { line: withNamed(looking.line, named) };
  const asCame = words
    .trim()
    .toLowerCase()
    .replace(/[?!.]+$/u, (end) => (/^\?+$/u.test(words.trim()) ? end : ''));
  const first = talked(UNKNOWN, plain) ?? talked(UNKNOWN, asCame);
  if (first !== null) return 'line' in first ? { line: `${first.line}${named}` } : first;
  const topic = topicOf(plain, { isTargetNamed: true }) ?? tubeNumbers(plain);
  return topic === null ? null : { outcome: topic, isTopic: true };
};

const isDay = ({ day }: Known): boolean => day?.isSunUp('now') === true;

const capital = (word: string): string => `${word.charAt(0).toUpperCase()}${word.slice(1)}`;

/** "Took “satrun” to be Saturn." */
const withNamesSaid = (read: Reading, { names }: Mended): Reading => {
  const took = names.map(({ typed, found }) => `Took “${typed}” to be ${capital(found)}.`).join(' ');
  return { ...read, note: read.note === undefined ? took : `${took} ${read.note}` };
};

/** What words mean whose slips are mended. */
const readSpelt = (spelt: string, { words, named }: Omit<Words, 'typed'>, known: Known): PlainReading => {
  const typed = withSunriseNamed(placeAtEnd(withSpokenTwo(inFull(withoutCourtesies(spelt)))));
  const plain = typed.toLowerCase();
  const whole = wholeAnswer({ typed, words, named }, known);
  if (whole !== null) return whole;
  const asked = { ...askedOf(withoutToDo(typed), plain, known, withoutCourtesies(words.trim())), typed };
  const talk = asked.targets.length > 0 ? null : (toTalk(words.trim().toLowerCase()) ?? toTalk(plain));
  if (talk !== null) return talk;
  const late = asked.targets.length > 0 ? null : topicOf(plain, { isTargetNamed: false });
  if (late !== null) return { outcome: late, isTopic: true };
  const read = readByRules(asked, known);
  if (read !== null)
    return isProblem(read)
      ? { outcome: read }
      : { ...withUnusedSaid(withPlaceDoubted(read, asked), asked), line: withNamed(read.line, named) };
  if (MOVES.test(plain)) return { line: `up ${words.trim()}${named}` };
  return talked(NEEDS_MORE, plain);
};

const readAnew = (text: string, known: Known): PlainReading => {
  // "Thanks, what's up tonight?"
  const behindThanks = text.replace(THANKS_FIRST, '');
  const asked = behindThanks === text ? null : readAnew(behindThanks, known);
  if (asked !== null && 'line' in asked) return asked;
  const clean = withHalfCompleted(withPlainPosition(cleanText(text)), known.usual ?? null);
  if (clean === '' || clean.length > LONGEST_QUESTION) return null;
  const optionsFrom = /(?:^|\s)[a-z]{2,12}:\S/u.exec(clean)?.index ?? clean.length;
  const words = clean.slice(0, optionsFrom);
  const named = clean.slice(optionsFrom);
  const spelt = mendedWithNames(words.trim(), known);
  const found = readSpelt(spelt.text, { words, named }, known);
  if (spelt.names.length === 0) return found;
  // Beside the Sun no name is taken for another.
  if (found !== null && 'isTopic' in found) return found;
  if (found === null || !('line' in found) || /^sun\b/u.test(found.line) || isDay(known))
    return readSpelt(mended(words.trim(), known), { words, named }, known);
  return withNamesSaid(found, spelt);
};

const readingsOf = onceOf((_known: Known) => new Map<string, PlainReading>());

/**
 * What to ask instead of words that are no command: talk first, then what is said of gear and sites, then of the sky. Options written after
 * the words (`site:…`) are kept. Several readers ask of the same words: they are read once, as long as `known` lasts.
 */
export const plainQuestion = (text: string, known: Known): PlainReading => {
  const before = readingsOf(known).get(text);
  if (before !== undefined) return before;
  const read = readAnew(text, known);
  readingsOf(known).set(text, read);
  return read;
};
