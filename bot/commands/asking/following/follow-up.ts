/**
 * "And tomorrow?", "what about M 81", "when does it set": words that say of a question of the sky only what is to be different. Pure: from the
 * line asked last and the new words comes the new line, or nothing. Talk among people and words about a mount are nothing.
 */
import { cleanText } from '../../../ground/fold-text.js';
import { tableOf } from '../../../ground/table-of.js';
import type { LineRead } from '../../core/command.js';
import { askedOf, type Asked, type Known } from '../sentence/asked.js';
import { towardsIn } from '../sentence/directions.js';
import { inEnglishNames } from '../bodies-abroad.js';
import { mended, spellerFor } from '../spelling/known-words.js';
import { talkIn } from '../talk-among-people.js';
import { aboutIt, readWhole } from './about-it.js';
import { mayFollow } from './may-follow.js';
import { isTarget, targetIn } from './named-in.js';
import { nextOne } from './next-one.js';
import { outrightLine, type Beside } from './outright.js';
import { hourAfterMorning, NAMES_PLACE_OR_DAY, saysLater, shiftedTimes, tellsShift } from './shift-time.js';
import {
  inherited,
  isOfSun,
  lineOf,
  takes,
  timesOf,
  toldLine,
  withoutOtherFirst,
  withTimes,
  type Times,
  type ToldLine,
} from './told-line.js';

const LEAD =
  /^(?:(?:and|n|ok|okay|right|fine|great|nice|cool|thanks|so|but|no|nope|sorry|oh|ah|hm+|well|actually|then|or|i meant?|i did mean|make (?:it|that)|try|that(?:'s| is| will be)? (?:too|very|so) \p{L}+|only|(?:what|how|wot)(?:'?s)? (?:about|bout|abt)|what if|and if|(?:and )?how(?:'?s| is| will)(?: (?:it|things)(?: be)?)?(?= (?:tomorrow|tonight|on \p{L}+|next|\p{L}+day)\b))(?:[,.]| )+|same(?: again| thing| question| one)?(?: but)? (?=for|with|at|on|in|from|again|but|tomorrow|tonight|\p{L}+day)|(?:if )?(?:i|we) (?:use|used|take|took|have|had|go to|went to|am in|are in|was in|were in|got|only have|only had) )+/iu;
/** Leads that say by themselves that something before is followed. */
const SAYS_SO =
  /\b(?:and|(?:what|how|wot)(?:'?s)? (?:about|bout|abt)|how(?:'?s| is| will)|what if|meant?|same|make|but|or|only|if)\b/iu;
/** With no "what if" before it this is told, not asked. */
const TELLS = /^(?:(?:and|ok|okay|so|but|no|oh|well),? )*(?:i|we) (?!meant?\b|did mean\b)/iu;
/** "Not M 51, M 101": one in the place of another. */
const TAKES_BACK = /^not .+[ ,].+/iu;

const AND_THEN = /^(?:and|n|&|so|ok)?,? ?(?:then|next)(?: what)?[\s?!.]*$/iu;

/** Nothing by themselves; any other word that no part was made of says something else. */
const GLUE =
  /^(?:then|there|instead|please|pls|thanks|only|just|too|also|again|same|time|the|a|my|of|for|on|in|at|from|with|through|under|or|and|ones?|those|say|around|about|by|that|this|anything|something|owt|there's|night|evening|morning|sky|skies|to|look|if|use|using|it)$/u;

const ASKS_BY_ITSELF = /^(?:(?:and|ok|okay|so|but),? )*(?:(?:what|how|wot)(?:'?s)? (?:about|bout|abt)|what if)\b/iu;

/** Asked, with or without a mark at its end. */
const ASKS = /^(?:how|when|where|what|which|is|are|can|could|will|does|do|should)\b/iu;

interface Said {
  readonly rest: string;
  /** With its slips mended, though it is only told. */
  readonly mended: string;
  readonly isLed: boolean;
  readonly isQuestion: boolean;
}

const saidIn = (text: string, known: Known): Said | null => {
  const clean = cleanText(text);
  if (!mayFollow(clean) || /\n/u.test(text.trim())) return null;
  const typed = clean.replace(/[’‘`]/gu, "'");
  const isQuestion = /\?\s*$/u.test(text) || ASKS_BY_ITSELF.test(typed);
  const spelt = partedIn(AND_THEN.test(typed) ? 'and the next one' : mended(inEnglishNames(typed, known), known));
  if (spelt.rest === '' || TELLS.test(typed)) return null;
  // What is only told has its words as they stand: "no sound" is no Sunday.
  const parted = spelt.isLed || isQuestion || ASKS.test(spelt.rest) ? spelt : partedIn(typed);
  return { ...parted, mended: spelt.rest, isQuestion };
};

const partedIn = (text: string): Omit<Said, 'isQuestion' | 'mended'> => {
  const words = text.replace(/[\s?!.,]+$/u, '');
  const [lead = ''] = LEAD.exec(`${words} `) ?? [];
  const rest = words.slice(lead.length).replace(/,/gu, ' ').replace(/\s+/gu, ' ').trim();
  return { rest, isLed: SAYS_SO.test(lead) || TAKES_BACK.test(rest) };
};

const commandNamed = (name: string, known: Known): ToldLine['command'] | undefined =>
  known.allCommands?.find((command) => command.name === name);

const asUp = (before: ToldLine, known: Known, target: string): ToldLine | null => {
  const command = commandNamed('up', known);
  if (command === undefined) return null;
  const { night, hour } = timesOf(before, known.nowUtcMs);
  const isList = before.command.name === 'tonight';
  return withTimes(
    inherited(before, { command, values: { target } }),
    { night, hour: isList ? null : hour },
    known.nowUtcMs,
  );
};

const withTarget = (before: ToldLine, target: string, known: Known): ToldLine | null => {
  if (!takes(before, 'target')) return asUp(before, known, target);
  if (takes(before, 'other')) return { ...before, values: { ...before.values, other: target } };
  const { facing: _facing, ...values } = before.values;
  return { ...before, values: { ...values, target } };
};

const isOfNow = (when: Asked['when']): boolean => when.hour === 'now' || (when.isMorning && when.night === 'tomorrow');

const isKitForSun = (named: ToldLine, { kit, sky }: Asked): boolean => (kit ?? sky) !== null && isOfSun(named);

/** What kit shows is told by `up`. */
const fitForKit = (named: ToldLine, { kit, sky }: Asked, known: Known): ToldLine | null => {
  const target = named.values['target'];
  const isOfKit = kit !== null || sky !== null;
  return isOfKit && !takes(named, 'with') && target !== undefined ? asUp(named, known, target) : named;
};

/** The line before, with what the words name in the place of what it had. */
const withParts = (before: ToldLine, asked: Asked, known: Known): ToldLine | null => {
  const target = targetIn(asked, before, known);
  if (target === undefined) return null;
  const named = target === null ? before : withTarget(before, target, known);
  if (named === null || isKitForSun(named, asked)) return null;
  const { place, kit, sky, above, when } = asked;
  const now = timesOf(before, known.nowUtcMs);
  const fit = fitForKit(named, asked, known);
  if (fit === null) return null;
  const more = { site: place, with: kit, sky, above };
  const given = Object.entries(more).filter((entry): entry is [string, string] => entry[1] !== null);
  if (given.some(([name]) => !takes(fit, name))) return null;
  const values = { ...fit.values, ...Object.fromEntries(given) };
  if (when.night === null && when.hour === null) return { ...fit, values };
  const timed = when.hour === null || when.hour === 'now' ? { ...fit, values } : withoutOtherFirst({ ...fit, values });
  const then = withTimes(timed, timesMeant(asked, now), known.nowUtcMs);
  return then === null ? null : ofWholeNight(then);
};

/** "Is Mars up", and then "and tomorrow?": of another night nothing is up now. */
const ofWholeNight = (told: ToldLine): ToldLine => {
  const { first, on, at } = told.values;
  return told.command.name === 'up' && on !== undefined && at === undefined && /^(?:up|down)$/u.test(first ?? '')
    ? { ...told, values: { ...told.values, first: 'seen' } }
    : told;
};

const timesMeant = ({ when, plain }: Asked, before: Times): Times => ({
  night: isOfNow(when) ? null : (when.night ?? before.night),
  hour: when.hour === null ? before.hour : (hourAfterMorning(plain, before.hour) ?? when.hour),
});

/** How questions begin whose answers narrow by many things; the rest is read as if it stood behind. */
const BEGUN = tableOf({ tonight: 'what can i see', bright: 'what is the bright star' });

const TIMES_OF_LIST = ['at', 'from', 'until'];

/** What a line read from the rest says, laid over the line before. */
const laidOver = (before: ToldLine, line: string, known: Known): ToldLine | null => {
  const read = toldLine(line, known.allCommands ?? []);
  if (read === null || read.command.name !== before.command.name) return null;
  const given = Object.keys(read.values);
  if (given.length === 0) return null;
  const drops = [
    ...(given.some((name) => TIMES_OF_LIST.includes(name)) ? TIMES_OF_LIST : []),
    ...(given.includes('kind') ? ['also'] : []),
  ];
  const kept = Object.entries(before.values).filter(([name]) => !drops.includes(name));
  return { ...before, values: { ...Object.fromEntries(kept), ...read.values } };
};

/** Whether the words are nothing but parts of a question of the sky. */
const isOfParts = (unread: Asked['unread']): boolean => unread.every(({ plain }) => GLUE.test(plain));

/** "And the port?" is no town: one has to be led to, or written as a name. */
const isPlaceSure = ({ place, isPlaceUnknown, isPlaceSaved }: Asked, rest: string, known: Known): boolean => {
  if (isPlaceUnknown) return false;
  if (place === null || isPlaceSaved) return true;
  const at = rest.toLowerCase().indexOf(place);
  if (at < 0 || /^[\d+-]/u.test(rest.slice(at))) return true;
  const isName = /^\p{Lu}/u.test(rest.slice(at));
  const isLed = LEADS_TO_PLACE.test(rest.slice(0, at));
  // "In stock" and "from fan": words of every day are towns somewhere.
  if (!isName && (!isLed || spellerFor(known).isKnown(place))) return false;
  // A town that is left at the end takes all words with it: the others have to be parts as well.
  const others = `${rest.slice(0, at).replace(LEADS_TO_PLACE, '')} ${rest.slice(at + place.length)}`.trim();
  return others === '' || isOfParts(unreadBeside(askedOf(others, others.toLowerCase(), known, others)));
};
const LEADS_TO_PLACE = /(?:^|\s)(?:from|in|at|near|for|outside) $/iu;

const isOfList = ({ kind, constellation, targets, plain }: Asked): boolean =>
  (kind !== null && targets.length === 0) || constellation !== null || towardsIn(plain) !== null;

/** "My bad" is no sky. */
const isSkySaid = ({ sky, plain }: Asked): boolean =>
  sky === null || /\b(?:cit|town|suburb|countr|rural|village|dark|bortle|light|pollut|sk(?:y|ies))/u.test(plain);

const namesPart = (asked: Asked): boolean => {
  const { when, place, kit, sky, kind, targets, above, below, brighter, constellation, larger, wider } = asked;
  const parts = [when.night, when.hour, place, kit, sky, kind, above, below, brighter, constellation, larger, wider];
  return (
    parts.some((part) => part !== null) || targets.length > 0 || asked.isMessierOnly || towardsIn(asked.plain) !== null
  );
};

const COMPASS = /^(?:north|south)?-?(?:east|west)?(?:ern)?$/u;
const TAKES_FROM = /^(?:than|rather)$/u;

/** Unread words that name nothing else than the parts do. */
const unreadBeside = ({ unread, kind, kindsToo, targets }: Asked): Asked['unread'] => {
  const kinds = [kind, ...kindsToo].join(' ').split(' ');
  return unread.filter(
    ({ plain: word }) => !kinds.includes(word) && !TAKES_FROM.test(word) && !(word === 'not' && targets.length > 0),
  );
};

const byLine = (before: ToldLine, words: string, known: Known): ToldLine | null => {
  const line = readWhole(words, known);
  return line === null ? null : laidOver(before, line, known);
};

const byShift = (before: ToldLine, plain: string, known: Known): ToldLine | null => {
  const times = shiftedTimes(plain, timesOf(before, known.nowUtcMs));
  return times === null ? null : withTimes(before, times, known.nowUtcMs);
};

const isOfItself = ({ targets, kind }: Asked): boolean => targets.length > 0 || kind !== null;

const isWholly = (asked: Asked, rest: string, known: Known): boolean =>
  isOfParts(unreadBeside(asked).filter(({ plain }) => towardsIn(asked.plain) === null || !COMPASS.test(plain))) &&
  namesPart(asked) &&
  isPlaceSure(asked, rest, known) &&
  isSkySaid(asked);

const begunLine = (before: ToldLine, rest: string, known: Known): ToldLine | null => {
  const begun = BEGUN.get(before.command.name);
  return begun === undefined ? null : byLine(before, `${begun} ${rest}`, known);
};

const byParts = (before: ToldLine, { rest, isLed }: Said, known: Known): ToldLine | null => {
  const plain = rest.toLowerCase();
  const next = nextOne(before, plain);
  if (next !== null) return next;
  if (tellsShift(plain)) return byShift(before, plain, known);
  const asked = askedOf(rest, plain, known, rest);
  const isPartOfSky = BEGUN.has(before.command.name) && plain.startsWith('in ');
  if (!isLed && !isPartOfSky && isOfItself(asked)) return null;
  if (isWholly(asked, rest, known)) {
    const line = isPartOfSky || asked.targets.length === 0 ? begunLine(before, rest, known) : null;
    if (line !== null || !isOfList(asked)) return line ?? withParts(before, asked, known);
  }
  return isLed && !takes(before, 'target') ? byLine(before, rest, known) : null;
};

const OF_SAME_NIGHT = /\b(?:morning|tonight|this evening|today|now)\b/iu;

const following = (
  before: ToldLine,
  said: Said,
  known: Known,
  { isStrict }: Pick<Beside, 'isStrict'>,
): LineRead | null => {
  const ofIt =
    aboutIt(before, said.rest, known, { isStrict }) ??
    (said.mended === said.rest ? null : aboutIt(before, said.mended, known, { isStrict }));
  if (ofIt !== null) return { line: ofIt };
  const isSure = said.isQuestion || NAMES_PLACE_OR_DAY.test(said.rest) || isTarget(said.rest, known);
  if (isStrict && !(said.isLed && isSure)) return null;
  const changed = byParts(before, said, known);
  if (changed === null) return null;
  const next = lineOf(changed);
  // "Tomorrow morning" ends tonight, and "what about tonight" asks of what was named again.
  return next === lineOf(before) && !(said.isLed && OF_SAME_NIGHT.test(said.rest)) ? null : { line: next };
};

/**
 * @param line the line asked last, as `keepLastAsked` has it
 * @param isStrict a walk waits for the asker's words: only what is led in as a follow-up, or asked of what was named, is one
 */
export const followUp = (
  line: string,
  text: string,
  known: Known,
  { isStrict = false, earlier = null }: Partial<Beside> = {},
): LineRead | null => {
  const before = toldLine(line, known.allCommands ?? []);
  if (before === null) return null;
  const outright = outrightLine(before, text, known, { isStrict, earlier });
  if (outright !== null) return { line: outright };
  const said = saidIn(text, known);
  // "Later" is no good-bye where an answer stands above.
  const isTalk = talkIn(text) !== null && (isStrict || said === null || !saysLater(said.rest.toLowerCase()));
  if (said === null || isTalk) return null;
  return following(before, said, known, { isStrict });
};
