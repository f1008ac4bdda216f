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

/** The words of a sentence as they come, and beside each what it is; null for a pause. */
interface Parts {
  readonly tokens: Token[];
  readonly known: (Known | null)[];
}

const NOTHING: ReadonlySet<string> = new Set();
const NO_ENTRIES: readonly Met[] = [];

const addPlaces = (places: Map<number, number[]>, met: readonly Met[], at: number): void => {
  for (const { key } of met) {
    if (key < 0) continue;
    const before = places.get(key);
    if (before === undefined) places.set(key, [at]);
    else if (before[before.length - 1] !== at) before.push(at);
  }
};

const sentence = (lexicon: Lexicon, { tokens, known }: Parts, asks: boolean): Clauses => {
  const covers = known.map((word) => word?.covers ?? NOTHING);
  const fixed = new Set<number>();
  const places = new Map<number, number[]>();
  const met = known.map((word, at): readonly Met[] => {
    if (word === null) return NO_ENTRIES;
    const longer = word.opens ? lexicon.longerAt(tokens, at) : NO_ENTRIES;
    for (const { id, length } of longer)
      for (let i = at; i < at + length; i++) {
        covers[i] = new Set([...(covers[i] ?? NOTHING), id]);
        if (id === 'small') fixed.add(i);
      }
    const own = longer.length === 0 ? word.met : [...longer, ...word.met];
    addPlaces(places, own, at);
    return own;
  });
  const small = covers.map((ids) => ids.has('small'));
  const ids = new Set<string>();
  for (const own of covers) for (const id of own) ids.add(id);
  return { tokens, met, covers, places, small, fixed, ids, asks };
};

const TRIED = new Set(['tried', 'swapped', 'changed', 'replaced', 'with']);
const ANOTHER = /^(?:another|other|different|new|two|three|four|several|\d)$/u;

/** "I tried three cables, another laptop": the comma goes on with the list. */
const isInList = ({ tokens }: Parts, next: Token | undefined): boolean =>
  next?.kind === 'word' && ANOTHER.test(next.word) && tokens.slice(-8).some(({ word }) => TRIED.has(word));

const OUTCOME = /^(?:works|worked|same|nothing|helps|helped|cures|cured|fixes|fixed|still)$/u;

/** "Swapped in another lead: works", "reinstalled the driver - same": what was tried, and after a mark what came of it. */
const isOutcome = ({ tokens }: Parts, next: Token | undefined, after: Token | undefined): boolean =>
  next?.kind === 'word' &&
  OUTCOME.test(next.word) &&
  after?.kind !== 'word' &&
  tokens.slice(0, 8).some(({ word }) => TRIED.has(word));

export const sentencesOf = (lexicon: Lexicon, text: string): readonly Clauses[] => {
  const sentences: Clauses[] = [];
  let own: Parts = { tokens: [], known: [] };
  const add = (token: Token, known: Known | null): void => {
    own.tokens.push(known === null || known.word === token.word ? token : { ...token, word: known.word });
    own.known.push(known);
  };
  const end = (asks: boolean): void => {
    if (own.tokens.length === 0) return;
    sentences.push(sentence(lexicon, own, asks));
    own = { tokens: [], known: [] };
  };
  const all = tokensOf(text);
  for (const [at, token] of all.entries()) {
    if (token.kind === 'pause' && token.word === ',' && isInList(own, all[at + 1])) continue;
    if (token.kind === 'pause' && isOutcome(own, all[at + 1], all[at + 2])) continue;
    if (token.kind === 'word') add(token, lexicon.know(token.word));
    else if (token.kind === 'pause') add(token, null);
    else end(token.kind === 'ask');
    if (own.tokens.length >= MOST_WORDS) end(false);
  }
  end(false);
  return sentences;
};
