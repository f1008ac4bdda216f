/** The little language of sayings: parsed once, matched against the words of a sentence with bounded reach. */
import { IS } from './asked.js';
import type { Met } from './known.js';
import { formsOf } from './lexicon.js';
import type { Token } from './tokens.js';
import { tableOf } from '../../ground/table-of.js';

/** One step of a phrase; keys are words and `<entry>` signs, or their numbers in the lexicon. */
type Element<Key> =
  | { readonly kind: 'gap'; readonly most: number }
  | { readonly kind: 'word'; readonly keys: readonly Key[]; readonly optional: boolean };

export type Phrase<Key = number> = readonly Element<Key>[];

/** A sentence with, for each token, what starts there: the word itself and entries of words.yaml, longest first. */
export interface Sentence {
  readonly tokens: readonly Token[];
  readonly met: readonly (readonly Met[])[];
  /** What rules ask of each token (see `IS`), as bits. A small word may be stepped over for nothing. */
  readonly bits: readonly number[];
}

export interface PhraseMatch {
  readonly start: number;
  /** The token after the last. */
  readonly end: number;
  /** Tokens that a step took, as against those stepped over; few, in order. */
  readonly taken: readonly number[];
}

const ENTRY = /^<[a-z0-9-]+>$/u;
const GAPS = tableOf({ '..': 3, '...': 8 });

/** @throws Error with what is wrong in the phrase. */
export const parsePhrase = (phrase: string): Phrase<string> => {
  const elements = phrase
    .trim()
    .split(/\s+/u)
    .map((part): Element<string> => {
      const most = GAPS.get(part);
      if (most !== undefined) return { kind: 'gap', most };
      const optional = part.endsWith('?');
      const keys = new Set<string>();
      for (const one of part.replace(/\?$/u, '').split('|')) {
        if (ENTRY.test(one)) keys.add(one);
        else if (/^[\p{L}\d°%.]+~?$/u.test(one)) for (const form of formsOf(one)) keys.add(form);
        else throw new Error(`"${part}" is neither a word, <an-entry>, ".." nor "..."`);
      }
      return { kind: 'word', keys: [...keys], optional };
    });
  const [first] = elements;
  if (first === undefined || first.kind === 'gap' || first.optional)
    throw new Error('a phrase starts with a word that must be there');
  if (elements.at(-1)?.kind === 'gap') throw new Error('a phrase does not end with a gap');
  if (elements.filter(({ kind }) => kind === 'gap').length > 3) throw new Error('a phrase has at most three gaps');
  return elements;
};

export const numbered = (phrase: Phrase<string>, keyOf: (key: string) => number): Phrase =>
  phrase.map((element) =>
    element.kind === 'gap' ? element : { ...element, keys: [...new Set(element.keys.map(keyOf))] },
  );

/** Of each step that must be there, what it may be; the first is the phrase's first step. */
export const requiredOf = <Key>(phrase: Phrase<Key>): readonly (readonly Key[])[] =>
  phrase.flatMap((element) => (element.kind === 'word' && !element.optional ? [element.keys] : []));

export const keysOf = (phrase: Phrase<string>): readonly string[] =>
  phrase.flatMap((element) => (element.kind === 'word' ? element.keys : []));
export const idsOf = (phrase: Phrase<string>): readonly string[] =>
  keysOf(phrase).flatMap((key) => (ENTRY.test(key) ? [key.slice(1, -1)] : []));

/**
 * Phrases as numbers laid end to end, so that they are near each other in memory. A gap is minus its reach; a word is twice the count of its
 * keys, one more where it may be left out, and then the keys; a phrase ends with 0.
 */
const END = 0;

export const encodePhrase = (phrase: Phrase): readonly number[] => [
  ...phrase.flatMap((element) =>
    element.kind === 'gap' ? [-element.most] : [2 * element.keys.length + (element.optional ? 1 : 0), ...element.keys],
  ),
  END,
];

/** Where a match is being tried. */
interface Attempt {
  code: Int32Array;
  /** Where the phrase begins in the code. */
  phrase: number;
  sentence: Sentence;
  /** The first `count` of these. */
  readonly taken: number[];
  count: number;
  tries: number;
}
/** Steps tried for one phrase at one place, at most. */
const MOST_TRIES = 200;

/** The token after the last, or -1. */
const stepOverGap = (attempt: Attempt, element: number, at: number, most: number): number => {
  const { tokens, bits } = attempt.sentence;
  for (let reach = 0, to = at; reach <= most && to <= tokens.length; to++) {
    const end = step(attempt, element + 1, to);
    if (end >= 0) return end;
    if (tokens[to]?.kind !== 'word') return -1;
    if (((bits[to] ?? 0) & IS.small) === 0) reach++;
  }
  return -1;
};

/** Few keys: quicker looked through than looked up. */
const holds = (code: Int32Array, from: number, to: number, key: number): boolean => {
  for (let i = from; i < to; i++) if (code[i] === key) return true;
  return false;
};

const step = (attempt: Attempt, element: number, at: number): number => {
  const { code, sentence, taken } = attempt;
  const head = code[element] ?? END;
  if (head === END) return at;
  if (attempt.tries-- <= 0) return -1;
  if (head < 0) return stepOverGap(attempt, element, at, -head);
  const keys = element + 1;
  const next = keys + (head >> 1);
  for (const { key, length } of sentence.met[at] ?? NO_MET) {
    if (!holds(code, keys, next, key)) continue;
    const { count } = attempt;
    for (let i = 0; i < length; i++) taken[count + i] = at + i;
    attempt.count = count + length;
    const end = step(attempt, next, at + length);
    if (end >= 0) return end;
    attempt.count = count;
  }
  if ((head & 1) !== 0) {
    const end = step(attempt, next, at);
    if (end >= 0) return end;
  }
  return element > attempt.phrase && ((sentence.bits[at] ?? 0) & IS.small) !== 0 ? step(attempt, element, at + 1) : -1;
};

const NO_MET: readonly Met[] = [];
const NO_SENTENCE: Sentence = { tokens: [], met: [], bits: [] };
/** One at a time is tried, thousands in a text. */
const attempt: Attempt = {
  code: new Int32Array(0),
  phrase: 0,
  sentence: NO_SENTENCE,
  taken: [],
  count: 0,
  tries: 0,
};

/** @param phrase where it begins in the code */
export const matchPhrase = (
  code: Int32Array,
  phrase: number,
  sentence: Sentence,
  start: number,
): PhraseMatch | null => {
  attempt.code = code;
  attempt.phrase = phrase;
  attempt.sentence = sentence;
  attempt.count = 0;
  attempt.tries = MOST_TRIES;
  const end = step(attempt, phrase, start);
  attempt.sentence = NO_SENTENCE;
  return end < 0 ? null : { start, end, taken: attempt.taken.slice(0, attempt.count) };
};
