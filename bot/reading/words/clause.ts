/** Where a clause begins and ends, and what its words are. */
import type { Clauses } from './sentences.js';

export const has = ({ covers }: Clauses, at: number, id: string): boolean => covers[at]?.has(id) === true;

/** The first token of the clause that `at` stands in; `joined`: "and" does not end it. */
export const clauseStart = (own: Clauses, at: number, joined: boolean): number => {
  for (let i = at - 1; i >= 0; i--) {
    const token = own.tokens[i];
    if (token?.kind === 'pause' || has(own, i, 'turn')) return i + 1;
    if (!joined && token?.word === 'and') return i + 1;
  }
  return 0;
};

export const clauseEnd = (own: Clauses, at: number): number => {
  for (let i = at; i < own.tokens.length; i++) if (own.tokens[i]?.kind === 'pause' || has(own, i, 'turn')) return i;
  return own.tokens.length;
};

/** What the next part of a sentence begins with. */
export const NEXT_PART = /^(?:when|while|as|once|if|after|and|every|until|during|only)$/u;
