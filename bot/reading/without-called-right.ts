/** "The clock is NOT wrong": an entry that the words call right is none that they tell to be amiss, whatever they are like. */
import type { Judged } from './examples/likeness.js';
import type { ReadFact } from './reading.js';
import { isCalledRight } from './words/called-right.js';

export const withoutCalledRight = (text: string, judged: Judged): Judged => {
  const isNone = ({ by, what, answer }: ReadFact): boolean =>
    by === 'words' && isCalledRight(text, `${what}.${answer}`);
  const none = new Set([...judged.facts, ...judged.perhaps].filter(isNone));
  if (none.size === 0) return judged;
  return {
    facts: judged.facts.filter((fact) => !none.has(fact)),
    understood: judged.understood.filter(({ fact }) => !none.has(fact)),
    perhaps: judged.perhaps.filter((fact) => !none.has(fact)),
  };
};
