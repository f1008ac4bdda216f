/** "Bluetooth is off", "I am not in that group": where a member's words hold a cause's own sign, its quick and harmless remedy comes next. */
import type { Belief } from '../engine/belief.js';
import type { Evidence } from '../engine/evidence.js';
import type { Observation } from '../engine/mistakes.js';
import { attempts, isQuickAndHarmless, likeliest, mayTry } from '../engine/rules-of-order.js';
import { safetyWaits } from '../engine/safety.js';
import type { Situation } from '../engine/situation.js';
import type { FaultEntry } from '../model/schema.js';

interface At {
  readonly situation: Situation;
  readonly evidence: Evidence;
  readonly belief: Belief;
}

/** A cause shows itself in an answer from here on; its own sign is one that the others together show so many times less … */
const [SHOWS, OWN] = [0.9, 5];
/** … and that hardly another one has: so often it has it, too. */
const [MOST_OWNERS, HAS_IT] = [2, 0.3];
/** Against all else that was said, so likely it must be: the likeliest of all, or well ahead of most. */
const [LIKELIEST, LIKELY] = [0.07, 0.15];
const QUICK_MINUTES = 6;

/** How often the other causes would give this answer. */
const byOthers = ({ priors }: Situation, odds: Float64Array, fault: number): number => {
  let [all, same] = [0, 0];
  for (const [h, prior] of priors.entries()) {
    if (h === fault) continue;
    all += prior;
    same += prior * (odds[h] ?? 0);
  }
  return all > 0 ? same / all : 1;
};

/** The causes whose own sign the words hold. */
const signedBy = (situation: Situation, { check, answer }: Observation): readonly number[] => {
  const numbers = situation.checks[check];
  const odds = numbers?.odds[answer];
  if (numbers === undefined || odds === undefined || answer === numbers.good) return [];
  if (numbers.entry.scope === 'chain') return [];
  if (situation.faults.filter((_, f) => (odds[f] ?? 0) >= HAS_IT).length > MOST_OWNERS) return [];
  return situation.faults.flatMap((_, f) => {
    const own = odds[f] ?? 0;
    return own >= SHOWS && own >= OWN * byOthers(situation, odds, f) ? [f] : [];
  });
};

/** Told in words or read in a paste, the last of its check, and neither guessed nor of before a change. */
const isTold = (observations: readonly Observation[], at: number): boolean => {
  const one = observations[at];
  if (one?.slip === undefined || one.guessed === true || one.before === true || one.or !== undefined) return false;
  return !observations.slice(at + 1).some(({ check }) => check === one.check);
};

export const toldNext = ({ situation, evidence, belief }: At): FaultEntry | null => {
  const { observations } = evidence;
  const told = observations.filter((_, at) => isTold(observations, at));
  if (told.length === 0 || safetyWaits(situation, evidence, belief)) return null;
  const top = likeliest(situation, belief).fault;
  const signed = [...new Set(told.flatMap((one) => signedBy(situation, one)))].flatMap((f) => {
    const fault = situation.faults[f];
    const probability = belief.probabilities[f] ?? 0;
    const isLikely = probability >= (f === top ? LIKELIEST : LIKELY);
    const isOpen = attempts(evidence, f) === 0 && mayTry(situation, evidence, f, probability);
    return fault !== undefined && isLikely && isOpen && isQuickAndHarmless(fault.remedy, QUICK_MINUTES)
      ? [{ fault, probability }]
      : [];
  });
  return signed.sort((a, b) => b.probability - a.probability)[0]?.fault ?? null;
};
