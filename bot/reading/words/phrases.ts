/** The little language of sayings: parsed once, matched against the words of a sentence with bounded reach. */
import { formsOf, type Met } from './lexicon.js';
import type { Token } from './tokens.js';

/** One step of a phrase. */
type Element =
  | { readonly kind: 'gap'; readonly most: number }
  | {
      readonly kind: 'word';
      readonly words: ReadonlySet<string>;
      readonly ids: ReadonlySet<string>;
      readonly optional: boolean;
    };

export interface Phrase {
  readonly elements: readonly Element[];
  /** Words and `<entry>` signs that its first step may be. */
  readonly starts: readonly string[];
}

/** A sentence with, for each token, the entries of words.yaml that start there. */
export interface Sentence {
  readonly tokens: readonly Token[];
  readonly met: readonly (readonly Met[])[];
}

export interface PhraseMatch {
  readonly start: number;
  /** The token after the last. */
  readonly end: number;
  /** Tokens that a step took, as against those stepped over. */
  readonly taken: ReadonlySet<number>;
}

const GAPS: Readonly<Record<string, number>> = { '..': 3, '...': 8 };
/** Words with a form of a thing rather than a meaning. */
const SHAPES: readonly (readonly [string, RegExp])[] = [
  ['com-port', /^com\d{1,3}$/u],
  ['number', /^\d+(?:[.,]\d+)?$/u],
  ['device-file', /^\/dev\//u],
  ['address', /^\d{1,3}(?:\.\d{1,3}){3}$/u],
];
export const SHAPE_IDS: readonly string[] = SHAPES.map(([id]) => id);
export const shapesOf = (word: string): readonly Met[] =>
  SHAPES.filter(([, form]) => form.test(word)).map(([id]) => ({ id, length: 1 }));

/** @throws Error with what is wrong in the phrase. */
export const parsePhrase = (phrase: string): Phrase => {
  const elements = phrase
    .trim()
    .split(/\s+/u)
    .map((part): Element => {
      const most = GAPS[part];
      if (most !== undefined) return { kind: 'gap', most };
      const optional = part.endsWith('?');
      const words = new Set<string>();
      const ids = new Set<string>();
      for (const one of part.replace(/\?$/u, '').split('|')) {
        const id = /^<([a-z0-9-]+)>$/u.exec(one)?.[1];
        if (id !== undefined) ids.add(id);
        else if (/^[\p{L}\d°%.]+~?$/u.test(one)) for (const form of formsOf(one)) words.add(form);
        else throw new Error(`"${part}" is neither a word, <an-entry>, ".." nor "..."`);
      }
      return { kind: 'word', words, ids, optional };
    });
  const [first] = elements;
  if (first === undefined || first.kind === 'gap' || first.optional)
    throw new Error('a phrase starts with a word that must be there');
  if (elements.at(-1)?.kind === 'gap') throw new Error('a phrase does not end with a gap');
  if (elements.filter(({ kind }) => kind === 'gap').length > 3) throw new Error('a phrase has at most three gaps');
  return { elements, starts: [...first.words, ...[...first.ids].map((id) => `<${id}>`)] };
};

export const idsOf = ({ elements }: Phrase): readonly string[] =>
  elements.flatMap((element) => (element.kind === 'word' ? [...element.ids] : []));
export const wordsOfPhrase = ({ elements }: Phrase): readonly string[] =>
  elements.flatMap((element) => (element.kind === 'word' ? [...element.words] : []));

/** @param isSmall whether the token may be stepped over for nothing */
export const matchPhrase = (
  { elements }: Phrase,
  { tokens, met }: Sentence,
  start: number,
  isSmall: (at: number) => boolean,
): PhraseMatch | null => {
  const taken: number[] = [];
  let tries = 400;
  const step = (element: number, at: number): number => {
    const own = elements[element];
    if (own === undefined) return at;
    if (tries-- <= 0) return -1;
    if (own.kind === 'gap') {
      for (let reach = 0, to = at; reach <= own.most && to <= tokens.length; to++) {
        const end = step(element + 1, to);
        if (end >= 0) return end;
        if (tokens[to]?.kind !== 'word') return -1;
        if (!isSmall(to)) reach++;
      }
      return -1;
    }
    const token = tokens[at];
    if (token?.kind === 'word') {
      const lengths = [
        ...(met[at] ?? []).filter(({ id }) => own.ids.has(id)).map(({ length }) => length),
        ...(own.words.has(token.word) ? [1] : []),
      ];
      for (const length of lengths) {
        const mark = taken.length;
        for (let i = 0; i < length; i++) taken.push(at + i);
        const end = step(element + 1, at + length);
        if (end >= 0) return end;
        taken.length = mark;
      }
    }
    if (own.optional) {
      const end = step(element + 1, at);
      if (end >= 0) return end;
    }
    return element > 0 && token?.kind === 'word' && isSmall(at) ? step(element, at + 1) : -1;
  };
  const end = step(0, start);
  return end < 0 ? null : { start, end, taken: new Set(taken) };
};
