/** What a clause is known by: its words' stems, the entries of words.yaml they are, what is denied, and which words follow one another. */
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

const stems = new Map<string, string>();
const MOST_STEMS = 5000;

const knownStemOf = (word: string): string => {
  const known = stems.get(word);
  if (known !== undefined) return known;
  if (stems.size >= MOST_STEMS) stems.clear();
  const stem = /^\d/u.test(word) ? '#' : stemOf(word);
  stems.set(word, stem);
  return stem;
};

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
    const entries = [...(sentence.covers[i] ?? [])].filter((id) => id !== 'small');
    const denies = entries.includes('not');
    if (denies) denied = DENIED;
    const isCommon = COMMON.has(word);
    if (!isCommon) {
      mark(stem);
      if (stem === '#') mark(word);
      if (denied > 0 && !denies) mark(`!${stem}`);
    }
    for (const id of entries) {
      mark(`<${id}`);
      if (denied > 0 && id !== 'not') mark(`!<${id}`);
    }
    if (!isCommon || denies) {
      const own = entries[0] === undefined ? stem : `<${entries[0]}`;
      if (before !== '') mark(`${before} ${own}`);
      if (further !== '') mark(`${further} _ ${own}`);
      [before, further] = [own, before];
    } else if (word.length > 1) mark(`.${word}`);
    if (denied > 0) denied -= 1;
  }
};
