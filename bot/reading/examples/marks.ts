/** What a clause is known by: its words' stems, the entries of words.yaml they are, what is denied, and which words follow one another. */
import { rememberWords } from '../words/remember.js';
import type { Clauses } from '../words/sentences.js';
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
const knownStemOf = rememberWords((word) => (/^\d/u.test(word) ? '#' : stemOf(word)));

/** What a word is marked by alone. */
const markWord = (
  { word, stem, entries, isDenied }: { word: string; stem: string; entries: readonly string[]; isDenied: boolean },
  mark: (name: string) => void,
): void => {
  if (!COMMON.has(word)) {
    mark(stem);
    if (stem === '#') mark(word);
    if (isDenied && !entries.includes('not')) mark(`!${stem}`);
  }
  for (const id of entries) {
    mark(`<${id}`);
    if (isDenied && id !== 'not') mark(`!<${id}`);
  }
};

const entriesAt = ({ covers }: Clauses, i: number): readonly string[] =>
  [...(covers[i] ?? [])].filter((id) => id !== 'small');

/** @param mark is called with each mark, more than once with one that stands more than once */
export const markClause = ({ sentence, from, to }: Clause, mark: (name: string) => void): void => {
  let denied = 0;
  let [before, further] = ['', ''];
  if (sentence.asks) mark('?');
  for (let i = from; i < to; i++) {
    const token = sentence.tokens[i];
    if (token?.kind !== 'word') {
      [before, further] = ['', ''];
      continue;
    }
    const word = token.known?.word ?? token.word;
    const stem = knownStemOf(word);
    const entries = entriesAt(sentence, i);
    const denies = entries.includes('not');
    if (denies) denied = DENIED;
    markWord({ word, stem, entries, isDenied: denied > 0 }, mark);
    if (denied > 0) denied -= 1;
    if (COMMON.has(word) && !denies) {
      if (word.length > 1) mark(`.${word}`);
      continue;
    }
    const own = entries[0] === undefined ? stem : `<${entries[0]}`;
    if (before !== '') mark(`${before} ${own}`);
    if (further !== '') mark(`${further} _ ${own}`);
    [before, further] = [own, before];
  }
};
