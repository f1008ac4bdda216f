/** Expected cost of repair against the article's formula worked by hand, and against trying every order. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { repairPlan } from '../../bot/triage/engine/repair-cost.js';

// Heckerman, Breese and Rommelse 1995: ECR = sum over i of (1 - p_1 - … - p_(i-1)) c_i, in falling p/c, and the service
// call for what is left. All figures below are worked by hand from that formula.
describe('the expected cost of repair', () => {
  it('tries the best probability for its cost first', () => {
    // p/c: A 0.5/10 = 0.05, B 0.3/2 = 0.15, C 0.2/5 = 0.04 → B, A, C; 2 + 0.7·10 + 0.2·5 = 10.
    const plan = repairPlan(Float64Array.of(0.5, 0.3, 0.2, 0), Float64Array.of(10, 2, 5), 1000);
    expect(plan.first).toBe(1);
    expect(plan.weightedMinutes).toBeCloseTo(10, 12);
  });

  it('leaves out no remedy of a model of six hundred faults', () => {
    // Equal p: the 512 that take 2 min, then the 88 that take 4. 2·601/2, and 2 more over the last 88: 2·(88·89/2)/600 = 13.0533….
    const minutes = Float64Array.from({ length: 600 }, (_, f) => (f < 512 ? 2 : 4));
    const plan = repairPlan(
      Float64Array.from({ length: 600 }, () => 1 / 600),
      minutes,
      1e6,
    );
    expect(plan.weightedMinutes).toBeCloseTo(601 + 7832 / 600, 6);
  });

  it('counts the service call for what no remedy cures', () => {
    // A then B: 0.6/3 = 0.2, 0.3/6 = 0.05; 3 + 0.4·6 + 0.1·50 = 10.4.
    expect(repairPlan(Float64Array.of(0.6, 0.3, 0.1), Float64Array.of(3, 6), 50).weightedMinutes).toBeCloseTo(10.4, 12);
  });

  it('hands on when the next remedy costs more than it saves', () => {
    // After A (p 0.5) the rest is B 0.02 of 0.5: 0.04·50 = 2 saved for 6 minutes spent. So 3 + 0.5·50 = 28.
    const plan = repairPlan(Float64Array.of(0.5, 0.02, 0.48), Float64Array.of(3, 6), 50);
    expect(plan.weightedMinutes).toBeCloseTo(28, 12);
    // With A barred, handing on at once costs 50.
    expect(repairPlan(Float64Array.of(0.5, 0.02, 0.48), Float64Array.of(Infinity, 6), 50)).toEqual({
      first: null,
      weightedMinutes: 50,
    });
  });

  it('costs no more than any order of remedies, stopped anywhere', () => {
    const orders = (items: readonly number[]): number[][] =>
      items.length === 0
        ? [[]]
        : [
            [],
            ...items.flatMap((item) => orders(items.filter((other) => other !== item)).map((rest) => [item, ...rest])),
          ];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 1, max: 1000 }), fc.integer({ min: 1, max: 60 })), {
          minLength: 1,
          maxLength: 5,
        }),
        fc.integer({ min: 0, max: 500 }),
        fc.integer({ min: 20, max: 200 }),
        (faults, unexplained, handOn) => {
          const total = faults.reduce((sum, [weight]) => sum + weight, unexplained);
          const p = faults.map(([weight]) => weight / total);
          const cheapest = Math.min(
            ...orders(faults.map((_, i) => i)).map((order) => {
              let left = 1;
              let cost = 0;
              for (const f of order) {
                cost += left * (faults[f]?.[1] ?? 0);
                left -= p[f] ?? 0;
              }
              return cost + Math.max(0, left) * handOn;
            }),
          );
          const plan = repairPlan(
            Float64Array.from([...p, unexplained / total]),
            Float64Array.from(faults, ([, minutes]) => minutes),
            handOn,
          );
          expect(plan.weightedMinutes).toBeCloseTo(cheapest, 8);
        },
      ),
      { numRuns: 300, seed: 5 },
    );
  });
});
