/** Whether a part of a sentence says that all is well, or that it is not. */
import { plays, ROLE, thingAt, type Thing } from './contrast-words.js';
import type { Named, Words } from './contrast-things.js';

export type Verdict = 'well' | 'badly';

export interface Weighed {
  /** null: nothing of it, or both. */
  readonly verdict: Verdict | null;
  /** As it was before, whatever was done: "same", "no difference", "still", "nothing". */
  readonly isAsEver: boolean;
}

export const NOTHING: Weighed = { verdict: null, isAsEver: false };

/** So many words a denial reaches. */
const DENIES_WITHIN = 5;
/** So few words and no thing: "nothing", "no luck at all". */
const MOST_OF_RESULT = 3;

/** Only of what stands before it: "finds it", as against "find another cable". */
const OF_SUBJECT = /^(?:find|finds|found|see|sees|saw|gets?|got|lost|loses|drop|dropped|drives|drove|broken)$/u;
const LEADS = /^(?:on|with|from|in|by|using|over|via|at)$/u;
/** What else they may be: "connected through a dock", "runs the heater". */
const ONLY_SO = /^(?:connected|runs|ran|going)$/u;
const GOES_ON =
  /^(?:like|well|right|straight|happily|fine|ok|okay|all|at|first|immediately|again|no|without|for|every|perfectly|with|on)$/u;
const IS_SO = /^(?:is|stays|it|gets|got|was|are|both|all|they)$/u;
const OF_A_PERSON = /^(?:work|works|worked|connect)$/u;
const PERSON = /^(?:i|we|you|to|must|need)$/u;
const GETS = /^(?:gets?|got)$/u;
const GETS_WITHIN = 3;
const THROUGH = /^(?:through|in|back)$/u;
const RESULT =
  /^(?:error|errors|thing|story|result|results|again|there|here|timeout|trouble|problem|fault|message|way|behaviour|every|each|on|with|for|in|silence|nothing|no|too|also|still|as)$/u;
const STILL = /^(?:same|code|error|there|timeout|no|not|nothing|nope|none)$/u;
const MAY = /^(?:can|could)$/u;
/** "The phone finds it sometimes": neither. */
const AT_TIMES = /^(?:sometimes|occasionally|rarely|seldom|intermittently)$/u;

const wordAt = ({ tokens }: Words, at: number): string => tokens[at]?.word ?? '';
const hasWord = (own: Words, from: number, to: number, form: RegExp): boolean => {
  for (let i = from; i < Math.min(to, own.to); i++) if (form.test(wordAt(own, i))) return true;
  return false;
};
const hasRole = (own: Words, from: number, to: number, roles: number): boolean => {
  for (let i = from; i < Math.min(to, own.to); i++) if (plays(own.kinds, i, roles)) return true;
  return false;
};

/** Something stands before it that it may be said of, or is led to after it. */
const hasSubject = (own: Words, at: number, things: readonly Named[]): boolean => {
  const [first] = things;
  return first !== undefined && (first.at < at || hasWord(own, at, first.at, LEADS));
};

/** "The same", "same error": what came of it, as against "the same make"; "still code 10", as against "I still see". */
const isAsEverAt = (own: Words, at: number): boolean => {
  const isLast = at + 1 >= own.to;
  const next = wordAt(own, at + 1);
  switch (wordAt(own, at)) {
    case 'same':
      return isLast || (thingAt(own.kinds, at + 1) === null && RESULT.test(next));
    case 'still':
      return (
        isLast ||
        STILL.test(next) ||
        plays(own.kinds, at + 1, ROLE.badly) ||
        (at === own.from && !plays(own.kinds, at + 1, ROLE.well))
      );
    default:
      return true;
  }
};

const isLastWord = (own: Words, at: number): boolean => at + 1 >= own.to;
const nextWord = (own: Words, at: number): string => (isLastWord(own, at) ? '' : wordAt(own, at + 1));

/** "Works outside" calls no place so. */
const NOT_CALLED: ReadonlySet<Thing> = new Set(['again', 'at-home', 'away']);

/** "A good cable", "my work laptop", "a talk", "I work for the council", "the virtual machine runs on there". */
const isOtherwise = (own: Words, at: number): boolean => {
  const [before, word, next] = [wordAt(own, at - 1), wordAt(own, at), nextWord(own, at)];
  const thing = isLastWord(own, at) ? null : thingAt(own.kinds, at + 1);
  if (/^an?$/u.test(before) || (thing !== null && !NOT_CALLED.has(thing))) return true;
  if (OF_A_PERSON.test(word) && (next === 'for' || PERSON.test(before))) return true;
  return ONLY_SO.test(word) && !(isLastWord(own, at) ? IS_SO.test(before) : GOES_ON.test(next));
};

const getsSomething = (own: Words, at: number): boolean =>
  hasRole(own, at + 1, at + 1 + GETS_WITHIN, ROLE.wanted) || hasWord(own, at + 1, at + 1 + GETS_WITHIN, THROUGH);

/** What a word for "well" says here; null: it is not meant so. */
const wellAt = (own: Words, at: number, things: readonly Named[], isDenied: boolean): boolean | null => {
  if (isOtherwise(own, at)) return null;
  const word = wordAt(own, at);
  if (!OF_SUBJECT.test(word)) return !isDenied;
  if (!hasSubject(own, at, things)) return null;
  // "Gets no answer".
  if (!isLastWord(own, at) && plays(own.kinds, at + 1, ROLE.not)) return false;
  return GETS.test(word) && !getsSomething(own, at) ? null : !isDenied;
};

/** "Her laptop does", "mine will not": what was said just before to be so, or not. */
const doesAt = (own: Words, at: number, things: readonly Named[], before: Verdict | null): boolean | null => {
  if (before === null || !things.some((one) => one.at < at)) return null;
  for (let i = at + 1; i < own.to; i++) if (!plays(own.kinds, i, ROLE.not)) return null;
  const isSo = at + 1 >= own.to;
  return isSo === (before === 'badly') ? isSo : null;
};

/** What neither praises nor blames outright: "not by the pier", "with mine not". */
const isDeniedAsWhole = (own: Words): boolean => {
  const [first, last] = [wordAt(own, own.from), wordAt(own, own.to - 1)];
  return (
    first === 'not' ||
    (last === 'not' && !plays(own.kinds, own.to - 2, ROLE.does)) ||
    last === 'no' ||
    last === 'nothing'
  );
};

const RESULTING = ROLE.not | ROLE.badly | ROLE['as-ever'];
/** What tells something. */
export const TELLING =
  ROLE.not |
  ROLE.trouble |
  ROLE.effect |
  ROLE['as-ever'] |
  ROLE.badly |
  ROLE.gone |
  ROLE.well |
  ROLE.wanted |
  ROLE.does |
  ROLE.steers;

interface Around {
  readonly things: readonly Named[];
  /** What was said last of how things go. */
  readonly before: Verdict | null;
}

/** What is looked for is not there, what is feared is not. */
const deniedAt = (roles: number): boolean | null => {
  if ((roles & ROLE.trouble) !== 0) return true;
  return (roles & (ROLE.effect | ROLE.wanted)) !== 0 ? false : null;
};

/** "I can slew", "the port is in use". */
const steersAt = (own: Words, at: number, isDenied: boolean, things: readonly Named[]): boolean | null => {
  const before = wordAt(own, at - 1);
  if (wordAt(own, at) === 'use')
    return before === 'in' && !isDenied && things.some((one) => one.at < at) ? false : null;
  return MAY.test(before) ? true : null;
};

/** What one word that tells something says: well, not well, nothing. */
const saidAt = (own: Words, at: number, isDenied: boolean, { things, before }: Around): boolean | null => {
  const roles = own.kinds[at]?.roles ?? 0;
  const denied = isDenied ? deniedAt(roles) : null;
  if (denied !== null && (roles & ROLE.well) === 0) return denied;
  if ((roles & ROLE.badly) !== 0) return isDenied;
  if ((roles & ROLE.well) !== 0) return wellAt(own, at, things, isDenied);
  if ((roles & ROLE.steers) !== 0) return steersAt(own, at, isDenied, things);
  if ((roles & ROLE.gone) !== 0)
    return wordAt(own, at - 1) === 'all' || hasRole(own, own.from, at, ROLE.trouble) ? true : null;
  return (roles & ROLE.does) !== 0 ? doesAt(own, at, things, before) : null;
};

interface Sum {
  well: boolean;
  badly: boolean;
  isAsEver: boolean;
  /** Where the last word stands that denies. */
  denied: number;
}

const add = (own: Words, at: number, around: Around, sum: Sum): void => {
  const roles = own.kinds[at]?.roles ?? 0;
  if ((roles & ROLE.not) !== 0) {
    sum.denied = at;
    if (wordAt(own, at) === 'nothing' && (isLastWord(own, at) || own.from === at)) sum.badly = true;
    return;
  }
  const isDenied = at - sum.denied < DENIES_WITHIN;
  if (((roles & ROLE['as-ever']) !== 0 && isAsEverAt(own, at)) || (isDenied && (roles & ROLE.effect) !== 0))
    sum.isAsEver = true;
  if ((roles & ROLE['as-ever']) !== 0) return;
  const isWell = saidAt(own, at, isDenied, around);
  if (isWell === true) sum.well = true;
  if (isWell === false) sum.badly = true;
};

export const weigh = (own: Words, around: Around): Weighed => {
  const sum: Sum = { well: false, badly: false, isAsEver: false, denied: -DENIES_WITHIN };
  for (let at = own.from; at < own.to; at++)
    if (((own.kinds[at]?.roles ?? 0) & TELLING) !== 0) add(own, at, around, sum);
  const isNamed = around.things.length > 0;
  if (sum.well)
    return sum.badly || hasWord(own, own.from, own.to, AT_TIMES) ? NOTHING : { verdict: 'well', isAsEver: false };
  if (!sum.badly && !sum.isAsEver && !(isNamed && isDeniedAsWhole(own))) return NOTHING;
  const isBare = !isNamed && plays(own.kinds, own.from, RESULTING) && own.to - own.from <= MOST_OF_RESULT;
  return { verdict: 'badly', isAsEver: sum.isAsEver || isBare };
};
