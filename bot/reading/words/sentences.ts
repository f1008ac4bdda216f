/** A text as sentences, each knowing where its words stand, which entries of words.yaml they are, and where its clauses end. */
import type { Known, Lexicon, Met } from './lexicon.js';
import type { Sentence } from './phrases.js';
import { tokensOf, type Token } from './tokens.js';

export interface Clauses extends Sentence {
  /** For each token, the ids of all entries that cover it. */
  readonly covers: readonly ReadonlySet<string>[];
  /** All of those ids. */
  readonly ids: ReadonlySet<string>;
  /** Tokens of small words that go together: "no response needed" holds no "no response". */
  readonly fixed: ReadonlySet<number>;
  /** It ended with a question mark. */
  readonly asks: boolean;
}

/** A longer sentence without a stop is cut. */
const MOST_WORDS = 90;

/** A token of the sentence, and for a word what it is. */
interface Part {
  readonly token: Token;
  readonly known: Known | null;
}

const NOTHING: ReadonlySet<string> = new Set();

const addPlaces = (places: Map<number, number[]>, met: readonly Met[], at: number): void => {
  for (const { key } of met) {
    if (key < 0) continue;
    const before = places.get(key);
    if (before === undefined) places.set(key, [at]);
    else if (before[before.length - 1] !== at) before.push(at);
  }
};

const sentence = (lexicon: Lexicon, parts: readonly Part[], asks: boolean): Clauses => {
  const tokens = parts.map(({ token }) => token);
  const covers = parts.map(({ known }) => known?.covers ?? NOTHING);
  const fixed = new Set<number>();
  const places = new Map<number, number[]>();
  const met: (readonly Met[])[] = [];
  for (const [at, { known }] of parts.entries()) {
    let own: readonly Met[] = known?.met ?? [];
    const longer = known?.opens === true ? lexicon.longerAt(tokens, at) : [];
    if (longer.length > 0) own = [...longer, ...own];
    for (const { id, length } of longer)
      for (let i = at; i < at + length; i++) {
        covers[i] = new Set([...(covers[i] ?? NOTHING), id]);
        if (id === 'small') fixed.add(i);
      }
    met.push(own);
    addPlaces(places, own, at);
  }
  const small = covers.map((ids) => ids.has('small'));
  const ids = new Set<string>();
  for (const own of covers) for (const id of own) ids.add(id);
  return { tokens, met, covers, places, small, fixed, ids, asks };
};

const TRIED = new Set(['tried', 'swapped', 'changed', 'replaced', 'with']);
const ANOTHER = /^(?:another|other|different|new|two|three|four|several|\d)$/u;

/** "I tried three cables, another laptop": the comma goes on with the list. */
const isInList = (before: readonly Part[], next: Token | undefined): boolean =>
  next?.kind === 'word' && ANOTHER.test(next.word) && before.slice(-8).some(({ token }) => TRIED.has(token.word));

export const sentencesOf = (lexicon: Lexicon, text: string): readonly Clauses[] => {
  const sentences: Clauses[] = [];
  let own: Part[] = [];
  const end = (asks: boolean): void => {
    if (own.length > 0) sentences.push(sentence(lexicon, own, asks));
    own = [];
  };
  const all = tokensOf(text);
  for (const [at, token] of all.entries()) {
    if (token.kind === 'pause' && token.word === ',' && isInList(own, all[at + 1])) continue;
    if (token.kind === 'word') {
      const known = lexicon.know(token.word);
      own.push({ token: known.word === token.word ? token : { ...token, word: known.word }, known });
    } else if (token.kind === 'pause') own.push({ token, known: null });
    else end(token.kind === 'ask');
    if (own.length >= MOST_WORDS) end(false);
  }
  end(false);
  return sentences;
};
