/** The look ahead's short cuts (bounds, arrays used again, faults nearly sorted) against the same recursion without any. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastValue, plannedMinutes, type OpenCheck, type Outlook } from '../../bot/triage/engine/look-ahead.js';
import { byWorth, repairPlan } from '../../bot/triage/engine/repair-cost.js';

const share = fc.integer({ min: 1, max: 50 }).map((n) => n / 50);
const outlooks = fc
  .record({
    faults: fc.array(fc.record({ p: share, minutes: fc.constantFrom(4, 7, 12, 25, Infinity) }), {
      minLength: 2,
      maxLength: 9,
    }),
    unknowns: fc.array(share, { minLength: 1, maxLength: 3 }),
    checks: fc.array(fc.record({ minutes: fc.integer({ min: 1, max: 9 }), answers: fc.integer({ min: 2, max: 4 }) }), {
      minLength: 1,
      maxLength: 5,
    }),
    handOnMinutes: fc.integer({ min: 15, max: 160 }),
    odds: fc.array(share, { minLength: 12 * 5 * 4, maxLength: 12 * 5 * 4 }),
  })
  .map(({ faults, unknowns, checks, handOnMinutes, odds }): { outlook: Outlook; visited: Outlook } => {
    const weights = [...faults.map(({ p }) => p), ...unknowns];
    const total = weights.reduce((sum, p) => sum + p, 0);
    const belief = Float64Array.from(weights, (p) => p / total);
    const tryMinutes = Float64Array.from(faults, ({ minutes }) => minutes);
    const open = checks.map(({ minutes, answers }, c): OpenCheck => {
      const weight = (h: number, a: number): number => odds[(c * 4 + a) * 12 + h] ?? 1;
      const whole = weights.map((_, h) => Array.from({ length: answers }, (_o, a) => weight(h, a)));
      const likelihood = Array.from({ length: answers }, (_, a) =>
        Float64Array.from(whole, (column) => (column[a] ?? 0) / column.reduce((sum, w) => sum + w, 0)),
      );
      return { check: c, minutes, unsure: 0.05, likelihood };
    });
    const outlook = { belief, tryMinutes, handOnMinutes, checks: open, visit: null };
    return { outlook, visited: { ...outlook, visit: byWorth(belief, tryMinutes) } };
  });

const following = (outlook: Outlook, belief: Float64Array, check: OpenCheck, ahead: number): number => {
  const rest = { ...outlook, checks: outlook.checks.filter((other) => other !== check) };
  const total = check.likelihood.reduce(
    (sum, odds) => sum + odds.reduce((all, p, h) => all + p * (belief[h] ?? 0), 0),
    0,
  );
  const known = check.likelihood.reduce(
    (sum, odds) =>
      sum +
      plainly(
        rest,
        belief.map((p, h) => p * (odds[h] ?? 0)),
        ahead,
      ),
    0,
  );
  return check.minutes * total + check.unsure * plannedMinutes(belief, outlook) + (1 - check.unsure) * known;
};

const trying = (outlook: Outlook, belief: Float64Array, fault: number, ahead: number): number => {
  const total = belief.reduce((sum, p) => sum + p, 0);
  const tryMinutes = outlook.tryMinutes.map((minutes, f) => (f === fault ? Infinity : minutes));
  const after = belief.map((p, h) => (h === fault ? 0 : p));
  return total * (outlook.tryMinutes[fault] ?? Infinity) + plainly({ ...outlook, tryMinutes }, after, ahead);
};

/** Every check and every remedy followed to the end: at one step ahead, checks alone. */
const plainly = (outlook: Outlook, belief: Float64Array, ahead: number): number => {
  const repair = plannedMinutes(belief, outlook);
  if (ahead === 0) return repair;
  const asked = outlook.checks.map((check) => following(outlook, belief, check, ahead - 1));
  const tried = [...outlook.tryMinutes.keys()]
    .filter((f) => ahead > 1 && outlook.tryMinutes[f] !== Infinity)
    .map((f) => trying(outlook, belief, f, ahead - 1));
  return Math.min(repair, ...asked, ...tried);
};

describe('looking ahead', () => {
  it.each([1, 2])('gives what the plain recursion gives, %i ahead', (depth) => {
    fc.assert(
      fc.property(outlooks, ({ outlook, visited }) => {
        const expected = plainly(outlook, outlook.belief, depth);
        // So broad that every check and remedy is followed.
        expect(leastValue(outlook, outlook.belief, depth, 20)).toBeCloseTo(expected, 9);
        expect(leastValue(visited, visited.belief, depth, 20)).toBe(leastValue(outlook, outlook.belief, depth, 20));
      }),
      { numRuns: 150, seed: 21 + depth },
    );
  });

  it('plans remedies alike in whatever order it comes by them, equals among them', () => {
    fc.assert(
      fc.property(outlooks, fc.infiniteStream(fc.nat()), ({ outlook: { belief, tryMinutes, handOnMinutes } }, keys) => {
        const shuffled = [...tryMinutes.keys()]
          .map((f) => ({ f, key: keys.next().value as number }))
          .sort((a, b) => a.key - b.key)
          .map(({ f }) => f);
        expect(repairPlan(belief, tryMinutes, handOnMinutes, Int32Array.from(shuffled))).toEqual(
          repairPlan(belief, tryMinutes, handOnMinutes),
        );
      }),
      { numRuns: 300, seed: 24 },
    );
  });
});
