/** The things that a part of a sentence names, and which of their kind they are: the one in hand, another, one taken away. */
import { plays, ROLE, thingAt, type Kinds, type Thing } from './contrast-words.js';
import type { Token } from './tokens.js';

/** Another than the one in hand; taken away; put in on trial; the one in hand, or not said which. */
export type Which = 'other' | 'absent' | 'tried' | 'own';

export interface Named {
  readonly thing: Thing;
  readonly which: Which;
  /** Two that differ in it are two things. */
  readonly name: string;
  readonly at: number;
}

/** A part of a sentence, and what its words are. */
export interface Words {
  readonly tokens: readonly Token[];
  readonly kinds: Kinds;
  readonly from: number;
  readonly to: number;
}

/** What "one" and "mine" stand for: another named last, or else the thing named last. */
export interface LastNamed {
  thing: Thing | null;
  other: Thing | null;
}

const LOOKS_BACK = 3;
const LOOKS_AHEAD = 3;
/** Further words may stand between "swapped" and what was swapped. */
const TRIED_WITHIN = 4;
const HAS_WITHIN = 6;

const wordAt = ({ tokens }: Words, at: number): string => tokens[at]?.word ?? '';

const BELONGS_TO = /^(?:of|from)$/u;
/** "The laptop of my friend". */
const isOfOthers = (own: Words, at: number): boolean => {
  if (!BELONGS_TO.test(wordAt(own, at + 1))) return false;
  for (let i = at + 2; i < Math.min(own.to, at + 2 + LOOKS_AHEAD); i++)
    if (plays(own.kinds, i, ROLE.other)) return true;
  return false;
};

/** "Without the hub". */
const isWithout = ({ kinds, from }: Words, at: number): boolean => {
  for (let i = at - 1; i >= Math.max(from, at - LOOKS_BACK); i--) {
    if (plays(kinds, i, ROLE.absent)) return true;
    if (thingAt(kinds, i) !== null) return false;
  }
  return false;
};

/** "Since I swapped the cable" tells of a cause. */
const TRIED_SINCE = /^(?:since|after|when)$/u;
const isTried = ({ tokens, kinds, from }: Words, at: number): boolean => {
  for (let i = at - 1; i >= Math.max(from, at - TRIED_WITHIN); i--)
    if (plays(kinds, i, ROLE.tried)) return !tokens.slice(from, i).some(({ word }) => TRIED_SINCE.test(word));
  return false;
};

const HAS = /^(?:have|own|got|possess|know|find)$/u;
/** "I do not own a second one", "another adapter I do not have". */
const isNotHad = (own: Words, at: number): boolean => {
  for (let i = Math.max(own.from, at - HAS_WITHIN); i < Math.min(own.to, at + HAS_WITHIN); i++)
    if (plays(own.kinds, i, ROLE.not) && HAS.test(wordAt(own, i + 1))) return true;
  return false;
};

/** "No second supply", "nor another adapter": there is none. */
const isNone = ({ kinds, from }: Words, at: number): boolean => {
  for (let i = at - 1; i >= Math.max(from, at - LOOKS_BACK); i--) {
    if (plays(kinds, i, ROLE.not)) return true;
    if (!plays(kinds, i, ROLE.other | ROLE.ends)) return false;
  }
  return false;
};

const LED_BY = /^(?:on|with|from|via|over|through|under|in|by)$/u;
/** "Not on the netbook", "nothing with the cable": it is there, and it does badly. */
const isDeniedOfIt = ({ tokens, kinds, from }: Words, at: number): boolean => {
  const denies = tokens[from]?.word;
  return (
    (denies === 'not' || denies === 'nothing') &&
    at - from <= LOOKS_BACK &&
    LED_BY.test(tokens[from + 1]?.word ?? '') &&
    !kinds.slice(from, at).some((kind) => ((kind?.roles ?? 0) & (ROLE.other | ROLE.tried)) !== 0)
  );
};

/** "The other side of the laptop", "a third party lead". */
const NO_OTHER = /^(?:party|side|end|half|time|way)$/u;

const isOther = (own: Words, at: number): boolean => {
  for (let i = at - 1; i >= Math.max(own.from, at - LOOKS_BACK); i--) {
    if (
      plays(own.kinds, i, ROLE.other) &&
      !NO_OTHER.test(wordAt(own, i + 1)) &&
      (wordAt(own, i) !== 'work' || i === at - 1)
    )
      return true;
    const thing = thingAt(own.kinds, i);
    if (plays(own.kinds, i, ROLE.ends) || (thing !== null && thing !== 'again')) return false;
  }
  return false;
};

const isSame = ({ kinds, from }: Words, at: number): boolean => {
  for (let i = at - 1; i >= Math.max(from, at - LOOKS_BACK); i--) if (plays(kinds, i, ROLE.same)) return true;
  return false;
};

const PLACES: ReadonlySet<Thing> = new Set(['at-home', 'away', 'system', 'network']);

/** Which of its kind, by the words around it; null: the very one in hand, or none. */
const whichOf = (own: Words, at: number): Which | null => {
  if (isSame(own, at)) return null;
  const thing = thingAt(own.kinds, at);
  // "Not by the pier" denies no pier.
  if (thing !== null && !PLACES.has(thing) && ((isNone(own, at) && !isDeniedOfIt(own, at)) || isNotHad(own, at)))
    return null;
  const after = /^(?:is|was|turned|switched)$/u.test(wordAt(own, at + 1)) ? at + 2 : at + 1;
  if (after < own.to && plays(own.kinds, after, ROLE.absent)) return 'absent';
  const isTrial = isTried(own, at);
  if (isOther(own, at)) return isTrial ? 'tried' : 'other';
  if (isWithout(own, at)) return 'absent';
  if (isTrial) return 'tried';
  return isOfOthers(own, at) ? 'other' : 'own';
};

/** "His laptop", "one app": a word that may stand for a thing stands before one. */
const standsBefore = ({ kinds, to }: Words, at: number): boolean => {
  for (let i = at + 1; i <= Math.min(at + 2, to - 1); i++) {
    const thing = thingAt(kinds, i);
    if (thing !== null && thing !== 'again') return true;
  }
  return false;
};

const MINE = /^(?:mine|his|hers|theirs|yours)$/u;
const OTHERS_OWN = /^(?:his|hers|theirs|yours)$/u;
const GOES_ON_AFTER_HIS = /^(?:is|was|does|works?|worked|connects|has|will|finds|can|fails|not|it)$/u;

/** "The old one", "mine": "one" alone counts, and stands for nothing. */
const namedAgain = (own: Words, at: number, last: LastNamed): Named | null => {
  const word = wordAt(own, at);
  const thing = last.other ?? last.thing;
  if (thing === null || standsBefore(own, at)) return null;
  if (word === 'his' && at + 1 < own.to && !GOES_ON_AFTER_HIS.test(wordAt(own, at + 1))) return null;
  const which = OTHERS_OWN.test(word) ? 'other' : whichOf(own, at);
  const isTold =
    MINE.test(word) ||
    [at - 1, at - 2].some((i) => i >= own.from && plays(own.kinds, i, ROLE.other | ROLE.own | ROLE.tried));
  return isTold && which !== null ? { thing, which, name: which === 'other' ? '' : word, at } : null;
};

/** "Mine by cable": a way, and no cable in hand. */
const AS_WAY = /^(?:by|via|per)$/u;
const STANDS_FOR: ReadonlySet<Thing> = new Set(['computer', 'phone', 'program', 'cable', 'adapter', 'supply']);
/** "Handset lead", "laptop charger": a part of it. */
const PART_OF_IT =
  /^(?:leads?|cables?|plug|charger|sockets?|battery|screen|display|ports?|menu|mode|list|bag|case|firmware|desk|settings?|buttons?|keys)$/u;
/** Who restarts, and what: "the mount rebooted" is no trial. */
const RESTARTS = /^(?:i|we|have|had|even|also|already|twice|just|then|did|and|computer|laptop|pc|windows|completely)$/u;

const isRestart = (own: Words, at: number): boolean => at === own.from || RESTARTS.test(wordAt(own, at - 1));

/** @param last goes on from part to part */
export const namedAt = (own: Words, at: number, last: LastNamed): Named | null => {
  const thing = thingAt(own.kinds, at);
  if (thing === null) return null;
  if (thing === 'again') return namedAgain(own, at, last);
  if (at + 1 < own.to && PART_OF_IT.test(wordAt(own, at + 1))) return null;
  const name = wordAt(own, at);
  if (thing === 'restart') return isRestart(own, at) ? { thing, which: 'tried', name, at } : null;
  if (thing === 'cable' && AS_WAY.test(wordAt(own, at - 1))) return null;
  const which = whichOf(own, at);
  if (which === null) return null;
  if (STANDS_FOR.has(thing)) {
    last.thing = thing;
    if (which === 'other') last.other = thing;
  }
  // "Her Windows 7" is a computer.
  const meant = thing === 'system' && which === 'other' ? 'computer' : thing;
  return { thing: meant, which, name: which === 'other' ? '' : name, at };
};
