/**
 * How far the mount's sidereal time, or its clock, is from the right one, told as an amount ("lst is 40 minutes off", "differs by
 * 1 h 20"): which answer of the look at it that is.
 */
import { tableOf } from '../../ground/table-of.js';
import type { ReadFact, Reading } from '../../reading/index.js';
import { quotedFrom, withFact, withoutGuesses } from './with-fact.js';

const OF_THE_GAP =
  /\b(?:sidereal(?: time)?|lst|local sidereal|(?:offset|gap|difference)[^.;!?]{0,30}\b(?:clock|time|site|place|lst))\b/iu;
const IS_OFF =
  /\b(?:off|out|wrong|differs?|different|difference|differing|gap|offset|ahead|behind|slow|fast|too (?:early|late|much|little)|apart|between|instead)\b/iu;
const AMOUNT =
  /(?<![\d.:])(?:(?<h>\d{1,2}) ?(?:h|hrs?|hours?)(?: ?(?:and )?(?<hm>\d{1,2}) ?(?:m|min|mins|minutes?)?)?|(?<half>half an hour)|(?<one>(?:an?|one) hour)|(?<several>two|three|four|five|six|seven|eight|ten|twelve) hours|(?<m>\d{1,3}) ?(?:m|min|mins|minutes?))(?![\d:])/iu;

const HOURS = tableOf({ two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, ten: 10, twelve: 12 });
const MINUTES = 60;
const DAY = 24 * MINUTES;
/** Read off two displays one after the other, by hand. */
const BY_HAND = 3;
/** A degree of longitude, and a day, are 4 minutes of sidereal time to within seconds. */
const A_DEGREE = 4;
/** Beyond this a multiple of 4 is chance: any amount is within half a step of one. */
const FEW_DEGREES = 20;

const minutesIn = (text: string): number | null => {
  const { h, hm = '0', half, one, several, m } = AMOUNT.exec(text)?.groups ?? {};
  if (half !== undefined) return MINUTES / 2;
  if (one !== undefined) return MINUTES;
  if (several !== undefined) return (HOURS.get(several.toLowerCase()) ?? 0) * MINUTES;
  if (m !== undefined) return Number(m);
  return h === undefined ? null : Number(h) * MINUTES + Number(hm);
};

const answerFor = (minutes: number): string | null => {
  if (minutes >= DAY) return null;
  if (minutes <= 1) return 'same';
  const beyond = minutes % MINUTES;
  const isWhole = Math.min(beyond, MINUTES - beyond) <= BY_HAND;
  if (isWhole && minutes >= MINUTES - BY_HAND) return minutes < 1.5 * MINUTES ? 'one-hour' : 'whole-hours';
  return minutes <= FEW_DEGREES && minutes % A_DEGREE === 0 ? 'four-minutes' : 'another';
};

const CHECK = 'sidereal-gap';
const SURE = 0.85;

/** Adds what such an amount tells, in place of what else its words were taken for. */
export const withGapNamed = (read: Reading, text: string): Reading => {
  const piece = text.split(/[.;!?](?=\s|$)|\n/u).find((own) => OF_THE_GAP.test(own) && IS_OFF.test(own));
  const minutes = piece === undefined ? null : minutesIn(piece);
  const answer = minutes === null ? null : answerFor(minutes);
  if (piece === undefined || answer === null) return read;
  const fact: ReadFact = { what: CHECK, answer, sureness: SURE, quote: quotedFrom(piece), by: 'words' };
  const label = `the sidereal time is ${minutes} minutes off`;
  return withoutGuesses(withFact(read, { fact, label }), (what) => what === CHECK);
};
