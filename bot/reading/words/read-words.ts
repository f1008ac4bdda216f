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

export interface Sayings {
  readonly lexicon: Lexicon;
  /** The rarest key that a phrase cannot do without → the phrases to try where it stands. */
  readonly byRarest: readonly (readonly Candidate[])[];
  /** Sets of keys, of which a phrase needs one each; many phrases share one. */
  readonly needs: readonly (readonly number[])[];
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
  return { lexicon, byRarest, needs };
};

const overlap = (a: PhraseMatch, b: PhraseMatch): boolean => a.start < b.end && b.start < a.end;

/** Whether a takes more words than b, or as many and is there to hide such as b. */
const goesBefore = (a: Found, b: Found): boolean => {
  const more = a.match.taken.size - b.match.taken.size;
  return more > 0 || (more === 0 && a.saying.entry.hides !== undefined && b.saying.entry.hides === undefined);
};

/** Of sayings over the same words that tell the same thing, the one that takes more of them. */
const longest = (found: readonly Found[]): readonly Found[] =>
  found.filter(
    (own) =>
      !found.some(
        (other) =>
          other.saying !== own.saying &&
          goesBefore(other, own) &&
          overlap(other.match, own.match) &&
          other.saying.tells.some((what) => own.saying.tells.includes(what)),
      ),
  );

/** Whether the sentence has one of a set of keys, looked at once a set. */
const UNKNOWN = 0;
const STANDS = 1;
const LACKS = 2;

/** The tokens where a phrase may begin, each once. */
const beginningsOf = ({ starts }: Candidate, { places }: Sentence): readonly number[] => {
  const all: number[] = [];
  for (const key of starts) for (const at of places.get(key) ?? []) all.push(at);
  return all.length < 2 || starts.length < 2 ? all : [...new Set(all)];
};

const findAll = ({ byRarest, needs, lexicon }: Sayings, sentence: Sentence): Found[] => {
  const found: Found[] = [];
  const { places } = sentence;
  const present = new Uint8Array(lexicon.keyCount);
  for (const key of places.keys()) present[key] = 1;
  const judged = new Uint8Array(needs.length);
  const isMet = (need: number): boolean => {
    if (judged[need] === UNKNOWN)
      judged[need] = needs[need]?.some((key) => present[key] === 1) === true ? STANDS : LACKS;
    return judged[need] === STANDS;
  };
  for (const rarest of places.keys())
    for (const candidate of byRarest[rarest] ?? []) {
      if (!candidate.others.every(isMet)) continue;
      for (const at of beginningsOf(candidate, sentence)) {
        const match = matchPhrase(candidate.phrase, sentence, at);
        if (match !== null) found.push({ saying: candidate.saying, match });
      }
    }
  return found.sort((a, b) => a.match.start - b.match.start);
};

const holdsAny = (tokens: ReadonlySet<number>, { taken }: PhraseMatch): boolean => {
  if (tokens.size > 0) for (const at of taken) if (tokens.has(at)) return true;
  return false;
};

export const readWords = (sayings: Sayings, sentence: Clauses): readonly Said[] => {
  const found = findAll(sayings, sentence).filter(({ match }) => !holdsAny(sentence.fixed, match));
  // A longer saying hides a shorter one even where it does not stand itself: "not parked" is not "parked".
  return longest(found)
    .filter(({ saying: { entry, leave }, match }) => tellsAnything(entry) && stands(sentence, match, leave))
    .map(({ saying: { entry }, match }) => ({ entry, match }));
};
