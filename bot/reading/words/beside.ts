/** Which sayings stand beside the sign they need: a happening and the loss of the link, told as one following the other. */
import type { Said } from './read-words.js';
import type { Clauses } from './sentences.js';
import { IS } from './asked.js';
import { clauseEnd, clauseStart, has, hasAny } from './clause.js';

export interface Placed extends Said {
  readonly sentence: Clauses;
  /** Which sentence of the text it is. */
  readonly number: number;
}

/** A following sentence this short needs no word of time: "Link gone." */
const SHORT_SENTENCE = 7;
/** How far from its beginning a following sentence says that it follows. */
const OPENING = 4;
/** "Never when it moves, only when idle": what opens the part in which a denied thing does happen. */
const EXCEPTING = /^(?:only|just|except|until|till|unless|but)$/u;
const LEADS = /^(?:in|on|at|with|during|by|around|past|below|near|under|from|through|later|within|for)$/u;

type Bounds = readonly [number, number];

/** What opens a part of its own: "solid till the camera starts". */
const OPENS_PART = /^(?:when|whenever|once|till|until|after|if|then)$/u;

/** The part of the sentence that it stands in. */
const clauseOf = ({ sentence, match }: Placed): Bounds => {
  const { tokens } = sentence;
  let [from, to] = [clauseStart(sentence, match.start, false), clauseEnd(sentence, match.end)];
  for (let at = match.start; at > from; at--) if (OPENS_PART.test(tokens[at]?.word ?? '')) from = at;
  for (let at = match.end; at < to; at++) if (OPENS_PART.test(tokens[at]?.word ?? '')) to = at;
  return [from, to];
};

const isWithin = ({ match }: Placed, [from, to]: Bounds): boolean => match.start >= from && match.start < to;

const isFound = (own: Clauses, from: number, to: number, fits: (at: number) => boolean): boolean => {
  for (let at = Math.max(0, from); at < Math.min(to, own.tokens.length); at++) if (fits(at)) return true;
  return false;
};

/** "Dry nights: perfect": the part of the sentence that names it calls it good, and the sign is in another part. */
const isGoodThere = (one: Placed, sign: Placed | null): boolean => {
  const { sentence, match } = one;
  const bounds = clauseOf(one);
  if (sign !== null && isWithin(sign, bounds)) return false;
  return isFound(
    sentence,
    ...bounds,
    (at) => !match.taken.includes(at) && has(sentence, at, IS.approved | IS['all-well']),
  );
};

const opensExcepting = ({ sentence, match }: Placed, from: number): boolean =>
  from > 0 && isFound(sentence, from, match.start, (at) => EXCEPTING.test(sentence.tokens[at]?.word ?? ''));

/** A word of time or of place leads to it. */
const isLed = ({ sentence, match }: Placed): boolean =>
  isFound(sentence, match.start - 3, match.end, (at) => LEADS.test(sentence.tokens[at]?.word ?? ''));

const isPaused = ({ sentence }: Placed, a: number, b: number): boolean =>
  isFound(sentence, Math.min(a, b), Math.max(a, b), (at) => sentence.tokens[at]?.kind === 'pause');

/** Denied, and not by words that are the other's own: "no link when it rains", "when nobody uses it I lose the link". */
const isDeniedBeside = ({ deniedAt, number }: Placed, other: Placed): boolean =>
  deniedAt >= 0 && !(other.number === number && other.match.taken.includes(deniedAt));

const SET_APART_REACH = 6;
const LEADS_APART = /^(?:when|whenever|while|if|just|only|during|on|in|with|at|by)$/u;

/**
 * "When I slew, not when it is idle", "it never drops when nobody uses it": named to say that it is not so, whatever denial the
 * saying holds of its own. "It does not answer when idle" is no such thing: that denial is the loss.
 * @param signs what of the loss stands in the same sentence
 */
const isSetApart = ({ sentence, match }: Placed, signs: readonly Placed[]): boolean => {
  if (!hasAny(sentence, IS.not)) return false;
  // A denial taken from before the loss belongs to the loss: "never drops when …".
  if (
    has(sentence, match.start, IS.not) &&
    signs.some(({ match: { start, end } }) => match.start < start && end <= match.end && !match.taken.includes(start))
  )
    return true;
  const from = Math.max(match.start - SET_APART_REACH, clauseStart(sentence, match.start, false), 0);
  for (let at = match.start - 1; at >= from; at--) {
    if (sentence.tokens[at]?.kind === 'pause') return false;
    if (EXCEPTING.test(sentence.tokens[at]?.word ?? '') && !has(sentence, at - 1, IS.not)) return false;
    if (!has(sentence, at, IS.not) || match.taken.includes(at)) continue;
    if (signs.some((sign) => sign.match.taken.includes(at))) return false;
    return isFound(sentence, at + 1, match.start, (next) => LEADS_APART.test(sentence.tokens[next]?.word ?? ''));
  }
  return false;
};

/** Words between a happening and what came of it, at most. */
const FAR_APART = 14;

const isJoinedWithin = (one: Placed, sign: Placed): boolean => {
  if (Math.max(one.match.start - sign.match.end, sign.match.start - one.match.end) > FAR_APART) return false;
  if (isDeniedBeside(sign, one)) return opensExcepting(one, sign.match.end);
  if (isGoodThere(one, sign) || isGoodThere(sign, one)) return false;
  return (
    hasAny(one.sentence, IS.moment) ||
    isLed(one) ||
    (one.entry.event === true && isPaused(one, one.match.start, sign.match.start))
  );
};

const isJoinedAcross = (one: Placed, sign: Placed): boolean => {
  if (one.entry.event !== true || sign.deniedAt >= 0 || isGoodThere(one, null)) return false;
  const { sentence } = one.number > sign.number ? one : sign;
  return (
    sentence.tokens.length <= SHORT_SENTENCE || isFound(sentence, 0, OPENING, (at) => has(sentence, at, IS.moment))
  );
};

const isJoined = (one: Placed, sign: Placed): boolean => {
  if (sign === one || sign.entry.sign !== one.entry.beside || isDeniedBeside(one, sign)) return false;
  if (sign.number === one.number) return isJoinedWithin(one, sign);
  return Math.abs(sign.number - one.number) === 1 && isJoinedAcross(one, sign);
};

const joins = (one: Placed, sign: Placed): boolean =>
  // Either of the two may be the one that says how they are joined.
  isJoined(one, sign) ||
  (sign.entry.beside !== undefined && sign.entry.beside === one.entry.sign && isJoined(sign, one));

/** Signs of a kind looked at in a sentence; one that has more is no sentence. */
const MOST_SIGNS = 8;

/** Kind of sign → number of the sentence → the signs of that kind in it. */
type Signs = ReadonlyMap<string, ReadonlyMap<number, readonly Placed[]>>;

const signsOf = (all: readonly Placed[]): Signs => {
  const signs = new Map<string, Map<number, Placed[]>>();
  for (const one of all) {
    const { sign } = one.entry;
    if (sign === undefined) continue;
    const ofKind = signs.get(sign) ?? new Map<number, Placed[]>();
    signs.set(sign, ofKind);
    const own = ofKind.get(one.number) ?? [];
    if (own.length === 0) ofKind.set(one.number, own);
    const isKnown = own.some(({ entry, match }) => entry === one.entry && match.start === one.match.start);
    if (!isKnown && own.length < MOST_SIGNS) own.push(one);
  }
  return signs;
};

/** Without those that want a sign beside them and have none. */
export const withSigns = <One extends Placed>(all: readonly One[]): readonly One[] => {
  const signs = all.some(({ entry }) => entry.beside !== undefined) ? signsOf(all) : null;
  const isBeside = (one: One, kind: string): boolean => {
    const ofKind = signs?.get(kind);
    if (ofKind === undefined) return false;
    return [one.number, one.number - 1, one.number + 1].some((number) =>
      ofKind.get(number)?.some((sign) => joins(one, sign)),
    );
  };
  return all.filter((one) => {
    const { beside } = one.entry;
    return beside === undefined
      ? one.deniedAt < 0
      : isBeside(one, beside) && !isSetApart(one, signs?.get(beside)?.get(one.number) ?? []);
  });
};
