/** Which sayings of the vocabulary stand in a member's sentences. */
import { keyOf } from '../reading.js';
import type { SayingEntry } from '../schema.js';
import type { Met } from './known.js';
import type { Lexicon } from './lexicon.js';
import { matchPhrase, numbered, requiredOf, type Phrase, type PhraseMatch, type Sentence } from './phrases.js';
import type { Clauses } from './sentences.js';
import { deniedAt, stands, type Leave } from './stands.js';

interface CompiledSaying {
  readonly entry: SayingEntry;
  /** What it tells or hides: sayings over the same words that tell the same thing are rivals. */
  readonly tells: readonly string[];
  readonly leave: Leave;
  /** … where what denies it does not matter yet. */
  readonly leaveDenied: Leave;
  /** It counts only beside another, or another beside it. */
  readonly isJoined: boolean;
  /** It may be there only to set others aside. */
  readonly isSaid: boolean;
}

interface Candidate {
  readonly saying: CompiledSaying;
  readonly phrase: Phrase;
  /** What its first step may be. */
  readonly starts: readonly number[];
  /** What it cannot do without besides the rarest, rarest first, as numbers of needs. */
  readonly others: readonly number[];
}

/** Lists of numbers laid end to end, so that they are near each other in memory: list i is from `from[i]` to before `from[i + 1]`. */
interface Lists {
  readonly from: Int32Array;
  readonly all: Int32Array;
}

/** What is known of the sentence being read. Marks of earlier sentences are of an older round and tell nothing. */
interface Marks {
  round: number;
  /** Number of a need → the last round that met it. */
  readonly met: Int32Array;
  /** Key → the last round that had it, and then the first and last of its places. */
  readonly seen: Int32Array;
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** Place → the token it is, and the next place of the same key (-1: none). */
  readonly tokens: number[];
  readonly next: number[];
}

export interface Sayings {
  readonly lexicon: Lexicon;
  /** Phrases to try, each under every key that its rarest need may be. */
  readonly candidates: readonly Candidate[];
  /** Key → of each phrase to try where it stands the rarest of its other needs (-1: it has none), in the order of `candidates`. */
  readonly firstNeeds: Lists;
  /** Key → the needs that it meets. A need is a set of keys, of which a phrase must have one; many phrases share one. */
  readonly needsMet: Lists;
  readonly marks: Marks;
}

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

const tellsOf = ({ answers, system, client, path, hides }: SayingEntry): readonly string[] => [
  ...(hides ?? []),
  ...Object.entries(answers ?? {}).map(([check, answer]) => keyOf(check, answer)),
  ...(system === undefined ? [] : ['system']),
  ...(client === undefined ? [] : ['client']),
  ...(path === undefined ? [] : ['path']),
];

export const tellsAnything = ({ answers, suggests, system, client, path }: SayingEntry): boolean =>
  [answers, suggests, system, client, path].some((part) => part !== undefined);

const compile = (entry: SayingEntry): CompiledSaying => {
  const { asked, habit, past, denied, others, notOf } = entry;
  const mentioned = entry.answers === undefined && entry.suggests === undefined;
  const leave = { asked, habit, past, denied, others, mentioned, notOf };
  const isJoined = entry.sign !== undefined || entry.beside !== undefined;
  return {
    entry,
    tells: tellsOf(entry),
    leave,
    leaveDenied: { ...leave, denied: true },
    isJoined,
    isSaid: isJoined || tellsAnything(entry),
  };
};

const endToEnd = (lists: readonly (readonly number[])[]): Lists => {
  const from = new Int32Array(lists.length + 1);
  for (const [i, list] of lists.entries()) from[i + 1] = (from[i] ?? 0) + list.length;
  return { from, all: Int32Array.from(lists.flat()) };
};

export const indexSayings = (
  lexicon: Lexicon,
  sayings: readonly { readonly entry: SayingEntry; readonly phrases: readonly Phrase<string>[] }[],
): Sayings => {
  const compiled = sayings.map(({ entry, phrases }) => ({
    saying: compile(entry),
    phrases: phrases.map((phrase) => numbered(phrase, lexicon.keyOf)),
  }));
  // How many phrases use a word stands for how often members do.
  const uses = new Array<number>(lexicon.keyCount).fill(0);
  for (const key of compiled.flatMap(({ phrases }) => phrases.flatMap((phrase) => requiredOf(phrase).flat())))
    uses[key] = (uses[key] ?? 0) + 1;
  const commonness = (keys: readonly number[]): number => keys.reduce((sum, key) => sum + (uses[key] ?? 0), 0);
  const needsMet = Array.from({ length: lexicon.keyCount }, (): number[] => []);
  const numberOf = new Map<string, number>();
  const needOf = (keys: readonly number[]): number => {
    const name = keys.join(' ');
    const before = numberOf.get(name);
    if (before !== undefined) return before;
    const number = numberOf.size;
    numberOf.set(name, number);
    for (const key of keys) needsMet[key]?.push(number);
    return number;
  };
  const byRarest = Array.from({ length: lexicon.keyCount }, (): Candidate[] => []);
  for (const { saying, phrases } of compiled)
    for (const phrase of phrases) {
      const required = requiredOf(phrase);
      const [rarest = [], ...others] = [...required].sort((a, b) => commonness(a) - commonness(b));
      const candidate = { saying, phrase, starts: required[0] ?? [], others: others.map(needOf) };
      for (const key of rarest) byRarest[key]?.push(candidate);
    }
  const blank = (): Int32Array => new Int32Array(lexicon.keyCount);
  const met = new Int32Array(numberOf.size);
  return {
    lexicon,
    candidates: byRarest.flat(),
    firstNeeds: endToEnd(byRarest.map((candidates) => candidates.map(({ others: [first] }) => first ?? -1))),
    needsMet: endToEnd(needsMet),
    marks: { round: 0, met, seen: blank(), first: blank(), last: blank(), tokens: [], next: [] },
  };
};

const overlap = (a: PhraseMatch, b: PhraseMatch): boolean => a.start < b.end && b.start < a.end;

/** Whether a takes more words than b, or as many and is there to hide such as b. */
const goesBefore = (a: Found, b: Found): boolean => {
  const more = a.match.taken.length - b.match.taken.length;
  return more > 0 || (more === 0 && a.saying.entry.hides !== undefined && b.saying.entry.hides === undefined);
};

/** Of a check that may have several answers at once, each tells a thing of its own; they are hidden together. */
const hides = (other: CompiledSaying, own: CompiledSaying): boolean =>
  other.entry.hides?.some((what) => what === own.entry.sign || Object.hasOwn(own.entry.answers ?? {}, what)) === true;

/** Of two that tell the same answers, one of which counts only beside another, neither is the other's rival. */
const agree = ({ entry: other }: CompiledSaying, { entry: own }: CompiledSaying): boolean =>
  own.beside !== undefined &&
  Object.entries(own.answers ?? {}).every(([check, answer]) => (other.answers?.[check] ?? answer) === answer);

const isRival = (other: Found, own: Found): boolean =>
  other.saying !== own.saying &&
  goesBefore(other, own) &&
  overlap(other.match, own.match) &&
  (other.saying.tells.some((what) => own.saying.tells.includes(what)) || hides(other.saying, own.saying)) &&
  !agree(other.saying, own.saying);

/**
 * Of sayings over the same words that tell the same thing, the one that takes more of them.
 * @param found in the order they begin
 */
const longest = (found: readonly Found[]): readonly Found[] => {
  if (found.length < 2) return found;
  const reach = Math.max(...found.map(({ match }) => match.end - match.start));
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

const NO_MET: readonly Met[] = [];

/** Marks which keys the sentence has and where, and the needs they meet; gives the keys back in the order they come. */
const markKeys = ({ marks, needsMet }: Sayings, round: number, { met: sentence }: Sentence): readonly number[] => {
  const { met, seen, first, last, tokens, next } = marks;
  const { from, all } = needsMet;
  const keys: number[] = [];
  let place = 0;
  for (let at = 0; at < sentence.length; at++)
    for (const { key } of sentence[at] ?? NO_MET) {
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

/** The tokens where a phrase may begin, each once. */
const beginningsOf = ({ starts }: Candidate, { round, seen, first, tokens, next }: Marks): readonly number[] => {
  const all: number[] = [];
  for (const key of starts) {
    if (seen[key] !== round) continue;
    for (let place = first[key] ?? -1; place >= 0; place = next[place] ?? -1) {
      const at = tokens[place] ?? 0;
      if (starts.length === 1 || !all.includes(at)) all.push(at);
    }
  }
  return all;
};

/** Whether the sentence meets each need. */
const areMet = (needs: readonly number[], { met, round }: Marks): boolean => {
  for (const need of needs) if (met[need] !== round) return false;
  return true;
};

const findAll = (sayings: Sayings, sentence: Sentence): readonly Found[] => {
  const found: Found[] = [];
  const { marks, candidates, firstNeeds } = sayings;
  const { from, all } = firstNeeds;
  const { met } = marks;
  const round = nextRound(marks);
  for (const rarest of markKeys(sayings, round, sentence))
    for (let i = from[rarest] ?? 0, end = from[rarest + 1] ?? 0; i < end; i++) {
      const need = all[i] ?? -1;
      if (need >= 0 && met[need] !== round) continue;
      const candidate = candidates[i];
      if (candidate === undefined || !areMet(candidate.others, marks)) continue;
      for (const at of beginningsOf(candidate, marks)) {
        const match = matchPhrase(candidate.phrase, sentence, at);
        if (match !== null) found.push({ saying: candidate.saying, match });
      }
    }
  return found.length < 2 ? found : found.sort((a, b) => a.match.start - b.match.start);
};

const holdsAny = (tokens: ReadonlySet<number>, { taken }: PhraseMatch): boolean => {
  for (const at of taken) if (tokens.has(at)) return true;
  return false;
};

const NOTHING: readonly Said[] = [];

export const readWords = (sayings: Sayings, sentence: Clauses): readonly Said[] => {
  const all = findAll(sayings, sentence);
  if (all.length === 0) return NOTHING;
  const found = sentence.fixed.size === 0 ? all : all.filter(({ match }) => !holdsAny(sentence.fixed, match));
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
