/**
 * Sentences about the way from one target to another, whether or not the Sun is named ("slew from vega to mercury", "on deneb, want venus
 * next"): by day that way is what can hurt, so the `sun` command answers.
 */
import type { Problem } from '../../../ground/problem.js';
import { answered, leftBefore, partsOf, WANTS, type SunParts } from './about-sun.js';
import type { Known, Reading } from './asked.js';
import type { NamedTarget } from './targets.js';

const LEAVES = /^(?:from|leaving|off)$/u;
const ARRIVES = /^(?:to|towards?|onto|2)$/u;
/** Where the tube stands, when something else is wanted. */
const STANDS = /^(?:on|at|from|with|after|off)$/u;
const MOVES =
  /\b(?:slew\w*|mov(?:e|es|ed|eing|ing)|go ?to|go|goes|going|gonna|swing\w*|swung|star ?hop\w*|hop\w*|turn\w*|point\w*|driv(?:e|es|ing)|(?<!milky )way|path|route|head\w*|switch\w*|chang(?:e|ing)|rotat\w*|sweep\w*|steer\w*|get|travel\w*|jump\w*|over to|across to)\b/u;
const LEADS_TO = /\b(?:from|to|towards?|onto|into|on|at|off|leaving|after|with|2|fr|frm)\b|->|→|>/u;
/** Other questions: of a miss, a fault, a reminder, of how two targets stand to each other. */
const NOT_A_WAY =
  /\beclipses?\b|\b(?:landed|lands?|ended up|sent|miss\w*|wrong|instead|stops|stopped|stuck|stall\w*|fail\w*|won'?t|doesn'?t|error|grind\w*|noise|jam\w*|remind\w*|drift\w*|align\w*|compar\w*|brighter|bigger|tell me when|let me know|constellations|galaxies|clusters|nebulae)\b/u;
const HOW_FAR_APART =
  /\b(?:near\w*|clos\w*|far|dist\w*|degrees?|deg|separation|angle|gap|beside|next to|similar|belongs?)\b/u;
const BY_NIGHT = /night|evening/u;

const isWayOfTwo = (plain: string, [first, second]: readonly [NamedTarget, NamedTarget], { sentence }: SunParts) => {
  const led = (name: NamedTarget, pattern: RegExp): boolean => pattern.test(leftBefore(sentence, name.at));
  const leaves = led(first, LEAVES) || led(second, LEAVES);
  const arrives = led(first, ARRIVES) || led(second, ARRIVES);
  const isMoving = MOVES.test(plain);
  if (!isMoving && HOW_FAR_APART.test(plain)) return false;
  const isWanted = (led(first, STANDS) || led(second, /^on$/u)) && WANTS.test(plain);
  return (leaves && (arrives || isMoving)) || led(second, ARRIVES) || isWanted;
};

/** The way from one target to another; null: none is asked about. Night by night the Sun is no matter. */
export const wayBetween = (typed: string, known: Known): Reading | Problem | null => {
  const plain = typed.toLowerCase();
  if (NOT_A_WAY.test(plain) || !LEADS_TO.test(plain)) return null;
  const parts = partsOf(typed, known);
  const [first, second] = parts.named;
  if (first === undefined || second === undefined || !isWayOfTwo(plain, [first, second], parts)) return null;
  const { night, hour } = parts.when;
  return hour === null && night !== null && BY_NIGHT.test(night) ? null : answered(plain, parts);
};
