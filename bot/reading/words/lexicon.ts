/** The words that sayings are made of: which entry of words.yaml each belongs to, and how a misspelt one is mended. */
import { forgivenSlips } from '../../ground/edit-distance.js';
import { makeMender, type SlipRule } from '../../ground/mend-slips.js';
import type { WordEntry } from '../schema.js';
import { bitsOfWord } from './asked.js';
import { contrastWord } from './contrast-words.js';
import type { Branch, Known, Met } from './known.js';
import { rememberInTexts, rememberWords } from './remember.js';
import { shapesOf } from './shapes.js';
import { lowerWordsOf, type Token } from './tokens.js';

export interface Lexicon {
  /** How many keys phrases have. */
  readonly keyCount: number;
  /** The number of a word or `<id>`, -1 where no phrase has it. */
  readonly keyOf: (key: string) => number;
  /** What a word as typed is, short forms as the words they stand for. */
  readonly know: (typed: string) => readonly Known[];
  /** The same of a word that stands in a text. */
  readonly knowAt: (text: string, start: number, end: number) => readonly Known[];
  /** The entries of several words that begin with this token, longest first. */
  readonly longerAt: (tokens: readonly Token[], at: number) => readonly Met[];
}

const VOWEL_ENDED = /[^aeiou][aeiou][bdgklmnprt]$/u;

/** "drop~" → drop, drops, dropped, dropping. */
export const formsOf = (written: string): readonly string[] => {
  if (!written.endsWith('~')) return [written];
  const base = written.slice(0, -1);
  if (base.endsWith('e')) return [base, `${base}s`, `${base}d`, `${base.slice(0, -1)}ing`];
  if (/[^aeiou]y$/u.test(base)) return [base, `${base.slice(0, -1)}ies`, `${base.slice(0, -1)}ied`, `${base}ing`];
  const plural = /(?:s|x|ch|sh|z)$/u.test(base) ? `${base}es` : `${base}s`;
  const doubled = VOWEL_ENDED.test(base) ? [`${base}${base.slice(-1)}ed`, `${base}${base.slice(-1)}ing`] : [];
  return [base, plural, `${base}ed`, `${base}ing`, ...doubled];
};

const NO_ENTRIES: readonly Met[] = [];

const branch = (): Branch => ({ ids: [], met: [], next: new Map() });

const SLIPS: SlipRule = { mostIn: forgivenSlips, leastForWrongLetter: 8 };
const isPlain = (word: string): boolean => /^[a-z]+$/u.test(word);

/** @param keys what phrases hold: words, and entries as `<id>` */
export const makeLexicon = (entries: readonly WordEntry[], keys: readonly string[]): Lexicon => {
  const root = branch();
  const numbers = new Map([...new Set(keys)].map((key, at) => [key, at]));
  const keyOf = (key: string): number => numbers.get(key) ?? -1;
  const known = new Set(keys.filter((key) => !key.startsWith('<')));
  const add = (id: string, words: readonly string[]): void => {
    let at = root;
    for (const word of words) {
      known.add(word);
      const next = at.next.get(word) ?? branch();
      at.next.set(word, next);
      at = next;
    }
    if (at.ids.includes(id)) return;
    at.ids.push(id);
    if (words.length > 1) at.met = [{ id, key: keyOf(`<${id}>`), length: words.length }, ...at.met];
  };
  for (const { id, words, typed } of entries)
    for (const written of [...words, ...(typed ?? [])]) {
      const parts = written.split(' ');
      const last = parts.at(-1) ?? '';
      const head = parts.slice(0, -1);
      // "stop~ working": the sign may stand at any one of the words.
      const spread = head.findIndex((part) => part.endsWith('~'));
      if (spread < 0) for (const form of formsOf(last)) add(id, [...head, form]);
      else
        for (const form of formsOf(head[spread] ?? ''))
          add(id, [...head.slice(0, spread), form, ...head.slice(spread + 1), last]);
    }

  const correct = new Set(entries.flatMap(({ correct = '' }) => correct.trim().split(/\s+/u)));
  const nearest = makeMender(
    [...known].filter((word) => word.length >= 5 && isPlain(word)),
    SLIPS,
  );
  const mend = (word: string): string =>
    word.length < 4 || word.length > 18 || known.has(word) || correct.has(word) || !isPlain(word)
      ? word
      : (nearest(word) ?? word);

  const knowWord = rememberWords((lower): Known => {
    const word = mend(lower);
    const here = root.next.get(word);
    const ids = [...[...(here?.ids ?? [])].reverse(), ...shapesOf(word)];
    const met = [...ids, ''].map((id): Met => ({ id, key: keyOf(id === '' ? word : `<${id}>`), length: 1 }));
    return {
      word,
      met,
      keys: met.map(({ key }) => key).filter((key) => key >= 0),
      covers: new Set(ids),
      bits: bitsOfWord(word, ids),
      kind: contrastWord(word),
      opens: here !== undefined && here.next.size > 0 ? here : null,
    };
  });
  const know = rememberWords((typed) => lowerWordsOf(typed.toLowerCase()).map(knowWord));

  const longerAt = (tokens: readonly Token[], at: number): readonly Met[] => {
    let met = NO_ENTRIES;
    let here = tokens[at]?.known?.opens;
    for (let length = 2; length <= 6 && here; length++) {
      const known = tokens[at + length - 1]?.known;
      here = known ? here.next.get(known.word) : undefined;
      if (here !== undefined && here.met.length > 0) met = met.length === 0 ? here.met : [...here.met, ...met];
    }
    return met;
  };
  return { keyCount: numbers.size, keyOf, know, knowAt: rememberInTexts(know), longerAt };
};
