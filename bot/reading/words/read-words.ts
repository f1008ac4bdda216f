/** Which sayings of the vocabulary stand in a member's sentences. */
import { keyOf } from '../reading.js';
import type { SayingEntry } from '../schema.js';
import type { Lexicon } from './lexicon.js';
import { matchPhrase, numbered, requiredOf, type Phrase, type PhraseMatch } from './phrases.js';
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

/** Of sayings over the same words that tell the same thing, the one that takes more of them. */
const longest = (found: readonly Found[]): readonly Found[] =>
  found.filter(
    (own) =>
      !found.some(
        (other) =>
          other.match.taken.size > own.match.taken.size &&
          overlap(other.match, own.match) &&
          other.saying !== own.saying &&
          other.saying.tells.some((what) => own.saying.tells.includes(what)),
      ),
  );

/** Whether each of the sets of keys has one in the sentence, looked at once a set. */
const UNKNOWN = 0;
const STANDS = 1;
const LACKS = 2;

const findAll = ({ byRarest, needs, lexicon }: Sayings, sentence: Clauses): Found[] => {
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
  /** The candidate that was last tried at a token. */
  const triedAt = new Uint32Array(sentence.tokens.length);
  let serial = 0;
  for (const rarest of places.keys())
    for (const { saying, phrase, starts, others } of byRarest[rarest] ?? []) {
      if (!others.every(isMet)) continue;
      serial++;
      for (const key of starts) {
        if (present[key] !== 1) continue;
        for (const at of places.get(key) ?? []) {
          if (triedAt[at] === serial) continue;
          triedAt[at] = serial;
          const match = matchPhrase(phrase, sentence, at);
          if (match !== null) found.push({ saying, match });
        }
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
    .filter(({ saying: { entry, leave }, match }) => entry.hides === undefined && stands(sentence, match, leave))
    .map(({ saying: { entry }, match }) => ({ entry, match }));
};
