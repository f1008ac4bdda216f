/** Which sayings of the vocabulary stand in a member's sentences. */
import { keyOf } from '../reading.js';
import type { SayingEntry } from '../schema.js';
import type { Lexicon } from './lexicon.js';
import { matchPhrase, numbered, requiredOf, type Phrase, type PhraseMatch } from './phrases.js';
import type { Clauses } from './sentences.js';
import { stands } from './stands.js';

interface CompiledSaying {
  readonly entry: SayingEntry;
  /** What it tells or hides: sayings over the same words that tell the same thing are rivals. */
  readonly tells: readonly string[];
}

interface Candidate {
  readonly saying: CompiledSaying;
  readonly phrase: Phrase;
  /** What its first step may be. */
  readonly starts: readonly number[];
  /** What it cannot do without besides the rarest, rarest first. */
  readonly others: readonly (readonly number[])[];
}

export interface Sayings {
  readonly lexicon: Lexicon;
  /** The rarest key that a phrase cannot do without → the phrases to try where it stands. */
  readonly byRarest: readonly (readonly Candidate[])[];
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
    saying: { entry, tells: tellsOf(entry) },
    phrases: phrases.map((phrase) => numbered(phrase, lexicon.keyOf)),
  }));
  // How many phrases use a word stands for how often members do.
  const uses = new Array<number>(lexicon.keyCount).fill(0);
  for (const key of compiled.flatMap(({ phrases }) => phrases.flatMap((phrase) => requiredOf(phrase).flat())))
    uses[key] = (uses[key] ?? 0) + 1;
  const commonness = (keys: readonly number[]): number => keys.reduce((sum, key) => sum + (uses[key] ?? 0), 0);
  const byRarest = Array.from({ length: lexicon.keyCount }, (): Candidate[] => []);
  for (const { saying, phrases } of compiled)
    for (const phrase of phrases) {
      const required = requiredOf(phrase);
      const [rarest = [], ...others] = [...required].sort((a, b) => commonness(a) - commonness(b));
      for (const key of rarest) byRarest[key]?.push({ saying, phrase, starts: required[0] ?? [], others });
    }
  return { lexicon, byRarest };
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

const findAll = ({ byRarest, lexicon }: Sayings, sentence: Clauses): readonly Found[] => {
  const found: Found[] = [];
  const { places } = sentence;
  const present = new Uint8Array(lexicon.keyCount);
  for (const key of places.keys()) present[key] = 1;
  const stand = (keys: readonly number[]): boolean => {
    for (const key of keys) if (present[key] === 1) return true;
    return false;
  };
  for (const rarest of places.keys())
    for (const { saying, phrase, starts, others } of byRarest[rarest] ?? []) {
      if (!others.every(stand)) continue;
      for (const at of new Set(starts.flatMap((key) => places.get(key) ?? []))) {
        const match = matchPhrase(phrase, sentence, at);
        if (match !== null) found.push({ saying, match });
      }
    }
  return found.sort((a, b) => a.match.start - b.match.start);
};

/** Tokens of words that go together: "no response needed" holds no "no response". */
const fixedTokens = (sentence: Clauses): ReadonlySet<number> => {
  const fixed = new Set<number>();
  for (const [at, own] of sentence.met.entries())
    for (const { id, length } of own)
      if (id === 'small' && length > 1) for (let i = at; i < at + length; i++) fixed.add(i);
  return fixed;
};

export const readWords = (sayings: Sayings, sentence: Clauses): readonly Said[] => {
  const fixed = fixedTokens(sentence);
  const found = findAll(sayings, sentence).filter(({ match }) => ![...match.taken].some((i) => fixed.has(i)));
  // A longer saying hides a shorter one even where it does not stand itself: "not parked" is not "parked".
  return longest(found)
    .map(({ saying: { entry }, match }) => ({ entry, match }))
    .filter(
      ({ entry, match }) =>
        tellsAnything(entry) &&
        stands(sentence, match, { ...entry, mentioned: entry.answers === undefined && entry.suggests === undefined }),
    );
};
