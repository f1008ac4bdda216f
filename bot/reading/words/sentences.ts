/** A text as sentences, each knowing where its words stand, which entries of words.yaml they are, and where its clauses end. */
import type { Lexicon, Met } from './lexicon.js';
import { shapesOf, type Sentence } from './phrases.js';
import { tokensOf, type Token } from './tokens.js';

export interface Clauses extends Sentence {
  /** For each token, the ids of all entries that cover it. */
  readonly covers: readonly ReadonlySet<string>[];
  /** It ended with a question mark. */
  readonly asks: boolean;
}

/** A longer sentence without a stop is cut. */
const MOST_WORDS = 90;

const sentence = (lexicon: Lexicon, tokens: readonly Token[], asks: boolean): Clauses => {
  const covers = tokens.map(() => new Set<string>());
  const places = new Map<number, number[]>();
  const starts = (key: number, at: number): void => {
    const before = places.get(key);
    if (before === undefined) places.set(key, [at]);
    else if (before[before.length - 1] !== at) before.push(at);
  };
  const met = tokens.map((token, at): readonly Met[] => {
    if (token.kind !== 'word') return [];
    const own = [...lexicon.metAt(tokens, at)];
    for (const id of shapesOf(token.word)) own.push({ id, key: lexicon.keyOf(`<${id}>`), length: 1 });
    for (const { id, length } of own) for (let i = at; i < at + length; i++) covers[i]?.add(id);
    own.push({ id: '', key: lexicon.keyOf(token.word), length: 1 });
    for (const { key } of own) if (key >= 0) starts(key, at);
    return own;
  });
  const small = tokens.map(({ kind }, at) => kind === 'word' && covers[at]?.has('small') === true);
  return { tokens, met, covers, places, small, asks };
};

const TRIED = new Set(['tried', 'swapped', 'changed', 'replaced', 'with']);
const ANOTHER = /^(?:another|other|different|new|two|three|four|several|\d)$/u;

/** "I tried three cables, another laptop": the comma goes on with the list. */
const isInList = (before: readonly Token[], next: Token | undefined): boolean =>
  next?.kind === 'word' && ANOTHER.test(next.word) && before.slice(-8).some(({ word }) => TRIED.has(word));

export const sentencesOf = (lexicon: Lexicon, text: string): readonly Clauses[] => {
  const sentences: Clauses[] = [];
  let own: Token[] = [];
  const end = (asks: boolean): void => {
    if (own.length > 0) sentences.push(sentence(lexicon, own, asks));
    own = [];
  };
  const all = tokensOf(text);
  for (const [at, token] of all.entries()) {
    if (token.kind === 'pause' && token.word === ',' && isInList(own, all[at + 1])) continue;
    if (token.kind === 'word') own.push({ ...token, word: lexicon.mend(token.word) });
    else if (token.kind === 'pause') own.push(token);
    else end(token.kind === 'ask');
    if (own.length >= MOST_WORDS) end(false);
  }
  end(false);
  return sentences;
};
