/** Where a clause begins and ends, and what its words are. */
import type { Clauses } from './sentences.js';

/** @param what one of `IS`, or several together: any of them will do */
export const has = ({ bits }: Clauses, at: number, what: number): boolean => ((bits[at] ?? 0) & what) !== 0;

/** Of any word of the sentence. */
export const hasAny = ({ allBits }: Clauses, what: number): boolean => (allBits & what) !== 0;

/** The first token of the clause that `at` stands in; `joined`: "and" does not end it. */
export const clauseStart = (own: Clauses, at: number, joined: boolean): number => {
  const { from, fromJoined } = own.bounds();
  return (joined ? fromJoined : from)[at] ?? 0;
};

export const clauseEnd = (own: Clauses, at: number): number => own.bounds().to[at] ?? own.tokens.length;

/** What the next part of a sentence begins with. */
export const NEXT_PART = /^(?:when|while|as|once|if|after|and|every|until|during|only)$/u;

const OWNER = /^(?:my|mine|i|we|our|ours)$/u;
const OPENING = 3;

/**
 * Where that begins which may say whose a thing is, or whether it is meant: the clause, or the part of it after an "and" that turns to
 * the member's own ("my mate mended it and my battery reads 11.2 volts").
 */
export const ownStart = (own: Clauses, at: number): number => {
  const [joined, part] = [clauseStart(own, at, true), clauseStart(own, at, false)];
  if (part === joined) return joined;
  return own.tokens.slice(part, part + OPENING).some(({ word }) => OWNER.test(word)) ? part : joined;
};
