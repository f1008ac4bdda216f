/** What a clause is known by: its words' stems, the entries of words.yaml they are, what is denied, and which words follow one another. */
import { onceOf } from '../../ground/once.js';
import { rememberWords } from '../words/remember.js';
import type { Clause } from './clauses.js';

/** Words that tell little alone; their order with others still tells something. */
const COMMON = new Set(
  (
    'the a an my of to in on at is it and i so just be this that im am was are with for as but then or there its ' +
    'have has had do did does'
  ).split(' '),
);
/** So many words from "not" on are denied. */
const DENIED = 5;

const DOUBLED = /([^lsoe])\1$/u;

const withoutEnding = (word: string): string => {
  if (word.length > 5) return word.replace(/(?:ings?|edly|ed|es|ly|s)$/u, '');
  return word.length > 3 ? word.replace(/s$/u, '') : word;
};

/** Roughly: "slewing", "slews" and "slewed" have one. */
const stemOf = (word: string): string => {
  const bare = withoutEnding(word);
  const single = bare.length > 3 ? bare.replace(DOUBLED, '$1') : bare;
  return single.length > 4 ? single.replace(/e$/u, '') : single;
};

/** Numbers are all one. */
const NUMBER = '#';

/** How marks are told apart: by their names where they are fitted, by numbers where they are looked up. */
export interface Naming<Part, Mark> {
  readonly alone: (name: string) => Mark;
  /** A stem or `<entry>`, which the marks of words that follow one another are made of. */
  readonly part: (name: string) => Part;
  readonly next: (before: Part, own: Part) => Mark;
  /** With a word between. */
  readonly apart: (before: Part, own: Part) => Mark;
}

export const BY_NAME: Naming<string, string> = {
  alone: (name) => name,
  part: (name) => name,
  next: (before, own) => `${before} ${own}`,
  apart: (before, own) => `${before} _ ${own}`,
};

const NO_ENTRIES: ReadonlySet<string> = new Set();

interface OfWord<Part, Mark> {
  /** Its marks alone, and those where it is denied. */
  readonly plain: readonly Mark[];
  readonly denied: readonly Mark[];
  readonly isCommon: boolean;
  /** Of one that tells little alone. */
  readonly common: readonly Mark[];
  readonly part: Part;
}

interface OfEntries<Part, Mark> {
  readonly plain: readonly Mark[];
  readonly denied: readonly Mark[];
  readonly denies: boolean;
  readonly first: Part | null;
}

/** What a word, and the entries that cover it, are marked by is worked out once; gives what calls `mark` with each mark, some more than once. */
export const makeMarker = <Part, Mark>({ alone, part, next, apart }: Naming<Part, Mark>) => {
  const ofWord = rememberWords((word): OfWord<Part, Mark> => {
    const stem = /^\d/u.test(word) ? NUMBER : stemOf(word);
    const isCommon = COMMON.has(word);
    const plain = isCommon ? [] : [stem, ...(stem === NUMBER ? [word] : [])].map(alone);
    return {
      plain,
      denied: isCommon ? [] : [...plain, alone(`!${stem}`)],
      isCommon,
      common: word.length > 1 ? [alone(`.${word}`)] : [],
      part: part(stem),
    };
  });
  const ofEntries = onceOf((covers: ReadonlySet<string>): OfEntries<Part, Mark> => {
    const ids = [...covers].filter((id) => id !== 'small');
    return {
      plain: ids.map((id) => alone(`<${id}`)),
      denied: ids.flatMap((id) => (id === 'not' ? [alone('<not')] : [alone(`<${id}`), alone(`!<${id}`)])),
      denies: ids.includes('not'),
      first: ids[0] === undefined ? null : part(`<${ids[0]}`),
    };
  });
  const asked = alone('?');
  /** The part of a word that the next are marked with; null: it tells little alone, and the one before it goes on. */
  const markWord = (
    word: OfWord<Part, Mark>,
    entries: OfEntries<Part, Mark>,
    isDenied: boolean,
    mark: (mark: Mark) => void,
  ): Part | null => {
    // What denies is itself not denied.
    for (const one of isDenied && !entries.denies ? word.denied : word.plain) mark(one);
    for (const one of isDenied ? entries.denied : entries.plain) mark(one);
    if (!word.isCommon || entries.denies) return entries.first ?? word.part;
    for (const one of word.common) mark(one);
    return null;
  };
  return ({ sentence, from, to }: Clause, mark: (mark: Mark) => void): void => {
    let denied = 0;
    let before: Part | null = null;
    let further: Part | null = null;
    if (sentence.asks) mark(asked);
    for (let i = from; i < to; i++) {
      const token = sentence.tokens[i];
      if (token?.kind !== 'word') {
        before = null;
        further = null;
        continue;
      }
      const entries = ofEntries(sentence.covers[i] ?? NO_ENTRIES);
      denied = entries.denies ? DENIED : denied - 1;
      const own = markWord(ofWord(token.known?.word ?? token.word), entries, denied > 0, mark);
      if (own === null) continue;
      if (before !== null) mark(next(before, own));
      if (further !== null) mark(apart(further, own));
      further = before;
      before = own;
    }
  };
};
