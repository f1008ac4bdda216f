/** Which sayings of the vocabulary stand in a member's sentences. */
import { keyOf } from '../reading.js';
import type { SayingEntry } from '../schema.js';
import type { Lexicon } from './lexicon.js';
import { matchPhrase, numbered, requiredOf, type Phrase, type PhraseMatch, type Sentence } from './phrases.js';
import type { Clauses } from './sentences.js';
import { stands, type Leave } from './stands.js';

interface CompiledSaying {
  readonly entry: SayingEntry;
  /** What it tells or hides: sayings over the same words that tell the same thing are rivals. */
  readonly tells: readonly string[];
  readonly leave: Leave;
}

interface Candidate {
  readonly saying: CompiledSaying;
  readonly phrase: Phrase;
  /** What its first step may be. */
  readonly starts: readonly number[];
  /** What it cannot do without besides the rarest, rarest first, as numbers of `needs`. */
  readonly others: readonly number[];
}

/** What is known of the sentence being read. Marks of earlier sentences are of an older round and tell nothing. */
interface Marks {
  round: number;
  /** Key → the last round that had it. */
  readonly present: Int32Array;
  /** Number of a need → the last round in which it was looked at: positive where it was met, negative where not. */
  readonly judged: Int32Array;
}

export interface Sayings {
  readonly lexicon: Lexicon;
  /** The rarest key that a phrase cannot do without → the phrases to try where it stands. */
  readonly byRarest: readonly (readonly Candidate[])[];
  /** Sets of keys, of which a phrase needs one each; many phrases share one. */
  readonly needs: readonly (readonly number[])[];
  readonly marks: Marks;
}

export interface Said {
  readonly entry: SayingEntry;
  readonly match: PhraseMatch;
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

/** A saying may be there only to set others aside. */
export const tellsAnything = ({ answers, suggests, system, client, path }: SayingEntry): boolean =>
  [answers, suggests, system, client, path].some((part) => part !== undefined);

export const indexSayings = (
  lexicon: Lexicon,
  sayings: readonly { readonly entry: SayingEntry; readonly phrases: readonly Phrase<string>[] }[],
): Sayings => {
  const compiled = sayings.map(({ entry, phrases }) => ({
    saying: {
      entry,
      tells: tellsOf(entry),
      leave: { ...entry, mentioned: entry.answers === undefined && entry.suggests === undefined },
    },
    phrases: phrases.map((phrase) => numbered(phrase, lexicon.keyOf)),
  }));
  // How many phrases use a word stands for how often members do.
  const uses = new Array<number>(lexicon.keyCount).fill(0);
  for (const key of compiled.flatMap(({ phrases }) => phrases.flatMap((phrase) => requiredOf(phrase).flat())))
    uses[key] = (uses[key] ?? 0) + 1;
  const commonness = (keys: readonly number[]): number => keys.reduce((sum, key) => sum + (uses[key] ?? 0), 0);
  const needs: (readonly number[])[] = [];
  const numberOf = new Map<string, number>();
  const needOf = (keys: readonly number[]): number => {
    const name = keys.join(' ');
    const number = numberOf.get(name) ?? needs.push(keys) - 1;
    numberOf.set(name, number);
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
  const marks = { round: 0, present: new Int32Array(lexicon.keyCount), judged: new Int32Array(needs.length) };
  return { lexicon, byRarest, needs, marks };
};

const overlap = (a: PhraseMatch, b: PhraseMatch): boolean => a.start < b.end && b.start < a.end;

/** Whether a takes more words than b, or as many and is there to hide such as b. */
const goesBefore = (a: Found, b: Found): boolean => {
  const more = a.match.taken.size - b.match.taken.size;
  return more > 0 || (more === 0 && a.saying.entry.hides !== undefined && b.saying.entry.hides === undefined);
};

/** Of a check that may have several answers at once, each tells a thing of its own; they are hidden together. */
const hides = (other: CompiledSaying, own: CompiledSaying): boolean =>
  other.entry.hides?.some((what) => Object.hasOwn(own.entry.answers ?? {}, what)) === true;

/** Of sayings over the same words that tell the same thing, the one that takes more of them. */
const longest = (found: readonly Found[]): readonly Found[] => {
  if (found.length < 2) return found;
  return found.filter(
    (own) =>
      !found.some(
        (other) =>
          other.saying !== own.saying &&
          goesBefore(other, own) &&
          overlap(other.match, own.match) &&
          (other.saying.tells.some((what) => own.saying.tells.includes(what)) || hides(other.saying, own.saying)),
      ),
  );
};

const LAST_ROUND = 2 ** 31 - 1;

const nextRound = (marks: Marks): number => {
  if (marks.round === LAST_ROUND) {
    marks.present.fill(0);
    marks.judged.fill(0);
    marks.round = 0;
  }
  marks.round += 1;
  return marks.round;
};

const NOWHERE: readonly number[] = [];

/** The tokens where a phrase may begin, each once. */
const beginningsOf = ({ starts }: Candidate, { places }: Sentence): readonly number[] => {
  const [first = -1] = starts;
  if (starts.length === 1) return places.get(first) ?? NOWHERE;
  const all: number[] = [];
  for (const key of starts) for (const at of places.get(key) ?? NOWHERE) if (!all.includes(at)) all.push(at);
  return all;
};

/** Whether the sentence has one of the keys of each need. */
const areMet = (others: readonly number[], { needs, marks: { round, present, judged } }: Sayings): boolean => {
  for (const need of others) {
    const before = judged[need] ?? 0;
    if (before === -round) return false;
    if (before === round) continue;
    let isMet = false;
    for (const key of needs[need] ?? NOWHERE) if (present[key] === round) isMet = true;
    judged[need] = isMet ? round : -round;
    if (!isMet) return false;
  }
  return true;
};

const NO_CANDIDATES: readonly Candidate[] = [];

const findAll = (sayings: Sayings, sentence: Sentence): readonly Found[] => {
  const found: Found[] = [];
  const { places } = sentence;
  const round = nextRound(sayings.marks);
  for (const key of places.keys()) sayings.marks.present[key] = round;
  for (const rarest of places.keys())
    for (const candidate of sayings.byRarest[rarest] ?? NO_CANDIDATES) {
      if (!areMet(candidate.others, sayings)) continue;
      for (const at of beginningsOf(candidate, sentence)) {
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
  // A longer saying hides a shorter one even where it does not stand itself: "not parked" is not "parked".
  return longest(found)
    .filter(({ saying: { entry, leave }, match }) => tellsAnything(entry) && stands(sentence, match, leave))
    .map(({ saying: { entry }, match }) => ({ entry, match }));
};
