/** "When does it set", "can i see it in binoculars": another question of what was asked about, with its name in the place of "it". */
import { plainQuestion } from '../plain-question.js';
import { commandLine } from '../question-parts.js';
import { askedOf, type Known } from '../sentence/asked.js';
import { saidShort, WHEN_BEST } from './said-short.js';
import { inherited, lineOf, takes, timesOf, toldLine, withTimes, type ToldLine } from './told-line.js';

const THING = '(?:it|they|them|that one|this one)';
const MAY = '(?:can|could|should|will|would|might|do|does)';
const SEEN = '(?:see|spot|observe|image|photograph|find|split|look at|look for|point at|view)';

const BESIDE_IT = /^(?:is|are) (?:it|they) (?:near|close to|next to|beside|far from) \S/u;

/** How one asks of a thing in the sky, and of little else. */
const ASKED_OF_SKY: readonly RegExp[] = [
  /^how (?:high|low|bright|big|faint|far up)\b/u,
  /^(?:at )?(?:when|what time|how long (?:until|till|before))\b.*\b(?:rises?|rising|sets?|setting|risen|come up|comes up|go down|goes down|goes below|highest|high|best|transits?|culminat\w*|cross(?:es)? (?:the )?meridian|on the meridian|up|visible|above)\b/u,
  new RegExp(
    `^where(?:'s|s| is| will| would| should| are)? ${THING}(?: be| stand| now| then|$| at\\b| on\\b| in\\b| tonight\\b| tomorrow\\b)`,
    'u',
  ),
  new RegExp(`^where (?:does|do|will|did) ${THING} (?:rise|set|come up|go down)\\b`, 'u'),
  new RegExp(`^where (?:do|can|should|could|will) (?:i|we) (?:find|look for|see|point to|spot) ${THING}\\b`, 'u'),
  /^(?:in )?(?:which|what) (?:way|direction|part of the sky|side of the sky|constellation)\b/u,
  new RegExp(
    `^(?:is|are|will|would|was) ${THING} (?:still |already |ever |also |too |be |well )*(?:up(?! to\\b| and\\b)|visible|high\\w*|low\\w*|above|placed|in the sky|observable|rising|setting(?! up)|below|down|worth|best|bright|faint)\\b`,
    'u',
  ),
  new RegExp(`^(?:so )?${MAY} (?:i|we|you) (?:still |also |even |ever )?${SEEN} ${THING}\\b`, 'u'),
  new RegExp(`^${MAY} (?:i|we) (?:still )?(?:get|catch) ${THING} (?:with|through|in|from)\\b`, 'u'),
  new RegExp(
    `^${MAY} ${THING} (?:ever |still |also )?(?:rise|set|get (?:any )?(?:high|low)\\w*|go (?:down|below)|come up|stay up|culminate|transit|cross (?:the )?meridian|clear)\\b`,
    'u',
  ),
  /^(?:and )?(?:what(?:'s| is|s)? )?(?:the |its? )*(?:altitude|azimuth|magnitude|constellation|hour angle)\b/u,
  /^(?:please )?(?:remind me|tell me|let me know|ping me|wake me) (?:when|once|as soon as|before)\b/u,
  new RegExp(`^how (?:do|can|could|should|would) (?:i|we|you) (?:find|locate|get to|hop to|reach) ${THING}\\b`, 'u'),
  new RegExp(`^(?:what|which)\\b.*\\b(?:eyepiece|filter|separation)\\b.*\\b${THING}`, 'u'),
  BESIDE_IT,
  /^what is the .*star (?:left of|right of|under|underneath|below|beneath|above|over|next to|beside|near|close to) it$/u,
  /^can i see its rings$|^when does it flip$|^how far is it from\b|^how far away is it$|^has it set$|^am i too late for it$|^am i too early for it$|^do i need a telescope for it$/u,
  new RegExp(`^${MAY} (?:my|a|an|the) .{2,24} (?:split|show|see|resolve|separate|reach) ${THING}\\b`, 'u'),
  /^(?:is|would|will) it (?:be )?(?:safe|ok|okay|dangerous|risky|wise) (?:for \w+ )?to (?:look|point|aim|slew|go|swing)\b/u,
];
const MOST_WORDS = 10;

/** Said to somebody, or of a thing one owns. */
const TO_PEOPLE =
  /\b(?:(?:did|do|are|have|has|will|would|could) (?:you|he|she|they|we all)|(?:buy|bought|sold|sell|cost|lend|borrow|bring)\w*)\b/iu;
/** Beside a walk "it" is the mount or its port, but where only a thing in the sky can be meant. */
const OF_SKY_ALONE =
  /^can i see its rings$|^which eyepiece for it$|^what is the separation of it$|^how far is it from the moon$|^(?:can|could|will|would) (?:i|we) (?:see|split) (?:it|them) (?:with|in|through) |^(?:(?:at )?what time|when|how)\b.*\b(?:high|highest|rises?|sets?|culminat\w*|transits?|in the sky)\b/iu;
const IT = /\b(?:it|they|them|that one|this one)\b/iu;
const ITS = /\b(?:its|it's|it is|their)\b/iu;

/** Answers of what is asked of a target. */
const ANSWERS = /^(?:up|altitude|meridian|sun|remind|compare|epoch|bright|ahead meetings)\b/u;

/** What is coming of one planet. */
const planetIn = ({ about = '' }: ToldLine['values']): string | null => (PLANET.test(about) ? about : null);
const PLANET = /^(?:mercury|venus|mars|jupiter|saturn|uranus|neptune)$/iu;

export const nameOf = ({ command, values }: ToldLine): string | null => {
  if (values['other'] !== undefined) return null;
  if (command.name === 'moon') return 'the moon';
  if (command.name === 'moons') return 'Jupiter';
  if (command.name === 'bright') return values['near'] ?? null;
  if (command.name === 'ahead') return /^(?:planets|meetings)$/u.test(values['kind'] ?? '') ? planetIn(values) : null;
  return values['target'] ?? null;
};

/** Of whether one may look: "it" before "safe" is nobody. */
const IS_SAFE = /\b(?:is|was|will|would) it (?:be )?(?:safe|ok|okay|dangerous|risky|wise)\b/iu;

const withName = (words: string, name: string): string =>
  words
    .replace(IS_SAFE, 'is this safe')
    .replace(/\bit is\b|\bit's\b|\bits(?= (?:up|visible|high\w*|best|rising|setting|above|over|in)\b)/iu, `${name} is`)
    .replace(/\b(?:its|their)\b/iu, `${name}'s`)
    .replace(IT, name);

/** The new line with what it does not say itself taken from the one before, its time too. */
const inheriting = (before: ToldLine, asked: ToldLine, known: Known): ToldLine => {
  const told = inherited(before, asked);
  const then = timesOf(before, known.nowUtcMs);
  const now = timesOf(asked, known.nowUtcMs);
  if (asked.values['at'] === 'now' || (then.night === null && then.hour === null)) return told;
  const hour = now.hour ?? (now.night === null && takes(asked, 'at') ? then.hour : null);
  return withTimes(told, { night: now.night ?? then.night, hour }, known.nowUtcMs) ?? told;
};

/** A question of it and of nothing that people or mounts do. */
const isOfIt = (said: string, isStrict: boolean): boolean =>
  ASKED_OF_SKY.some((form) => form.test(said.toLowerCase())) &&
  said.split(' ').length <= MOST_WORDS &&
  (IT.test(said.replace(IS_SAFE, ' ')) || ITS.test(said.replace(IS_SAFE, ' '))) &&
  !TO_PEOPLE.test(said) &&
  // The Sun has a question of its own, whatever was asked before; how far from it a planet stands is the planet's.
  (!/\b(?:sun|solar|sunrise|sunset)\b/iu.test(said) || BESIDE.test(said)) &&
  (!isStrict || OF_SKY_ALONE.test(said));

/** The line of words that are a question from end to end; null where they are not. */
export const readWhole = (words: string, known: Known): string | null => {
  const read = plainQuestion(words, known);
  if (read === null || !('line' in read) || read.unsure !== undefined) return null;
  return /\bNot used:/u.test(read.note ?? '') ? null : read.line;
};

/** What was asked of tonight is still of tonight by day: "how high" is not now. */
const isOfTonight = ({ values }: ToldLine): boolean =>
  /^(?:tonight|this evening)$/u.test(values['on'] ?? '') && values['at'] === undefined;
const OF_PLACE = /^(?:how (?:high|low)|where)\b/iu;
const SAYS_TIME = /\b(?:now|tonight|today|tomorrow|then|\d)\b/iu;

const MOON_IN_WAY =
  /^(?:and |but |so )*(?:is|will|does|would) (?:the )?moon(?:light)? (?:be )?(?:in the way|a (?:problem|bother|nuisance)|bother\w*|spoil\w*|trouble\w*|too bright|interfer\w*|get in (?:the|my|our) way)(?: (?:then|there|tonight|too|much|for (?:me|us|that|it)))*[\s?!.]*$/iu;

/** "Is the Moon in the way", after a list or a target: for its night and place. */
export const moonBeside = (before: ToldLine, said: string, known: Known): string | null => {
  if (!MOON_IN_WAY.test(said)) return null;
  const target = nameOf(before);
  const isTarget = target !== null && target !== 'the moon' && /^(?:up|altitude)$/u.test(before.command.name);
  const line = isTarget ? `up ${target} first:moonlight` : 'dark first:moon-spoils';
  const read = toldLine(line, known.allCommands ?? []);
  if (read === null || !/^(?:up|altitude|tonight|dark)$/u.test(before.command.name)) return null;
  const { night } = timesOf(before, known.nowUtcMs);
  const site = before.values['site'];
  const told = { ...read, values: { ...read.values, ...(site === undefined ? {} : { site }) } };
  return lineOf(withTimes(told, { night, hour: null }, known.nowUtcMs) ?? told);
};

/** "Is it near Jupiter", "how far is it from Vega". */
const BESIDE =
  /^(?:is|are|how (?:far|close|near) (?:is|are)) (?:it|they) (?:\w+ )?(?:near|close to|next to|beside|far from|from|to) \S/iu;

/** "How far from the Moon is it", with "it" where it is looked for. */
const FROM_FIRST =
  /^(how (?:far|close|near)(?: away)?) ((?:from|off|to) (?:the )?[\p{L}\d ]{2,24}?) (?:is|are) (it|they|that)$/iu;
const FAR_OFF = /^(how (?:far|close|near)) (?:off|away from) (the [\p{L}\d ]{2,24}?) is (it|that)$/iu;
const inOrder = (said: string): string =>
  said
    .replace(FAR_OFF, '$1 is $3 from $2')
    .replace(FROM_FIRST, '$1 is $3 $2')
    .replace(/\boff the\b/iu, 'from the');

const NEAR = '(?:(?:anywhere |very |quite |still |really )*(?:near|close to|close by|next to|beside|by))';
const NEAR_MOON = new RegExp(
  `^(?:is|will|does|are) (?:it|that|they) (?:be |get |come )?${NEAR} the moon$|^(?:is|will|does) (?:the )?moon (?:be |get |come )?${NEAR} (?:it|that|them)$`,
  'iu',
);
/** Nearer than this one calls near; common practice, no source. */
const NEAR_DEG = '10';

/** "Is the Moon near it": whether within some degrees, at the hour in hand. Null: that is not asked. */
const nearMoon = (before: ToldLine, said: string, known: Known): string | null => {
  const name = NEAR_MOON.test(said) ? nameOf(before) : null;
  if (name === null || name === 'the moon') return null;
  const read = toldLine(commandLine('compare', name, { other: 'moon', within: NEAR_DEG }), known.allCommands ?? []);
  return read === null ? null : lineOf(inheriting(before, read, known));
};

const BESIDE_NOBODY = new RegExp(`${NEAR} (?:it|that|them)$`, 'iu');

/** "When?", after an answer that was no, is when it comes up. */
const isWhetherUp = ({ values }: ToldLine): boolean => /^(?:up|seen)$/u.test(values['first'] ?? '');

const inFull = (before: ToldLine, said: string): string => {
  const short = saidShort(said);
  return short === WHEN_BEST && isWhetherUp(before) ? 'when does it rise' : (short ?? said);
};

/** The line where it answers what is asked of a target. */
const ofTarget = (line: string, known: Known): ToldLine | null => {
  const read = ANSWERS.test(line) ? toldLine(line, known.allCommands ?? []) : null;
  return (read?.values['target'] ?? read?.values['near']) === undefined ? null : read;
};

/** What names its own target says "it" of nothing, but where both are to be compared. */
const namesTarget = (words: string, known: Known): boolean =>
  askedOf(words, words.toLowerCase(), known, words).targets.length > 0;

/** @returns the line; null where it is no question of what the line before asked about */
export const aboutIt = (
  before: ToldLine,
  said: string,
  known: Known,
  { isStrict }: { readonly isStrict: boolean },
): string | null => {
  const ordered = inOrder(said);
  const near = isStrict ? null : nearMoon(before, ordered, known);
  if (near !== null) return near;
  const asked = inFull(before, ordered);
  const name = nameOf(before);
  if (name === null || !isOfIt(asked, isStrict)) return null;
  if (!BESIDE.test(asked) && namesTarget(asked.replace(/\bcross\w*/giu, ' '), known)) return null;
  return ofName(before, asked, name, known);
};

const ofName = (before: ToldLine, asked: string, name: string, known: Known): string | null => {
  const tonight = isOfTonight(before) && OF_PLACE.test(asked) && !SAYS_TIME.test(asked) ? ' tonight' : '';
  const words = withName(
    asked.replace(
      /\b(?:then|at that (?:time|hour)|too(?! (?:late|early|low|high|faint|dim|bright|big|small)\b)|as well|also)\b/giu,
      ' ',
    ),
    name,
  );
  // "Is it near it": of what, nobody knows.
  if (BESIDE_NOBODY.test(words.trim())) return null;
  const line = readWhole(`${words.replace(/\s+/gu, ' ').trim()}${tonight}`, known);
  const read = line === null ? null : ofTarget(line, known);
  if (read === null) return null;
  return lineOf(read.command.name === 'remind' ? read : inheriting(before, read, known));
};
