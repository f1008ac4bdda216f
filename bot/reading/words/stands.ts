/** Whether a thing found in a sentence is said of this mount, now, as a fact: not denied, asked, wished, past, or of something else. */
import { isApproved } from './approved.js';
import { IS } from './asked.js';
import { clauseEnd, clauseStart, has, hasAny, NEXT_PART, ownStart } from './clause.js';
import type { PhraseMatch } from './phrases.js';
import type { Clauses } from './sentences.js';
import { isOver } from './over.js';
import { isGeneral, isPlanned } from './supposed.js';

export interface Leave {
  /** A question or an "if" is as good. */
  readonly asked?: boolean | undefined;
  /** An "if" or "when" that tells what happens is as good; a question is not. */
  readonly habit?: boolean | undefined;
  /** What was so in the past is as good. */
  readonly past?: boolean | undefined;
  readonly denied?: boolean | undefined;
  readonly others?: boolean | undefined;
  /** Only a system or a path is told: those are the member's even where the sentence is about a camera. */
  readonly mentioned?: boolean | undefined;
  /** Nothing else may stand in its clause. */
  readonly alone?: boolean | undefined;
  /** Entries of words.yaml it must not be said of. */
  readonly notOf?: readonly string[] | undefined;
}

/** How many words a denial reaches. */
const DENIAL_REACH = 6;

/** Whether any token from `from` to before `to`, not taken by the phrase itself, is such a one. */
const any = (own: Clauses, { taken }: PhraseMatch, from: number, to: number, what: number): boolean => {
  if (!hasAny(own, what)) return false;
  for (let i = from; i < to; i++) if (has(own, i, what) && !has(own, i, IS.small) && !taken.includes(i)) return true;
  return false;
};

/** The token that denies a match, -1: none. */
export const deniedAt = (own: Clauses, { start, end, taken }: PhraseMatch): number => {
  if (!hasAny(own, IS.not)) return -1;
  const from = Math.max(clauseStart(own, start, false), start - DENIAL_REACH);
  for (let i = end - 1; i >= from; i--)
    if (has(own, i, IS.not) && !has(own, i, IS.small) && !taken.includes(i)) return i;
  return -1;
};

const isDenied = (own: Clauses, match: PhraseMatch): boolean => deniedAt(own, match) >= 0;

/** "I do not have a Mac": what may stand between a denial and the thing whose mere mention counts. */
const HAVING = new Set(
  'have has had use uses using used own owns owned bought run runs running got need want like via over by through any there such thing as on at'.split(
    ' ',
  ),
);

const MENTION_REACH = 7;

const isMentionDenied = (own: Clauses, match: PhraseMatch): boolean => {
  if (!hasAny(own, IS.not)) return false;
  for (let i = match.start - 1; i >= Math.max(0, match.start - MENTION_REACH); i--) {
    if (has(own, i, IS.not) && !has(own, i, IS.small)) return !match.taken.includes(i);
    if (!HAVING.has(own.tokens[i]?.word ?? '') && !has(own, i, IS.small)) return false;
  }
  return false;
};

/** With a question mark: the sentence or the clause opens with an asking word, or the match stands in what is asked last. */
const isAskedAloud = (own: Clauses, match: PhraseMatch, from: number, opens: (at: number) => boolean): boolean => {
  if (opens(0) || opens(from)) return true;
  return clauseEnd(own, match.end) === own.tokens.length && from > match.start - 12 && match.start >= from;
};

const ASKING_ALONE = new Set(['does', 'do', 'did', 'is', 'are']);
const ASKED_OF = IS.pronoun | IS.mount | IS.computer;
const ASKING_FOR = new Set(['how', 'what', 'which', 'where', 'who']);
const ASKING_WITH = new Set(['does', 'do', 'is', 'are', 'can', 'could', 'will', 'would', 'should']);

/** Phones leave the question mark out: "does it work with a hub", "what would that be on a mac". */
const isAskedPlainly = (own: Clauses, opens: (at: number) => boolean): boolean => {
  const [first, second] = own.tokens;
  if (!opens(0) || first === undefined || second === undefined) return false;
  if (ASKING_FOR.has(first.word)) return ASKING_WITH.has(second.word);
  return ASKING_ALONE.has(first.word) && has(own, 1, ASKED_OF);
};

const isAsked = (own: Clauses, match: PhraseMatch): boolean => {
  if (!own.asks && !hasAny(own, IS.asker)) return false;
  if (hasAny(own, IS.why) && own.tokens.findIndex((_, at) => has(own, at, IS.why)) < match.start) return false;
  const opens = (at: number): boolean =>
    has(own, at, IS.asker) && !match.taken.includes(at) && !has(own, at + 1, IS.not);
  return own.asks ? isAskedAloud(own, match, clauseStart(own, match.start, true), opens) : isAskedPlainly(own, opens);
};

/** Inside the part that an "if" opens; what follows its own subject and verb is the main clause. */
const isConditional = (own: Clauses, match: PhraseMatch): boolean => {
  if (!hasAny(own, IS.condition)) return false;
  const from = clauseStart(own, match.start, true);
  for (let i = match.start - 1; i >= from; i--) {
    if (!has(own, i, IS.condition) || match.taken.includes(i)) continue;
    let subjects = 0;
    for (let j = i + 1; j <= match.start; j++)
      if (has(own, j, IS.pronoun) || (has(own, j, IS.mount) && !has(own, j - 1, IS.mount))) subjects++;
    return subjects <= 1;
  }
  return false;
};

const OWN_THINGS = IS.mount | IS.pronoun | IS.computer | IS.port;

/** What the match itself begins with is what it is said of, and so is a mount that is lost; motors may only be when. */
const isOwnSubject = (own: Clauses, { taken }: PhraseMatch, at: number): boolean =>
  has(own, at, IS.mount)
    ? !/^motors?$/u.test(own.tokens[at]?.word ?? '')
    : taken.every((before) => before >= at || has(own, before, IS.not));

/** Whether a token is one of those asked for. */
type Fits = (at: number) => boolean;

/** "The camera drops but the mount is solid": what follows is said of the mount, not what stands before. */
const isSetAgainst = ({ tokens }: Clauses, at: number): boolean =>
  at > 0 && [tokens[at - 1], tokens[at - 2]].some((token) => token?.word === 'but' || token?.word === 'whereas');

/** The nearest thing named before the end of the match, in its clause, is one of those. */
const isSubject = (own: Clauses, match: PhraseMatch, fits: Fits): boolean => {
  const from = clauseStart(own, match.start, true);
  for (let i = match.end - 1; i >= from; i--) {
    const isTaken = match.taken.includes(i);
    if (!isTaken && fits(i)) return !has(own, i, IS.mount);
    if (isTaken && (!isOwnSubject(own, match, i) || isSetAgainst(own, i))) continue;
    // "The printer says it is offline": what it says is of itself.
    if (has(own, i, IS.pronoun) && has(own, i - 1, IS.say)) continue;
    if ((isTaken || i < match.start) && has(own, i, OWN_THINGS)) return false;
  }
  return false;
};

const LINKS = /^(?:connection|link|contact|communication|comms)$/u;

/** One of those follows within four words, before the next part of the sentence begins. */
const isObject = (own: Clauses, { end }: PhraseMatch, fits: Fits): boolean => {
  for (let i = end; i < Math.min(end + 4, own.tokens.length); i++) {
    const token = own.tokens[i];
    if (token?.kind !== 'word' || NEXT_PART.test(token.word) || has(own, i, IS.mount) || has(own, i, IS.turn))
      return false;
    // "A time-out with the camera on", as against "lost the link with the camera".
    if (token.word === 'with' && !LINKS.test(own.tokens[i - 1]?.word ?? '')) return false;
    if (fits(i)) return true;
  }
  return false;
};

/** Said of one of those: it is the subject before, or the object right after. */
const isOf = (own: Clauses, match: PhraseMatch, fits: Fits): boolean =>
  isSubject(own, match, fits) || isObject(own, match, fits);

const isOfOtherGear = (own: Clauses, match: PhraseMatch): boolean =>
  hasAny(own, IS['other-gear']) && isOf(own, match, (at) => has(own, at, IS['other-gear']));

const isOfEntry = (own: Clauses, match: PhraseMatch, id: string): boolean =>
  own.ids().has(id) && isOf(own, match, (at) => own.covers[at]?.has(id) === true);

const HAPPENS = /^(?:when|whenever|if|as|once|after|because|until|moment|time|then|and)$/u;

/** "When someone trips over the lead, the link drops": whoever it was, what is lost is the member's. */
const isOnlyCause = (own: Clauses, match: PhraseMatch, at: number): boolean => {
  if (!HAPPENS.test(own.tokens[at - 1]?.word ?? '')) return false;
  for (let i = at + 1; i < match.end; i++) {
    if (has(own, i, IS.stranger)) return false;
    if (has(own, i, OWN_THINGS | IS.program)) return true;
  }
  return false;
};

const NAME_ENDING = "'s".length;

/** "Dave's mount": a word that is none of the vocabulary's owns it. */
export const isOwnedMount = (own: Clauses, at: number): boolean => {
  const token = own.tokens[at];
  if (token === undefined || !has(own, at + 1, IS.mount) || own.covers[at]?.size !== 0) return false;
  return token.end - token.start === token.word.length + NAME_ENDING;
};

const isOfStranger = (own: Clauses, match: PhraseMatch, from: number): boolean => {
  if (hasAny(own, IS.mount)) for (let i = from; i < match.end; i++) if (isOwnedMount(own, i)) return true;
  if (!hasAny(own, IS.stranger)) return false;
  for (let i = from; i < match.start; i++)
    if (!match.taken.includes(i) && has(own, i, IS.stranger) && !has(own, i, IS.small) && !isOnlyCause(own, match, i))
      return true;
  return false;
};

const MINE = /^(?:my|mine|me|i|we|our|ours)$/u;

/** "My mate's mount does the same, drops on every slew": a part that names nothing goes on of whose the part before was. */
const wholeStart = (own: Clauses, { start, end }: PhraseMatch): number => {
  const from = ownStart(own, start);
  if (!hasAny(own, IS.mount) || own.tokens[from - 1]?.kind !== 'pause') return from;
  for (let i = from; i < end; i++) if (has(own, i, OWN_THINGS) || MINE.test(own.tokens[i]?.word ?? '')) return from;
  return clauseStart(own, from - 1, true);
};

const isElsewhere = (own: Clauses, match: PhraseMatch, mentioned: boolean): boolean => {
  const from = mentioned ? ownStart(own, match.start) : wholeStart(own, match);
  if (!(mentioned && own.asks) && isOfStranger(own, match, from)) return true;
  return !mentioned && (any(own, match, from, match.end, IS.hearsay) || isOfOtherGear(own, match));
};

/** "Maybe the firewall blocks it": nobody has looked yet. */
const isGuessed = (own: Clauses, match: PhraseMatch): boolean =>
  any(own, match, ownStart(own, match.start), match.end, IS.guess);

/** Asked, or only supposed. */
const isOpen = (own: Clauses, match: PhraseMatch, { asked, habit }: Leave): boolean =>
  asked !== true &&
  (isAsked(own, match) || ((habit !== true || own.asks || hasAny(own, IS.plan)) && isConditional(own, match)));

/** Over, guessed, planned, said of a whole kind, or called good. */
const isNoFact = (own: Clauses, match: PhraseMatch, leave: Leave): boolean =>
  isOver(own, match, leave.past === true) ||
  isGuessed(own, match) ||
  isPlanned(own, match) ||
  isGeneral(own) ||
  isApproved(own, match);

/** How often, and that it was: it may stand beside what is ticked off. */
const FILLS = /^(?:x?\d|\dx|twice|thrice|times|again|already|both|all|yes|too|also|done|now|tonight|there|here)$/u;

/** All that stands between two marks, or beside an "and". */
export const isAlone = (own: Clauses, { start, end, taken }: PhraseMatch): boolean => {
  const to = clauseEnd(own, start);
  for (let i = clauseStart(own, start, false); i < to; i++) {
    if (i >= end && own.tokens[i]?.word === 'and') return true;
    if (!taken.includes(i) && !has(own, i, IS.small) && !FILLS.test(own.tokens[i]?.word ?? '')) return false;
  }
  return true;
};

export const stands = (own: Clauses, match: PhraseMatch, leave: Leave): boolean => {
  if (hasAny(own, IS.unmeant) && has(own, match.start, IS.unmeant)) return false;
  const denied = leave.mentioned === true ? isMentionDenied : isDenied;
  if (leave.denied !== true && denied(own, match)) return false;
  if (isOpen(own, match, leave)) return false;
  if (leave.others !== true && isElsewhere(own, match, leave.mentioned === true)) return false;
  if (leave.notOf?.some((id) => isOfEntry(own, match, id)) === true) return false;
  if (any(own, match, ownStart(own, match.start), match.start, IS.wish)) return false;
  return leave.mentioned === true || !isNoFact(own, match, leave);
};

/** The part of the sentence's own denials, pasts and habits are no concern here; whose mount it speaks of, and whether it is meant, are. */
const SAID_OF_OTHERS: Leave = { denied: true, past: true, habit: true };

/**
 * Whether a part of a sentence, from a token to before another, speaks of the member's own mount as it is.
 */
export const isOfMember = (own: Clauses, from: number, to: number): boolean => {
  const whole = { start: from, end: to, taken: [...Array(to - from).keys()].map((i) => from + i) };
  if (!stands(own, whole, SAID_OF_OTHERS)) return false;
  const after = { start: to, end: to, taken: [] };
  if (isOfStranger(own, after, from)) return false;
  return !any(own, after, from, to, IS.plan);
};
