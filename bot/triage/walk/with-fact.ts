/** What several words told together, in place of what single ones of them were taken for. */
import type { ReadBy, ReadFact, Reading, Understood } from '../../reading/index.js';

/** How a text came, and what it tells beside its own words, once held against what is known elsewhere. */
export interface HowTold {
  readonly by?: ReadBy | undefined;
  readonly known?: readonly Understood[] | undefined;
}

/** Of a member's own words, so much is quoted. */
const LONGEST_QUOTE = 120;

export const quotedFrom = (text: string): string => text.trim().slice(0, LONGEST_QUOTE);

/** @param isReplaced which checks' facts give way to it: its own, unless others do too */
export const withFact = (
  read: Reading,
  { fact, label }: { readonly fact: ReadFact; readonly label: string },
  isReplaced: (what: string) => boolean = (what) => what === fact.what,
): Reading => ({
  ...read,
  facts: [...read.facts.filter(({ what }) => !isReplaced(what)), fact],
  understood: [...read.understood.filter((one) => !isReplaced(one.fact.what)), { fact, label }],
});

export const withoutGuesses = (read: Reading, isReplaced: (what: string) => boolean): Reading => ({
  ...read,
  perhaps: read.perhaps.filter(({ what }) => !isReplaced(what)),
});
