/** What reading gives back: facts with the words they came from, as plain data that a walk can keep and a chat can show. */

/** How a text came: a member's own words, lines that a program or system printed, or a picture read by machine. */
export type ReadBy = 'words' | 'log' | 'picture';

export interface ReadFact {
  /** 'path', 'system', 'client', or the id of a check. */
  readonly what: string;
  /** A path's or path family's id, a system, a kind of client, or an answer of that check. */
  readonly answer: string;
  /** Answers that hold as well, or in its place: of these and that one the text does not say which. */
  readonly or?: readonly string[];
  /** 0 to 1: how far the text is to be believed on this. */
  readonly sureness: number;
  /** The words or the line that it came from, at most QUOTE_LIMIT characters; strangers' text, never markup. */
  readonly quote: string;
  readonly by: ReadBy;
}

/** A cause that the text makes likelier (weight above 1) or less likely (below 1) without answering a check. */
export interface Suggestion {
  readonly faultId: string;
  readonly weight: number;
}

/** One thing taken from the text, worded so that a member can say "right" or "wrong" to it. */
export interface Understood {
  readonly fact: ReadFact;
  /** "Windows", "it connects, then drops": no full stop, fits after "I take it:". */
  readonly label: string;
}

/** A cause that a member names. */
export interface Named {
  readonly check: string;
  /** In the member's words. */
  readonly quote: string;
}

export interface Reading {
  /** What the text was read as, on the whole. */
  readonly by: ReadBy;
  /** At most one a `what`; of things tried already, one each. */
  readonly facts: readonly ReadFact[];
  /** At most one a fault. */
  readonly suggested: readonly Suggestion[];
  /** What a member is told was read, in the order to show it. */
  readonly understood: readonly Understood[];
  /** Causes that the member names, seen or only supposed: the check that looks at each, in the order they stand in the text. */
  readonly named: readonly Named[];
  /** Not said in words that are known, but in some like those; likeliest first. It orders what is asked, and is never taken as said. */
  readonly perhaps: readonly ReadFact[];
  /** What the messages of systems and programs in the text mean, a sentence each, in the order they stand in it. */
  readonly says: readonly string[];
  /** The entries of the vocabulary that were met, for reviewers. */
  readonly met: readonly string[];
}

export const QUOTE_LIMIT = 120;

/** Checks of which several answers may be true at once, each in its own right. */
const SEVERAL: ReadonlySet<string> = new Set(['tried-already', 'changed-last', 'not-here']);
export const holdsSeveral = (what: string): boolean => SEVERAL.has(what);

const OF_HARM: ReadonlySet<string> = new Set(['same-lead']);
/** It decides of a look that keeps gear from harm: what other messages are like takes none of it away. */
export const keepsFromHarm = (what: string): boolean => OF_HARM.has(what);

/** Checks of which a text may tell two answers that do not contradict each other: it drops on the slew, and when left alone. */
const EITHER: ReadonlySet<string> = new Set(['when-drops', 'message', 'mount-does']);
export const holdsEither = (what: string): boolean => EITHER.has(what);

/** What two facts of one text would contradict each other in. */
export const keyOf = (what: string, answer: string): string => (SEVERAL.has(what) ? `${what}.${answer}` : what);
