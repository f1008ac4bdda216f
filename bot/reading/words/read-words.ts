/** Which sayings of the vocabulary stand in a member's sentences. */
import { keyOf } from '../reading.js';
import type { SayingEntry } from '../schema.js';
import type { Lexicon } from './lexicon.js';
import { matchPhrase, type Phrase, type PhraseMatch } from './phrases.js';
import type { Clauses } from './sentences.js';
import { stands } from './stands.js';

export interface CompiledSaying {
  readonly entry: SayingEntry;
  readonly phrases: readonly Phrase[];
}

export interface Sayings {
  readonly lexicon: Lexicon;
  /** First word or `<entry>` → the phrases that start so. */
  readonly byStart: ReadonlyMap<string, readonly { readonly saying: CompiledSaying; readonly phrase: Phrase }[]>;
}

export interface Said {
  readonly entry: SayingEntry;
  readonly sentence: Clauses;
  readonly match: PhraseMatch;
}

export const indexSayings = (lexicon: Lexicon, sayings: readonly CompiledSaying[]): Sayings => {
  const byStart = new Map<string, { saying: CompiledSaying; phrase: Phrase }[]>();
  for (const saying of sayings)
    for (const phrase of saying.phrases)
      for (const start of phrase.starts) {
        const list = byStart.get(start) ?? [];
        list.push({ saying, phrase });
        byStart.set(start, list);
      }
  return { lexicon, byStart };
};

const tells = ({ answers, system, client, path, hides }: SayingEntry): readonly string[] => [
  ...(hides ?? []),
  ...Object.entries(answers ?? {}).map(([check, answer]) => keyOf(check, answer)),
  ...(system === undefined ? [] : ['system']),
  ...(client === undefined ? [] : ['client']),
  ...(path === undefined ? [] : ['path']),
];

const overlap = (a: PhraseMatch, b: PhraseMatch): boolean => a.start < b.end && b.start < a.end;

/** Of sayings over the same words that tell the same thing, the one that takes more of them. */
const longest = (said: readonly Said[]): readonly Said[] =>
  said.filter(
    (own) =>
      !said.some(
        (other) =>
          other !== own &&
          other.entry !== own.entry &&
          overlap(other.match, own.match) &&
          other.match.taken.size > own.match.taken.size &&
          tells(other.entry).some((what) => tells(own.entry).includes(what)),
      ),
  );

const readSentence = ({ byStart }: Sayings, sentence: Clauses): readonly Said[] => {
  const found: Said[] = [];
  // "No response needed" holds no "no response".
  const fixed = new Set<number>();
  for (const [at, own] of sentence.met.entries())
    for (const { id, length } of own)
      if (id === 'small' && length > 1) for (let i = at; i < at + length; i++) fixed.add(i);
  const isSmall = (at: number): boolean => sentence.covers[at]?.has('small') === true;
  for (const [at, { word, kind }] of sentence.tokens.entries()) {
    if (kind !== 'word') continue;
    const keys = [word, ...(sentence.met[at] ?? []).map(({ id }) => `<${id}>`)];
    for (const key of new Set(keys))
      for (const { saying, phrase } of byStart.get(key) ?? []) {
        const match = matchPhrase(phrase, sentence, at, isSmall);
        if (match !== null && ![...match.taken].some((i) => fixed.has(i)))
          found.push({ entry: saying.entry, sentence, match });
      }
  }
  // A longer saying hides a shorter one even where it does not stand itself: "not parked" is not "parked".
  return longest(found).filter(
    ({ entry, match }) =>
      entry.hides === undefined &&
      stands(sentence, match, { ...entry, mentioned: entry.answers === undefined && entry.suggests === undefined }),
  );
};

export const readWords = (sayings: Sayings, sentences: readonly Clauses[]): readonly Said[] =>
  sentences.flatMap((sentence) => readSentence(sayings, sentence));
