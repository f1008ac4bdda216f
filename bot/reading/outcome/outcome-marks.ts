/** What a line on a remedy is known by: its words, which follow one another, and the kinds of words in their order. */
import { SHAPE } from '../examples/likely-of.js';
import type { SaidText, SaidWord } from '../answers/said-words.js';
import { wordKindsOf } from './word-kinds.js';

/** Kinds of words that stand so near each other belong together. */
const NEAR = 3;
/** Of a line so short its length says something. */
const LENGTHS = [2, 4, 8, 16] as const;

/** Numbers are all one. */
const nameOf = ({ word }: SaidWord): string => (/^\d/u.test(word) ? '#' : word);

const markOrder = (names: readonly string[], mark: (name: string) => void): void => {
  const bounded = ['^', ...names, '$'];
  for (const [i, name] of bounded.entries()) {
    const [next, third] = [bounded[i + 1], bounded[i + 2]];
    if (next !== undefined) mark(`${name} ${next}`);
    if (next !== undefined && third !== undefined) mark(`${name} ${next} ${third}`);
  }
};

const markKinds = (names: readonly string[], isLast: boolean, mark: (name: string) => void): void => {
  const kinds = names.flatMap((name, at) => wordKindsOf(name).map((kind) => ({ kind, at })));
  for (const { kind, at } of kinds) {
    mark(`@${kind}`);
    if (isLast) mark(`@${kind}.`);
    for (const after of kinds) {
      if (after.at <= at) continue;
      mark(`@${kind}~${after.kind}`);
      if (after.at - at <= NEAR) mark(`@${kind}>${after.kind}`);
    }
  }
};

const clausesOf = (words: readonly SaidWord[]): readonly (readonly string[])[] => {
  const clauses = new Map<number, string[]>();
  for (const word of words) {
    const own = clauses.get(word.clause) ?? [];
    own.push(nameOf(word));
    clauses.set(word.clause, own);
  }
  return [...clauses.values()];
};

/** Each mark once. */
export const outcomeMarks = ({ words, asks }: SaidText): ReadonlySet<string> => {
  const marks = new Set<string>();
  const mark = (name: string): void => void marks.add(name);
  const clauses = clausesOf(words);
  for (const [i, names] of clauses.entries()) {
    for (const name of names) mark(name);
    markOrder(names, mark);
    markKinds(names, i === clauses.length - 1, mark);
  }
  mark(`${SHAPE}clauses ${Math.min(clauses.length, 4)}`);
  mark(`${SHAPE}words ${LENGTHS.findIndex((length) => words.length < length)}`);
  mark(`${SHAPE}asks ${asks}`);
  return marks;
};
