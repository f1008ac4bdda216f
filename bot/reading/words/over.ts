/** What was so once and is over. */
import { IS } from './asked.js';
import { clauseEnd, clauseStart, has, hasAny } from './clause.js';
import type { PhraseMatch } from './phrases.js';
import type { Clauses } from './sentences.js';

/** "The time-outs are gone": what follows a thing at once says that it is over. */
const isEnded = (own: Clauses, { end, taken }: PhraseMatch): boolean => {
  let at = end;
  while (at < own.tokens.length && has(own, at, IS.small) && !has(own, at, IS.ended)) at++;
  return !taken.includes(at) && has(own, at, IS.ended);
};

const ALL_OF_IT = /^(?:it|that|this|them|everything|all|problem|problems|trouble|issue|lot)$/u;
const OBJECT_WITHIN = 4;
const NAMED = (IS.thing & ~IS.pronoun) | IS.mount | IS.stranger | IS['other-gear'];

/** "…, other programs connect no problem", "…, my brother sorted his laptop": another thing's own clause. */
const isOfAnother = (own: Clauses, { end }: PhraseMatch, at: number): boolean => {
  const from = clauseStart(own, at, false);
  if (from < end) return false;
  let past = at + 1;
  while (has(own, past, IS.solved)) past++;
  for (let i = past; i < past + OBJECT_WITHIN; i++) if (ALL_OF_IT.test(own.tokens[i]?.word ?? '')) return false;
  for (let i = from; i < at; i++) if (has(own, i, NAMED) && !has(own, i, IS.pronoun)) return true;
  return false;
};

/** "Connects no problem" says at once how it went, and solves nothing; nor does "no problem with the fuse". */
const isSolved = (own: Clauses, match: PhraseMatch, at: number): boolean => {
  if (!has(own, at, IS.solved) || has(own, at - 1, IS.not)) return false;
  const [here, next, after] = [at, at + 1, at + 2].map((i) => own.tokens[i]?.word);
  if (here === 'problem' && (at === match.end + 1 || next === 'with')) return false;
  if (here === 'no' && (next !== 'problem' || after === 'with')) return false;
  return !isOfAnother(own, match, at);
};

const SINCE = /^(?:since|now)$/u;
const NOW =
  /^(?:still|now|tonight|today|is|are|am|will|can|say|says|show|shows|read|reads|get|gets|give|gives|keeps?|stays?|thinks?|wants?|sees?|drops?|hangs?|connects?|refuses?|fails?|stops?)$/u;

const holds = ({ tokens }: Clauses, from: number, to: number, form: RegExp): boolean => {
  for (let at = from; at < to; at++) if (form.test(tokens[at]?.word ?? '')) return true;
  return false;
};

/** Where an "and" ends the part of a clause that a token stands in. */
const partEnd = ({ tokens }: Clauses, at: number, to: number): number => {
  for (let i = at; i < to; i++) if (tokens[i]?.word === 'and') return i;
  return to;
};

/** "It was parked last week and still says parked": what one half of a clause says of the past leaves alone what the other says of now. */
const isPast = (own: Clauses, match: PhraseMatch): boolean => {
  const [from, to] = [clauseStart(own, match.start, true), clauseEnd(own, match.end)];
  const part = clauseStart(own, match.start, false);
  const end = partEnd(own, Math.max(part, match.end), to);
  const isOfNow = holds(own, part, end, NOW);
  const since = holds(own, part, end, SINCE);
  for (let at = from; at < to; at++) {
    if (!has(own, at, IS.past) || match.taken.includes(at)) continue;
    const isBeside = at >= part && at < end;
    if (isBeside ? !since : !isOfNow) return true;
  }
  return false;
};

/** @param past what was so in the past is as good */
export const isOver = (own: Clauses, match: PhraseMatch, past: boolean): boolean => {
  if (!past && hasAny(own, IS.past) && isPast(own, match)) return true;
  if (hasAny(own, IS.ended) && isEnded(own, match)) return true;
  return hasAny(own, IS.solved) && own.tokens.some((_, at) => at > match.end && isSolved(own, match, at));
};
