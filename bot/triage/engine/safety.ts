/** Looks that keep people and gear safe: whose they are, and what a bad answer to one calls for. */
import type { CheckEntry } from '../model/schema.js';
import type { Belief } from './belief.js';
import type { Evidence } from './evidence.js';
import { attempts } from './rules-of-order.js';
import { isTheirs, type Situation } from './situation.js';

/** Safety looks that may be theirs after all: the way to the mount is not known, so they are not asked. */
export const unaskedSafety = (situation: Situation): readonly CheckEntry[] =>
  situation.checks.filter((numbers) => !isTheirs(situation, numbers)).map(({ entry }) => entry);

/** Below this a fault is not what a safety answer warns of. */
const WARNED_OF = 0.1;

/** What a bad answer to a safety check calls for at once: the remedy of the likeliest fault it warns of, unless one was tried. */
export const safetyRemedy = (situation: Situation, evidence: Evidence, belief: Belief): number | undefined => {
  const bad = evidence.observations.findLast(({ check, answer }) => {
    const numbers = situation.checks[check];
    return numbers?.entry.safety === true && numbers.answers[answer] !== numbers.entry.good;
  });
  const numbers = bad === undefined ? undefined : situation.checks[bad.check];
  if (bad === undefined || numbers === undefined) return undefined;
  const warnedOf = situation.faults.flatMap(({ answers }, f) =>
    answers?.[numbers.entry.id] !== undefined && (numbers.odds[bad.answer]?.[f] ?? 0) >= WARNED_OF ? [f] : [],
  );
  if (warnedOf.some((f) => attempts(evidence, f) > 0 || evidence.mended.has(f))) return undefined;
  return warnedOf.sort((f, g) => (belief.probabilities[g] ?? 0) - (belief.probabilities[f] ?? 0) || f - g)[0];
};
