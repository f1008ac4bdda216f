/** The parts of a member's sentences, each with the things it names and whether all is well with them. */
import { IS } from './asked.js';
import { has } from './clause.js';
import { namedAt, type LastNamed, type Named, type Words } from './contrast-things.js';
import { NOTHING, TELLING, weigh, type Verdict, type Weighed } from './contrast-verdict.js';
import { ROLE, type Kinds } from './contrast-words.js';
import type { Clauses } from './sentences.js';

export interface Part extends Words, Weighed {
  readonly sentence: Clauses;
  readonly things: readonly Named[];
  /** "Both connect", "all the same". */
  readonly isOfAll: boolean;
}

/** What goes on from part to part. */
interface Last extends LastNamed {
  verdict: Verdict | null;
}

const THEY = /^(?:they|it|and)$/u;

const partOf = (sentence: Clauses, kinds: Kinds, from: number, to: number, last: Last): Part => {
  const own: Words = { tokens: sentence.tokens, kinds, from, to };
  const things: Named[] = [];
  let isOfAll = false;
  let tells = 0;
  for (let at = from; at < to; at++) {
    const kind = kinds[at];
    if (kind === undefined) continue;
    const { roles } = kind;
    tells |= roles & TELLING;
    if ((roles & ROLE.user) !== 0) last.thing = last.other = null;
    if ((roles & ROLE.all) !== 0 && (at === from || THEY.test(sentence.tokens[at - 1]?.word ?? ''))) isOfAll = true;
    const named = kind.thing === null ? null : namedAt(own, at, last);
    if (named !== null) things.push(named);
  }
  const weighed = tells === 0 ? NOTHING : weigh(own, { things, before: last.verdict });
  if (weighed.verdict !== null && things.length > 0) last.verdict = weighed.verdict;
  const { verdict, isAsEver } = weighed;
  return { tokens: own.tokens, kinds, from, to, verdict, isAsEver, sentence, things, isOfAll };
};

const VERDICT = ROLE.well | ROLE.badly | ROLE['as-ever'] | ROLE.not;
const NONE: readonly Part[] = [];

/** In the order they stand; none where nothing can be set against anything. */
export const partsOf = (sentences: readonly Clauses[]): readonly Part[] => {
  let [things, verdicts] = [false, false];
  const kindsOf = sentences.map(({ tokens }): Kinds => {
    const kinds = new Array<Kinds[number]>(tokens.length);
    for (let at = 0; at < tokens.length; at++) {
      const kind = tokens[at]?.known?.kind;
      kinds[at] = kind;
      if (kind === undefined) continue;
      if (kind.thing !== null) things = true;
      if ((kind.roles & VERDICT) !== 0) verdicts = true;
    }
    return kinds;
  });
  if (!things || !verdicts) return NONE;
  const parts: Part[] = [];
  const last: Last = { thing: null, other: null, verdict: null };
  for (const [i, sentence] of sentences.entries()) {
    const { tokens } = sentence;
    let from = 0;
    for (let at = 0; at <= tokens.length; at++) {
      const token = tokens[at];
      if (token !== undefined && token.kind !== 'pause' && !has(sentence, at, IS.turn) && token.word !== 'and')
        continue;
      if (at > from) parts.push(partOf(sentence, kindsOf[i] ?? [], from, at, last));
      from = at + 1;
    }
  }
  return parts;
};
