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

const sentence = (lexicon: Lexicon, tokens: readonly Token[], asks: boolean): Clauses => {
  const covers = tokens.map(() => new Set<string>());
  const met = tokens.map(({ word, kind }, at): readonly Met[] =>
    kind === 'word' ? [...lexicon.metAt(tokens, at), ...shapesOf(word)] : [],
  );
  for (const [at, own] of met.entries())
    for (const { id, length } of own) for (let i = at; i < at + length; i++) covers[i]?.add(id);
  return { tokens, met, covers, asks };
};

export const sentencesOf = (lexicon: Lexicon, text: string): readonly Clauses[] => {
  const sentences: Clauses[] = [];
  let own: Token[] = [];
  for (const token of tokensOf(text)) {
    if (token.kind === 'word') own.push({ ...token, word: lexicon.mend(token.word) });
    else if (token.kind === 'pause') own.push(token);
    else {
      if (own.length > 0) sentences.push(sentence(lexicon, own, token.kind === 'ask'));
      own = [];
    }
  }
  if (own.length > 0) sentences.push(sentence(lexicon, own, false));
  return sentences;
};
