/** Sayings made ready to be found: under the rarest word that each of their phrases cannot do without. */
import { keyOf } from '../reading.js';
import type { SayingEntry } from '../schema.js';
import type { Lexicon } from './lexicon.js';
import { encodePhrase, numbered, requiredOf, type Phrase } from './phrases.js';
import type { Leave } from './stands.js';

export interface CompiledSaying {
  readonly entry: SayingEntry;
  /** What it tells or hides: sayings over the same words that tell the same thing are rivals. */
  readonly tells: readonly string[];
  /** Check and answer. */
  readonly answers: readonly (readonly [string, string])[];
  readonly leave: Leave;
  /** … where what denies it does not matter yet. */
  readonly leaveDenied: Leave;
  /** It counts only beside another, or another beside it. */
  readonly isJoined: boolean;
  /** It may be there only to set others aside. */
  readonly isSaid: boolean;
}

export interface Candidate {
  readonly saying: CompiledSaying;
  /** Where its phrase begins in `code`. */
  readonly phrase: number;
}

interface Try {
  readonly candidate: Candidate;
  /** Its two rarest needs but the rarest; -1: it has none. */
  readonly first: number;
  readonly second: number;
  /** … and the rest of them. */
  readonly others: readonly number[];
  /** What its first step may be. */
  readonly starts: readonly number[];
}

/** Lists of numbers laid end to end, so that they are near each other in memory: list i is from `from[i]` to before `from[i + 1]`. */
interface Lists {
  readonly from: Int32Array;
  readonly all: Int32Array;
}

/** What is known of the sentence being read. Marks of earlier sentences are of an older round and tell nothing. */
export interface Marks {
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
  /** Where the phrase in hand may begin, each once. */
  readonly beginnings: number[];
}

export interface Sayings {
  readonly lexicon: Lexicon;
  /** The phrases' steps (see encodePhrase). */
  readonly code: Int32Array;
  /** Phrases to try, each under every key that its rarest need may be. */
  readonly candidates: readonly Candidate[];
  /** Key → of each phrase to try where it stands the rarest of its other needs (-1: it has none), in the order of `candidates` … */
  readonly firstNeeds: Lists;
  /** … and the next rarest. */
  readonly secondNeeds: Int32Array;
  /** Of each phrase to try, what else it cannot do without, as numbers of needs … */
  readonly otherNeeds: Lists;
  /** … and the keys that its first step may be. */
  readonly starts: Lists;
  /** Key → the needs that it meets. A need is a set of keys, of which a phrase must have one; many phrases share one. */
  readonly needsMet: Lists;
  readonly marks: Marks;
}

const tellsOf = ({ answers, system, client, path, hides }: SayingEntry): readonly string[] => [
  ...(hides ?? []),
  ...Object.entries(answers ?? {}).map(([check, answer]) => keyOf(check, answer)),
  ...(system === undefined ? [] : ['system']),
  ...(client === undefined ? [] : ['client']),
  ...(path === undefined ? [] : ['path']),
];

export const tellsAnything = ({ answers, suggests, system, client, path, names, quiets }: SayingEntry): boolean =>
  [answers, suggests, system, client, path, names, quiets].some((part) => part !== undefined);

const compile = (entry: SayingEntry): CompiledSaying => {
  const { denied, alone, notOf, names } = entry;
  // What is only named may as well be asked about, supposed, over, or another's thought.
  const [asked, habit, past, others] = [entry.asked, entry.habit, entry.past, entry.others].map(
    (leave) => leave ?? (names === undefined ? undefined : true),
  );
  const mentioned = names !== undefined || (entry.answers === undefined && entry.suggests === undefined);
  const leave = { asked, habit, past, denied, others, alone, mentioned, notOf };
  const isJoined = entry.sign !== undefined || entry.beside !== undefined;
  return {
    entry,
    tells: tellsOf(entry),
    answers: Object.entries(entry.answers ?? {}),
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
  const code: number[] = [];
  const byRarest = Array.from({ length: lexicon.keyCount }, (): Try[] => []);
  for (const { saying, phrases } of compiled)
    for (const phrase of phrases) {
      const required = requiredOf(phrase);
      const [rarest = [], ...others] = [...required].sort((a, b) => commonness(a) - commonness(b));
      const [first = -1, second = -1, ...more] = others.map(needOf);
      const candidate = { saying, phrase: code.length };
      const starts = required[0] ?? [];
      code.push(...encodePhrase(phrase));
      for (const key of rarest) byRarest[key]?.push({ candidate, first, second, others: more, starts });
    }
  const blank = (): Int32Array => new Int32Array(lexicon.keyCount);
  const met = new Int32Array(numberOf.size);
  return {
    lexicon,
    code: Int32Array.from(code),
    candidates: byRarest.flatMap((tries) => tries.map(({ candidate }) => candidate)),
    firstNeeds: endToEnd(byRarest.map((tries) => tries.map(({ first }) => first))),
    secondNeeds: Int32Array.from(byRarest.flat(), ({ second }) => second),
    otherNeeds: endToEnd(byRarest.flat().map(({ others }) => others)),
    starts: endToEnd(byRarest.flat().map(({ starts }) => starts)),
    needsMet: endToEnd(needsMet),
    marks: { round: 0, met, seen: blank(), first: blank(), last: blank(), tokens: [], next: [], beginnings: [] },
  };
};
