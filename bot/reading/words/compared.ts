/**
 * How it went with which of several things: "the desktop connects at once, my laptop will not", "other cable, other port,
 * restart: no change". Each outcome is of the thing named last before it, or of the one it is said to be with.
 */
import type { Placed } from './beside.js';
import { has } from './clause.js';

type Went = 'well' | 'badly';

/** The signs of how it went. */
const SIGN_OF: Readonly<Record<Went, string>> = { well: 'went-well', badly: 'went-badly' };
const TROUBLES: readonly string[] = [SIGN_OF.badly, 'link-lost'];

const LED_BY = /^(?:with|on|from|in|at|using|by|to|via|through|over)$/u;
/** Words between an outcome and the thing it is said to be with. */
const WITH_REACH = 4;
/** How far from its beginning the next sentence tells what came of the last thing named. */
const NEXT_REACH = 5;
/** "I have nothing of that sort" tells no outcome. */
const OWNS = /^(?:have|own|need|want|wish|got)$/u;
const LONGEST_LIST = 8;

const isBefore = (a: Placed, b: Placed): boolean =>
  a.number < b.number || (a.number === b.number && a.match.start < b.match.start);

const holds = (a: Placed, b: Placed): boolean =>
  a.number === b.number && a.match.start <= b.match.start && b.match.end <= a.match.end;

const length = ({ match }: Placed): number => match.end - match.start;

const wordAt = ({ sentence }: Placed, at: number): string => sentence.tokens[at]?.word ?? '';

const OPPOSITE: Readonly<Record<Went, Went>> = { well: 'badly', badly: 'well' };

const SIGNS = new Map<string | undefined, Went>([
  [SIGN_OF.well, 'well'],
  [SIGN_OF.badly, 'badly'],
]);

/** A denied outcome is the other one: "neither of them works". */
const wentOf = ({ entry, deniedAt }: Placed): Went | null => {
  const said = SIGNS.get(entry.sign);
  if (said === undefined) return null;
  return deniedAt < 0 ? said : OPPOSITE[said];
};

/** Entries of words.yaml that name gear. */
const THINGS = [
  'computer',
  'cable',
  'adapter',
  'phone',
  'program',
  'port',
  'mount',
  'handset',
  'network',
  'hub',
  'wifi',
];

/** "From work's laptop no: …": a bare "no" is an outcome only where nothing follows in its part. */
const isOutcome = (one: Placed): boolean => {
  const { sentence, match } = one;
  if (wentOf(one) === null) return false;
  for (let at = match.start; at < match.end; at++) if (has(sentence, at, 'turn')) return false;
  if (match.end - match.start > 1) return true;
  const word = wordAt(one, match.start);
  if (word === 'no') return sentence.tokens[match.end]?.kind !== 'word';
  // "On the same laptop" tells no outcome.
  return word !== 'same' || !THINGS.some((id) => has(sentence, match.end, id));
};

/** In the order they stand, the longest where several share words. */
const inOrder = (all: readonly Placed[]): readonly Placed[] =>
  all
    .filter((one) => !all.some((other) => other !== one && holds(other, one) && length(other) > length(one)))
    .sort((a, b) => (isBefore(a, b) ? -1 : 1));

interface Told {
  readonly things: readonly Placed[];
  readonly outcomes: readonly Placed[];
}

const isBetween = (one: Placed, from: Placed, to: Placed): boolean =>
  one !== from && one !== to && isBefore(from, one) && isBefore(one, to) && !holds(from, one) && !holds(to, one);

/** The outcome that is told after it in its sentence, before another thing is named. */
const toldAfter = (thing: Placed, { things, outcomes }: Told): Placed | undefined => {
  const outcome = outcomes.find(({ number, match }) => number === thing.number && match.end > thing.match.end);
  return outcome !== undefined && !things.some((one) => isBetween(one, thing, outcome)) ? outcome : undefined;
};

/** "Works with the short one": the outcome before it that is said to be with it. */
const toldWith = (thing: Placed, { things, outcomes }: Told): Placed | undefined => {
  const outcome = outcomes.findLast(({ number, match }) => number === thing.number && match.end <= thing.match.start);
  if (outcome === undefined || thing.match.start - outcome.match.end > WITH_REACH) return undefined;
  if (things.some((one) => isBetween(one, outcome, thing))) return undefined;
  for (let at = outcome.match.end - 1; at < thing.match.start; at++) if (LED_BY.test(wordAt(thing, at))) return outcome;
  return undefined;
};

const isParted = (thing: Placed, outcome: Placed): boolean => {
  for (let at = thing.match.end; at < outcome.match.start; at++)
    if (thing.sentence.tokens[at]?.kind === 'pause' || wordAt(thing, at) === 'and' || has(thing.sentence, at, 'turn'))
      return true;
  return false;
};

/** "Tried the desktop. Connects at once.": told first thing in the next sentence, which names nothing before it. */
const toldNext = (thing: Placed, { things, outcomes }: Told): Placed | undefined => {
  const outcome = outcomes.find(({ number }) => number === thing.number + 1);
  if (outcome === undefined || outcome.match.start > NEXT_REACH) return undefined;
  for (let at = 0; at < outcome.match.start; at++) if (OWNS.test(wordAt(outcome, at))) return undefined;
  return things.some((one) => isBetween(one, thing, outcome)) ? undefined : outcome;
};

/** "Done without any luck: a second lead, both sockets": told in vain before the first of a list, which a colon may open. */
const toldOfList = (thing: Placed, { things, outcomes }: Told): Placed | undefined => {
  const first = things.find(({ number }) => number === thing.number) ?? thing;
  const outcome = outcomes.find(({ number, match }) => number === thing.number && match.end <= first.match.start);
  if (outcome === undefined || wentOf(outcome) !== 'badly') return undefined;
  return first.match.start - outcome.match.end <= WITH_REACH ? outcome : undefined;
};

const outcomeOf = (thing: Placed, told: Told, reach = LONGEST_LIST): Placed | undefined => {
  const after = toldAfter(thing, told);
  const before = toldWith(thing, told);
  const own = before !== undefined && (after === undefined || isParted(thing, after)) ? before : after;
  if (own !== undefined) return own;
  const next = toldNext(thing, told);
  if (next !== undefined) return next;
  if (thing.entry.trial !== true || reach === 0) return undefined;
  const opening = toldOfList(thing, told);
  if (opening !== undefined) return opening;
  const following = told.things.find(
    (one) => isBefore(thing, one) && !holds(thing, one) && one.number <= thing.number + 1 && one.entry.trial === true,
  );
  if (following === undefined || told.outcomes.some((one) => isBetween(one, thing, following))) return undefined;
  const last = outcomeOf(following, told, reach - 1);
  // What cured was the last of them.
  return last !== undefined && wentOf(last) === 'badly' ? last : undefined;
};

const went = (thing: Placed, told: Told): Went | null => {
  const outcome = outcomeOf(thing, told);
  if (outcome === undefined || isWithOtherMount(thing, outcome)) return null;
  // "No other laptop here" denies the laptop, unless the denial is the outcome's own.
  const isThere =
    thing.deniedAt < 0 ||
    /^(?:neither|nor)$/u.test(wordAt(thing, thing.deniedAt)) ||
    told.outcomes.some(({ number, match }) => number === thing.number && match.taken.includes(thing.deniedAt));
  return isThere ? wentOf(outcome) : null;
};

/** "On the same laptop": what is said to be the same is not compared. */
const isTheSame = (one: Placed): boolean =>
  [1, 2].some((back) => wordAt(one, one.match.start - back) === 'same') || wordAt(one, one.match.start) === 'same';

const PUT_AWAY = /^(?:closed|closing|close|quit|killed|stopped|exited|shut|sold|returned)$/u;

/** "Since I closed the other program": it is none that was tried. */
const isPutAway = (one: Placed): boolean =>
  [1, 2, 3].some((back) => PUT_AWAY.test(wordAt(one, one.match.start - back)));

const OWN_MOUNT = /^(?:my|our|the|this|a|an|same|that|own|new)$/u;

/** "His laptop works with his mount": with another mount than the member's. */
const isWithOtherMount = (thing: Placed, outcome: Placed): boolean => {
  const { sentence } = outcome;
  const from = thing.number === outcome.number ? Math.min(thing.match.start, outcome.match.start) : 0;
  for (let at = from + 2; at < Math.min(outcome.match.end + WITH_REACH + 1, sentence.tokens.length); at++)
    if (has(sentence, at, 'mount') && LED_BY.test(wordAt(outcome, at - 2)) && !OWN_MOUNT.test(wordAt(outcome, at - 1)))
      return true;
  return false;
};

/** A word of trying stands before it in its sentence. */
const isListed = ({ sentence, match }: Placed): boolean => {
  if (!sentence.ids().has('trying')) return false;
  for (let at = 0; at < match.start; at++) if (has(sentence, at, 'trying')) return true;
  return false;
};

const isAnother = (one: Placed, other: Placed): boolean =>
  one.number !== other.number || one.match.end <= other.match.start || other.match.end <= one.match.start;

/** Without things that did not go as their sayings ask, and without what is told of the same words against them. */
export const asItWent = <One extends Placed>(all: readonly One[]): readonly One[] => {
  if (!all.some(({ entry }) => entry.thing !== undefined)) return all;
  const outcomes = inOrder(all.filter(isOutcome));
  const named = all.filter(
    (one) =>
      one.entry.thing !== undefined &&
      !isTheSame(one) &&
      !isPutAway(one) &&
      (one.entry.listed !== true || isListed(one)),
  );
  const told = { things: inOrder(named), outcomes };
  const results = new Map<One, Went | null>(named.map((one) => [one, outcomes.length === 0 ? null : went(one, told)]));
  const troubles = all.filter(({ entry, deniedAt }) => TROUBLES.includes(entry.sign ?? '') && deniedAt < 0);
  const isAgainst = (one: One): boolean => {
    const { against, thing } = one.entry;
    if (against === undefined) return true;
    if (against === 'trouble') return troubles.length > 0;
    return named.some(
      (other) =>
        other.entry.thing === thing &&
        isAnother(one, other) &&
        results.get(other) !== null &&
        results.get(other) !== results.get(one),
    );
  };
  const kept = named.filter(
    (one) => one.entry.went !== undefined && results.get(one) === one.entry.went && isAgainst(one),
  );
  const isContradicted = (one: One): boolean =>
    kept.some(
      ({ entry, number, match }) =>
        number === one.number &&
        one.match.start < match.end &&
        match.start < one.match.end &&
        Object.entries(one.entry.answers ?? {}).some(
          ([check, answer]) => entry.hides?.includes(check) === true || (entry.answers?.[check] ?? answer) !== answer,
        ),
    );
  return all.filter((one) => (one.entry.thing === undefined ? !isContradicted(one) : kept.includes(one)));
};
