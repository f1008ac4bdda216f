/** Which part of the chain it is: the contrast that tells most of that, once remedies have failed and no cause stands out. */
import type { Belief } from './belief.js';
import type { Choice } from './choice.js';
import type { Evidence } from './evidence.js';
import { mistakenFor } from './mistakes.js';
import { first, likeliest } from './rules-of-order.js';
import type { CheckNumbers, Situation } from './situation.js';

/** So many remedies in vain, and another guess is worth less than to know where to look. */
const IN_VAIN = 1;
/** A remedy this likely is tried first all the same; a cause this likely is handed on by name. */
const LIKELY_ENOUGH = 0.25;
/** One more question in a walk this old is better answered by a person. */
const OLD_TURNS = 9;
/** Contrasts asked for in this way, in one walk. */
const MOST_CONTRASTS = 2;
/** Bits; a contrast that tells less of the part is not worth a member's walk to the mount. */
const TELLS_ENOUGH = 0.2;

/** Bits that the answer to a check tells of the link at fault, mistakes and "not sure" taken off. */
export const bitsOfPart = (situation: Situation, { probabilities }: Belief, numbers: CheckNumbers): number => {
  const joint = new Map<string | null, number[]>();
  for (const [h, link] of situation.links.entries()) {
    const row = joint.get(link) ?? numbers.answers.map(() => 0);
    joint.set(link, row);
    for (const [a, odds] of numbers.odds.entries()) {
      const likelihood = (1 - numbers.slip) * (odds[h] ?? 0) + numbers.slip * mistakenFor(numbers, a);
      row[a] = (row[a] ?? 0) + (probabilities[h] ?? 0) * likelihood;
    }
  }
  const rows = [...joint.values()];
  const answers = numbers.answers.map((_, a) => rows.reduce((sum, row) => sum + (row[a] ?? 0), 0));
  let bits = 0;
  for (const row of rows) {
    const share = row.reduce((sum, p) => sum + p, 0);
    for (const [a, p] of row.entries()) if (p > 0) bits += p * Math.log2(p / (share * (answers[a] ?? 1)));
  }
  return (1 - numbers.unsure) * bits;
};

const inVain = ({ tried }: Evidence): number => [...tried.values()].reduce((sum, times) => sum + times, 0);

const isGuess = (situation: Situation, evidence: Evidence, belief: Belief, best: Choice | undefined): boolean => {
  if (best?.kind === 'handOn') return likeliest(situation, belief).probability < LIKELY_ENOUGH;
  return best?.kind === 'try' && inVain(evidence) >= IN_VAIN && (belief.probabilities[best.fault] ?? 0) < LIKELY_ENOUGH;
};

/** In place of one more guess, or of handing on with no part named: the contrast that tells most of the part. */
export const tellPartsFirst = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  ranked: readonly Choice[],
): readonly Choice[] => {
  if (evidence.turns >= OLD_TURNS || !isGuess(situation, evidence, belief, ranked[0])) return ranked;
  const isContrast = (check: number): boolean => situation.checks[check]?.entry.contrast !== undefined;
  const asked = new Set([...evidence.observations.map(({ check }) => check), ...evidence.unsure]);
  if ([...asked].filter(isContrast).length >= MOST_CONTRASTS) return ranked;
  const telling = ranked.flatMap((choice) => {
    const numbers = choice.kind === 'ask' && !choice.again ? situation.checks[choice.check] : undefined;
    if (choice.kind !== 'ask' || numbers?.entry.contrast === undefined) return [];
    return [{ check: choice.check, bits: bitsOfPart(situation, belief, numbers) }];
  });
  const best = telling.sort((a, b) => b.bits - a.bits)[0];
  if (best === undefined || best.bits < TELLS_ENOUGH) return ranked;
  return first(ranked, (choice) => choice.kind === 'ask' && !choice.again && choice.check === best.check);
};
