/** A thing that is only named, and called good. */
import { IS } from './asked.js';
import { has, hasAny, NEXT_PART } from './clause.js';
import type { PhraseMatch } from './phrases.js';
import type { Clauses } from './sentences.js';

const CALLS = /^(?:is|are|was|were|works?|worked|runs?|goes|seems?)$/u;

/** Called good at this place and nothing more said of it. */
const callsGood = (own: Clauses, at: number): boolean =>
  has(own, at, IS.approved) ||
  (has(own, at, IS.right) && !/^(?:next|beside|at|after)$/u.test(own.tokens[at + 1]?.word ?? ''));

/** "… is ok and so is daylight saving". */
const isApprovedAlike = (own: Clauses, { start }: PhraseMatch): boolean => {
  const so = own.tokens.findIndex(
    ({ word }, at) => word === 'so' && /^(?:is|are)$/u.test(own.tokens[at + 1]?.word ?? ''),
  );
  return so >= 0 && so < start && start <= so + 4 && own.tokens.some((_, at) => at < so && callsGood(own, at));
};
const MOST_BEFORE_CALLED = 4;

const opensPart = (own: Clauses, at: number): boolean =>
  (NEXT_PART.test(own.tokens[at]?.word ?? '') && own.tokens[at]?.word !== 'and') ||
  has(own, at, IS.turn) ||
  has(own, at, IS.not);

/** Whether what follows the match calls it good, in the same breath. */
const isCalledGoodAfter = (own: Clauses, end: number): boolean => {
  for (let at = end, passed = 0; passed <= MOST_BEFORE_CALLED; at++) {
    const token = own.tokens[at];
    // "DST off: correct."
    if (token?.kind === 'pause') return callsGood(own, at + 1) && own.tokens[at + 2]?.kind !== 'word';
    if (token === undefined || opensPart(own, at)) return false;
    if (has(own, at, IS.agrees)) return true;
    if (CALLS.test(token.word)) return callsGood(own, at + 1);
    // Another thing than the one met: what is fine is that.
    if (has(own, at, IS.thing)) return false;
    if (!has(own, at, IS.small)) passed++;
  }
  return false;
};

/** "Single axis slow is fine": a thing that is only named, and called good in the same breath. */
export const isApproved = (own: Clauses, match: PhraseMatch): boolean => {
  if (!hasAny(own, IS.approved | IS.right | IS.agrees)) return false;
  for (let at = match.start; at < match.end; at++) if (has(own, at, IS.not) || callsGood(own, at)) return false;
  // A saying that takes the verb says itself that it is good.
  if (match.taken.some((at) => has(own, at, IS.agrees) || CALLS.test(own.tokens[at]?.word ?? ''))) return false;
  return isApprovedAlike(own, match) || isCalledGoodAfter(own, match.end);
};
