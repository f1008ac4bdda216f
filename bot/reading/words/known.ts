/** What a word is wherever it stands. */
import type { Kind } from './contrast-words.js';

export interface Met {
  /** The entry's id; empty for a word by itself. */
  readonly id: string;
  /** The number of the word or `<id>` among the keys of phrases; -1: no phrase has it. */
  readonly key: number;
  /** Tokens it takes. */
  readonly length: number;
}

/** Words on the way to entries of several words. */
export interface Branch {
  readonly ids: string[];
  /** What ends here, where that takes more than one word. */
  met: readonly Met[];
  readonly next: Map<string, Branch>;
}

export interface Known {
  /** The word meant, or the word itself. */
  readonly word: string;
  /** The entries that it is by itself, then the word. */
  readonly met: readonly Met[];
  /** The keys of those, and of the word. */
  readonly keys: readonly number[];
  /** The ids of those entries. */
  readonly covers: ReadonlySet<string>;
  /** What rules ask of a word (see `IS`), as bits. */
  readonly bits: number;
  /** What it is where one thing is set against another; most words are nothing there. */
  readonly kind: Kind | undefined;
  /** Where entries of several words begin with it. */
  readonly opens: Branch | null;
}
