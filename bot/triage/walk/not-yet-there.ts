/** Of what is ordered, promised or on its way nothing is so yet: neither tried nor changed, and no new lead stands here. */
import { isStillToCome, type Reading } from '../../reading/index.js';

/** What having the thing would tell. */
const OF_NEW_THINGS: ReadonlySet<string> = new Set([
  'same-lead',
  'tried-already',
  'changed-last',
  'not-here',
  'other-cable',
  'other-adapter',
  'other-supply',
  'other-computer',
  'lead-from',
]);
/** Longer than this it is a tale, or a paste. */
const LONGEST = 300;

export const withoutStillToCome = (read: Reading, text: string): Reading => {
  if (read.by !== 'words' || text.length > LONGEST) return read;
  const isOf = ({ what }: { readonly what: string }): boolean => OF_NEW_THINGS.has(what);
  if (![...read.facts, ...read.perhaps].some(isOf) || !isStillToCome(text)) return read;
  return {
    ...read,
    facts: read.facts.filter((fact) => !isOf(fact)),
    perhaps: read.perhaps.filter((fact) => !isOf(fact)),
    understood: read.understood.filter(({ fact }) => !isOf(fact)),
  };
};
