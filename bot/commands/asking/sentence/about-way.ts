/**
 * Sentences about the way from one target to another, whether or not the Sun is named ("slew from vega to mercury", "on deneb, want venus
 * next", "swap arcturus for mercury"), about a move to one at an hour that may be of the day, and about what is left tracking: by day that is
 * what can hurt, so the `sun` command answers.
 */
import { isProblem, type Problem } from '../../../ground/problem.js';
import { commandLine } from '../question-parts.js';
import { asksOfFlip } from './about-flip.js';
import { answered, WANTS } from './about-sun.js';
import type { Known, Reading } from './asked.js';
import { handsIn } from './hands.js';
import { hourOf } from './sun-hour.js';
import { leftBefore, partsOf, type SunParts } from './sun-parts.js';
import type { NamedTarget } from './targets.js';

const LEAVES = /^(?:from|leaving|off)$/u;
const ARRIVES = /^(?:to|towards?|onto|2)$/u;
/** Where the tube stands, when something else is wanted. */
const STANDS = /^(?:on|at|from|with|after|off)$/u;
const MOVES =
  /\b(?:slew\w*|mov(?:e|es|ed|eing|ing)|go ?to|go|goes|going|gonna|swing\w*|swung|star ?hop\w*|hop\w*|turn\w*|point\w*|driv(?:e|es|ing)|(?<!milky )way|path|route|head\w*|switch\w*|chang(?:e|ing)|rotat\w*|sweep\w*|steer\w*|get|travel\w*|jump\w*|over to|across to|aim\w*|push\w*|nudg\w*|send\w*)\b/u;
const LEADS_TO = /\b(?:from|to|towards?|onto|into|on|at|off|leaving|after|with|2|fr|frm)\b|->|→|>/u;
/** One after the other, in whatever words; by day that is a way. */
const FOLLOWS =
  /\b(?:from|then|next|now|after\w*|instead|swap\w*|replac\w*|leav(?:e|ing)|finish\w*|done|over|across|via|off|for|cross\w*|tak(?:e|ing)|want\w*|need\w*|say|safe\w*|try\w*|bring\w*|pan\w*|nudg\w*|push\w*|aim\w*|track\w*)\b/u;
/** Other questions: of a miss, a fault, a reminder, of how two targets stand to each other. */
const NOT_A_WAY =
  /\beclipses?\b|\bmoon(?:light)?\b.*\b(?:in (?:the|my|our) way|bother\w*|spoil\w*|ruin\w*|wash\w*|drown\w*|interfer\w*)\b|\b(?:landed|lands?|ended up|sent|miss\w*|wrong|instead(?! of)|went|stops|stopped|stuck|stall\w*|fail\w*|won'?t|doesn'?t|error|grind\w*|noise|jam\w*|remind\w*|drift\w*|align\w*|compar\w*|relative|brighter|bigger|tell me when|let me know|constellations|galaxies|clusters|nebulae|poke|wake|ping|warn|alert)\b/u;
const HOW_FAR_APART =
  /\b(?:near\w*|clos\w*|far|dist\w*|degrees?|deg|separation|angle|gap|beside|next to|similar|belongs?)\b/u;
/** One of the two, and no way between them. */
const EITHER =
  /\b(?:or|vs|versus)\b|\b(?:which|who)\b.*\b(?:higher|lower|better|best|brighter|first|nicer)\b|\b(?:better|best|well) placed\b/u;
const BY_NIGHT = /night|evening/u;

const isWayOfTwo = (plain: string, [first, second]: readonly [NamedTarget, NamedTarget], { sentence }: SunParts) => {
  if (!LEADS_TO.test(plain)) return false;
  const led = (name: NamedTarget, pattern: RegExp): boolean => pattern.test(leftBefore(sentence, name.at));
  const leaves = led(first, LEAVES) || led(second, LEAVES);
  const arrives = led(first, ARRIVES) || led(second, ARRIVES);
  const isMoving = MOVES.test(plain);
  const isWanted = (led(first, STANDS) || led(second, /^on$/u)) && WANTS.test(plain);
  return (leaves && (arrives || isMoving)) || led(second, ARRIVES) || isWanted;
};

/** Whether the Sun is up when it is asked for; by night one after the other is no matter of the Sun's. */
const isByDay = (plain: string, parts: SunParts): boolean => parts.day?.isSunUp(hourOf(plain, parts)) === true;

/** Whether two targets are the ends of a way: by the words between them, or, by day, one after the other. */
const isAWay = (plain: string, pair: readonly [NamedTarget, NamedTarget], parts: SunParts): boolean => {
  const { night, hour } = parts.when;
  if (
    (!MOVES.test(plain) && (HOW_FAR_APART.test(plain) || EITHER.test(plain))) ||
    (hour === null && BY_NIGHT.test(night ?? ''))
  )
    return false;
  if (isWayOfTwo(plain, pair, parts)) return true;
  return (FOLLOWS.test(plain) || MOVES.test(plain) || hour !== null) && isByDay(plain, parts);
};

/** The way from one target to another; null: none is asked about. Night by night the Sun is no matter. */
export const wayBetween = (typed: string, known: Known): Reading | Problem | null => {
  const plain = typed.toLowerCase();
  if (NOT_A_WAY.test(plain)) return null;
  const parts = partsOf(typed, known);
  const [first, second] = parts.named;
  if (first === undefined) return null;
  if (second === undefined) return parts.unknownStart !== null && MOVES.test(plain) ? answered(plain, parts) : null;
  const isOfFlip = asksOfFlip(plain);
  // By night the Sun is no matter: the mount's own sides are.
  if (isOfFlip && !isByDay(plain, parts)) return null;
  if (!isAWay(plain, [first, second], parts)) return null;
  const read = answered(plain, { ...parts, isWay: true });
  if (!isOfFlip || isProblem(read)) return read;
  const next = commandLine('meridian', second.text, { from: first.text, at: hourOf(plain, parts) });
  return { ...read, note: `Whether it flips on the way: ask ${next}.` };
};

const only = ({ named, unknownEnd }: SunParts): NamedTarget | undefined =>
  named.length === 1 && unknownEnd === null ? named[0] : undefined;

/** What is asked for, or told as to be done now: the tube is to go there. */
const TO_MOVE =
  /\b(?:can|may|could|shall|should|safe\w*|ok|okay|allowed|alright|want to|wanna|going to|gonna|about to|let me|like to|is it)\b|^(?:(?:please|pls|now|ok|so|just|i|we|i'?m|let'?s|gonna) )*(?:slew|go ?to|swing|move|point|turn|send|drive|aim|push|nudge|steer)(?:e?ing)?\b/u;
/** "Point me to Venus" asks the way there of the eye. */
const SENDS =
  /\b(?:slew\w*|go(?:ing)? ?to|swing\w*|mov(?:e|ing)|point(?! me)\w*|turn\w*|send\w*|driv(?:e|ing)|aim\w*|push\w*|nudg\w*|steer\w*)\b/u;
const MOVED_TO = /^(?:to|at|on|onto|over|towards?|2|slew|goto)$/u;

const ASKS_SAFETY = /\b(?:safe\w*|danger\w*|risk\w*|ok|okay|alright|sun)\b/u;
/** Told at length, or with what came of it, it is no request. */
const MOST_WORDS = 9;
const TELLS_MORE = /\b(?:but|and|it|nothing|not|\w+n'?t|when|after|sound|beep\w*)\b/u;
const isNow = (hour: string | null): boolean => hour === null || hour === 'now' || hour === 'right now';

const isPlainRequest = (plain: string): boolean =>
  !TELLS_MORE.test(plain) && plain.trim().split(/\s+/u).length <= MOST_WORDS;

/** A tube is to be sent now, by night, and nothing is asked of the Sun. */
const asksToStand = (plain: string, { isNight, when: { night, hour } }: SunParts): boolean =>
  isNight && night === null && isNow(hour) && SENDS.test(plain) && !ASKS_SAFETY.test(plain) && isPlainRequest(plain);

/** With the Sun down it is asked whether the target stands there, and for how long. */
const standsNow = (target: NamedTarget, { site }: SunParts): Reading => ({
  line: commandLine('altitude', target.text, { at: 'now', site: site ?? undefined }),
});

/** "Venus 1300 goto". */
const SENT_LAST = /\b(?:go ?to|slew)\W*$/u;

/** "can i slew to venus now", "point the scope at mercury at 1pm": while the Sun is up then, whatever else a page on it would say. */
export const moveByDay = (typed: string, known: Known): Reading | Problem | null => {
  const plain = typed.toLowerCase();
  const isSentLast = SENT_LAST.test(plain);
  if (!MOVES.test(plain) || !(isSentLast || TO_MOVE.test(plain)) || NOT_A_WAY.test(plain)) return null;
  const parts = partsOf(typed, known);
  const target = only(parts);
  const { night, hour } = parts.when;
  if (target === undefined || !(isSentLast || MOVED_TO.test(leftBefore(parts.sentence, target.at)))) return null;
  // A night or a day without an hour is asked about as a whole; no hour at all is now, where a way is asked for outright.
  const isOfNow = night === null || /^(?:today|this morning)$/u.test(night);
  if (hour === null && !(isOfNow && SENDS.test(plain))) return null;
  if (isByDay(plain, parts)) return answered(plain, parts);
  return asksToStand(plain, parts) ? standsNow(target, parts) : null;
};

const TRACKS =
  /\b(?:track\w*|follow\w*|leav(?:e|ing)|left|let|unattended|stay\w*|keep)\b.*\b(?:till?|until|all (?:day|night|morning|afternoon)|through|overnight|for (?:an?|\d+|two|three|some) hours?|unattended|while i)\b/u;
const INTO_MORNING = /\b(?:morning|dawn|sun ?rise|overnight|all night|through the night|day ?light)\b/u;
/** "till sunset", "until the morning". */
const UNTIL = /\b(?:till?|until|through) (?:the |late )?(?:\w+)(?: \d\S*)?/gu;
const TRACKING_NOTE =
  'While it tracks it keeps that far from the Sun; should it stop, the Sun can pass the tube. Stay beside it by day, and cap it when you leave or before sunrise.';

/** "track venus till evening", "leave it on jupiter till the morning": judged while the Sun is up. */
export const leftTracking = (typed: string, known: Known): Reading | Problem | null => {
  const plain = typed.toLowerCase();
  if (!TRACKS.test(plain) || NOT_A_WAY.test(plain)) return null;
  const parts = partsOf(typed.replace(UNTIL, ' '), known);
  const target = only(parts);
  const isMorning = INTO_MORNING.test(plain);
  if (target === undefined || parts.day === null) return null;
  if (!isMorning && !isByDay(plain, parts)) return null;
  const at = isByDay(plain, parts) ? hourOf(plain, parts) : 'sunrise';
  return {
    line: commandLine('sun', target.text, { at, site: parts.site ?? undefined, mount: parts.mount ?? undefined }),
    note: TRACKING_NOTE,
  };
};

/** "slew to antares at 11", by day: the hour of the day comes first, and what to ask for the other is said. */
export const moveAtHands = (typed: string, known: Known): Reading | Problem | null => {
  const plain = typed.toLowerCase();
  const hands = handsIn(typed);
  if (hands === null || !MOVES.test(plain) || NOT_A_WAY.test(plain)) return null;
  const parts = partsOf(typed, known);
  const target = only(parts);
  if (target === undefined || parts.when.night !== null || !isByDay(plain, parts)) return null;
  const at = hourOf(plain, parts);
  const evening = `${(hands.hour % 12) + 12}:${String(hands.minute).padStart(2, '0')}`;
  const site = parts.site ?? undefined;
  return {
    line: commandLine('sun', target.text, { at, site, mount: parts.mount ?? undefined }),
    note: `Took the hour of the day. For the evening ask ${commandLine('up', target.text, { at: evening, site })}.`,
  };
};
