/** Which sayings of the vocabulary stand in a member's sentences. */
import type { SayingEntry } from '../schema.js';
import type { CompiledSaying, Marks, Sayings } from './index-sayings.js';
import { matchPhrase, type PhraseMatch, type Sentence } from './phrases.js';
import type { Clauses } from './sentences.js';
import { deniedAt, isAlone, stands } from './stands.js';

export interface Said {
  readonly entry: SayingEntry;
  readonly match: PhraseMatch;
  /** The token that denies it, where a sign is said not to be ("never drops") or a happening is; -1: none. */
  readonly deniedAt: number;
}

interface Found {
  readonly saying: CompiledSaying;
  readonly match: PhraseMatch;
}

const overlap = (a: PhraseMatch, b: PhraseMatch): boolean => a.start < b.end && b.start < a.end;

/** Whether a takes more words than b, or as many and is there to hide such as b. */
const goesBefore = (a: Found, b: Found): boolean => {
  const more = a.match.taken.length - b.match.taken.length;
  return more > 0 || (more === 0 && a.saying.entry.hides !== undefined && b.saying.entry.hides === undefined);
};

/** Of a check that may have several answers at once, each tells a thing of its own; they are hidden together. */
const hides = (other: CompiledSaying, own: CompiledSaying): boolean =>
  other.entry.hides?.some((what) => what === own.entry.sign || Object.hasOwn(own.entry.answers ?? {}, what)) === true;

/** It is there to hide such a sign: "close the remote desktop" is no closing of the lid. */
const hidesSign = ({ entry: { hides } }: CompiledSaying, { entry: { sign } }: CompiledSaying): boolean =>
  sign !== undefined && hides?.includes(sign) === true;

/** Of two that tell the same answers, one of which counts only beside another, neither is the other's rival. */
const agree = ({ entry: other }: CompiledSaying, { entry: own, answers }: CompiledSaying): boolean =>
  own.beside !== undefined && answers.every(([check, answer]) => (other.answers?.[check] ?? answer) === answer);

const isRival = (other: Found, own: Found): boolean =>
  other.saying !== own.saying &&
  goesBefore(other, own) &&
  overlap(other.match, own.match) &&
  (hidesSign(other.saying, own.saying) ||
    ((other.saying.tells.some((what) => own.saying.tells.includes(what)) || hides(other.saying, own.saying)) &&
      !agree(other.saying, own.saying)));

/**
 * Of sayings over the same words that tell the same thing, the one that takes more of them.
 * @param found in the order they begin
 */
const longest = (found: readonly Found[]): readonly Found[] => {
  if (found.length < 2) return found;
  let reach = 0;
  for (const { match } of found) reach = Math.max(reach, match.end - match.start);
  let first = 0;
  return found.filter((own) => {
    // What ends before this one begins ends before all that follow.
    while ((found[first]?.match.start ?? 0) + reach <= own.match.start) first++;
    for (let i = first; (found[i]?.match.start ?? Infinity) < own.match.end; i++) {
      const other = found[i];
      if (other !== undefined && isRival(other, own)) return false;
    }
    return true;
  });
};

const LAST_ROUND = 2 ** 31 - 1;

const nextRound = (marks: Marks): number => {
  if (marks.round === LAST_ROUND) {
    marks.met.fill(0);
    marks.seen.fill(0);
    marks.round = 0;
  }
  marks.round += 1;
  return marks.round;
};

const NO_KEYS: readonly number[] = [];

/** Of a token: what it is by itself, as nearly all are, or what begins there as well. */
const keysAt = ({ tokens, met }: Sentence, at: number): readonly number[] => {
  const [known, own] = [tokens[at]?.known, met[at]];
  if (known != null && own === known.met) return known.keys;
  return own?.map(({ key }) => key) ?? NO_KEYS;
};

/** Marks which keys the sentence has and where, and the needs they meet; gives the keys back in the order they come. */
const markKeys = ({ marks, needsMet }: Sayings, round: number, sentence: Sentence): readonly number[] => {
  const { met, seen, first, last, tokens, next } = marks;
  const { from, all } = needsMet;
  const keys: number[] = [];
  let place = 0;
  for (let at = 0; at < sentence.tokens.length; at++)
    for (const key of keysAt(sentence, at)) {
      if (key < 0) continue;
      if (seen[key] === round) {
        const before = last[key] ?? 0;
        if (tokens[before] === at) continue;
        next[before] = place;
      } else {
        seen[key] = round;
        first[key] = place;
        keys.push(key);
        for (let i = from[key] ?? 0, end = from[key + 1] ?? 0; i < end; i++) met[all[i] ?? 0] = round;
      }
      last[key] = place;
      tokens[place] = at;
      next[place] = -1;
      place += 1;
    }
  return keys;
};

/** Marks the tokens where a phrase to try may begin. */
const markBeginnings = ({ starts, marks }: Sayings, candidate: number): void => {
  const { round, seen, first, tokens, next, beginnings } = marks;
  beginnings.length = 0;
  const [from, to] = [starts.from[candidate] ?? 0, starts.from[candidate + 1] ?? 0];
  for (let i = from; i < to; i++) {
    const key = starts.all[i] ?? 0;
    if (seen[key] !== round) continue;
    for (let place = first[key] ?? -1; place >= 0; place = next[place] ?? -1) {
      const at = tokens[place] ?? 0;
      if (to - from === 1 || !beginnings.includes(at)) beginnings.push(at);
    }
  }
};

/** Whether the sentence meets a need; -1 is none. */
const isMet = (need: number, { met, round }: Marks): boolean => need < 0 || met[need] === round;

/** Whether it meets all that a phrase to try, the i-th, cannot do without. */
const areMet = ({ firstNeeds, secondNeeds, otherNeeds, marks }: Sayings, i: number): boolean => {
  if (!isMet(firstNeeds.all[i] ?? -1, marks) || !isMet(secondNeeds[i] ?? -1, marks)) return false;
  const { from, all } = otherNeeds;
  for (let k = from[i] ?? 0, end = from[i + 1] ?? 0; k < end; k++) if (!isMet(all[k] ?? -1, marks)) return false;
  return true;
};

/** So few are quicker moved one by one than handed to a sort. */
const FEW = 24;

/** Those that begin together stay as they are. */
const inOrder = (found: Found[]): readonly Found[] => {
  if (found.length > FEW) return found.sort((a, b) => a.match.start - b.match.start);
  for (let i = 1; i < found.length; i++) {
    const own = found[i] as Found;
    let to = i;
    for (; to > 0 && (found[to - 1] as Found).match.start > own.match.start; to--) found[to] = found[to - 1] as Found;
    found[to] = own;
  }
  return found;
};

const findAll = (sayings: Sayings, sentence: Sentence): readonly Found[] => {
  const found: Found[] = [];
  const { code, marks, candidates, firstNeeds } = sayings;
  const { from } = firstNeeds;
  const round = nextRound(marks);
  for (const rarest of markKeys(sayings, round, sentence))
    for (let i = from[rarest] ?? 0, end = from[rarest + 1] ?? 0; i < end; i++) {
      if (!areMet(sayings, i)) continue;
      const candidate = candidates[i];
      if (candidate === undefined) continue;
      markBeginnings(sayings, i);
      for (const at of marks.beginnings) {
        const match = matchPhrase(code, candidate.phrase, sentence, at);
        if (match !== null) found.push({ saying: candidate.saying, match });
      }
    }
  return inOrder(found);
};

const holdsAny = (tokens: ReadonlySet<number>, { taken }: PhraseMatch): boolean => {
  for (const at of taken) if (tokens.has(at)) return true;
  return false;
};

const NOTHING: readonly Said[] = [];

export const readWords = (sayings: Sayings, sentence: Clauses): readonly Said[] => {
  const all = findAll(sayings, sentence);
  if (all.length === 0) return NOTHING;
  const found = all.filter(
    ({ saying, match }) =>
      (saying.leave.alone !== true || isAlone(sentence, match)) &&
      (sentence.fixed.size === 0 || !holdsAny(sentence.fixed, match)),
  );
  const said: Said[] = [];
  // A longer saying hides a shorter one even where it does not stand itself: "not parked" is not "parked".
  for (const { saying, match } of longest(found)) {
    const { entry, leave, leaveDenied, isJoined, isSaid } = saying;
    // What denies one that is joined may be the sign beside it: "no link on cold nights".
    if (!isSaid || !stands(sentence, match, isJoined ? leaveDenied : leave)) continue;
    const denies = isJoined && leave.denied !== true;
    said.push({ entry, match, deniedAt: denies ? deniedAt(sentence, match) : -1 });
  }
  return said;
};
