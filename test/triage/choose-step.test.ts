/** The choice of steps against an exhaustive search written apart from the engine, and the rules that stand above it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import { chooseStep, rankSteps, USUAL_FORESIGHT } from '../../bot/triage/engine/choose-step.js';
import { handOnMinutes } from '../../bot/triage/engine/hand-on-cost.js';
import { SAYS_GOOD } from '../../bot/triage/engine/mistakes.js';
import {
  DEFAULT_SLIP,
  situationFor,
  SURENESS_OF_WEIGHTS,
  TURN_MINUTES,
  UNEXPLAINED_PRIOR,
} from '../../bot/triage/engine/situation.js';
import { EMPTY, evaluatePolicy, averaged, withObservation } from '../../scripts/knowledge/evaluate-policy.js';
import { check, fault, smallModel, WIRE } from './small-model.js';

interface Puzzle {
  readonly prior: number[];
  readonly cost: number[];
  readonly checks: { readonly minutes: number; readonly yes: number[] }[];
}

/** What handing on costs at the start of a walk; a plan takes it as it stands. */
const HAND_ON_MINUTES = handOnMinutes(
  situationFor(smallModel({ faults: [fault({ id: 'a' })], checks: [] }), WIRE),
  EMPTY,
);

/** Least expected minutes over every policy there is: all checks, all remedies, handing on, in any order. */
const optimum = ({ prior, cost, checks }: Puzzle): number => {
  const best = (belief: readonly number[], open: readonly number[], remedies: readonly number[]): number => {
    const total = belief.reduce((sum, p) => sum + p, 0);
    if (total < 1e-12) return 0;
    let least = total * HAND_ON_MINUTES;
    for (const f of remedies) {
      const after = belief.map((p, h) => (h === f ? 0 : p));
      least = Math.min(
        least,
        total * (cost[f] ?? 0) +
          best(
            after,
            open,
            remedies.filter((other) => other !== f),
          ),
      );
    }
    for (const c of open) {
      const rest = open.filter((other) => other !== c);
      const yes = belief.map((p, h) => p * (checks[c]?.yes[h] ?? 0));
      const no = belief.map((p, h) => p * (1 - (checks[c]?.yes[h] ?? 0)));
      least = Math.min(least, total * (checks[c]?.minutes ?? 0) + best(yes, rest, remedies) + best(no, rest, remedies));
    }
    return least;
  };
  return best(
    prior,
    checks.map((_, i) => i),
    cost.map((_, i) => i),
  );
};

const probability = fc.integer({ min: 0, max: 20 }).map((n) => n / 20);
const puzzles = fc.record({
  weights: fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 3, maxLength: 3 }),
  minutes: fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 3, maxLength: 3 }),
  checks: fc.array(
    fc.record({ minutes: fc.integer({ min: 1, max: 10 }), yes: fc.array(probability, { minLength: 3, maxLength: 3 }) }),
    { minLength: 1, maxLength: 3 },
  ),
});

const build = ({
  weights,
  minutes,
  checks,
}: {
  weights: number[];
  minutes: number[];
  checks: { minutes: number; yes: number[] }[];
}) => {
  const model = smallModel({
    faults: weights.map((weight, f) =>
      fault({
        id: `f${f}`,
        weight,
        minutes: minutes[f] ?? 1,
        answers: Object.fromEntries(checks.map(({ yes }, c) => [`c${c}`, { yes: yes[f] ?? 0, no: 1 - (yes[f] ?? 0) }])),
      }),
    ),
    checks: checks.map((own, c) => check({ id: `c${c}`, minutes: own.minutes })),
  });
  const drawn = weights.map((weight) => weight ** SURENESS_OF_WEIGHTS);
  const total = drawn.reduce((sum, weight) => sum + weight, 0);
  // Some mistakes say "yes" (all is well), the others either answer.
  const withMistakes = (yes: number): number => (1 - DEFAULT_SLIP) * yes + (DEFAULT_SLIP * (1 + SAYS_GOOD)) / 2;
  const puzzle: Puzzle = {
    prior: [...drawn.map((weight) => ((1 - UNEXPLAINED_PRIOR) * weight) / total), UNEXPLAINED_PRIOR],
    cost: minutes.map((own) => own + TURN_MINUTES),
    checks: checks.map((own) => ({ minutes: own.minutes + TURN_MINUTES, yes: [...own.yes, 0.5].map(withMistakes) })),
  };
  return { situation: situationFor(model, WIRE), puzzle };
};

describe('the choice of the next step', () => {
  it('finds the optimum of an exhaustive search when it looks to the end', () => {
    fc.assert(
      fc.property(puzzles, (parts) => {
        const { situation, puzzle } = build(parts);
        const belief = beliefFrom(situation, EMPTY);
        // A check that tells nothing (foregone) is left out of the look ahead; the optimum does not use it either.
        expect(rankSteps(situation, EMPTY, belief, { depth: 6, breadth: 10, freely: true })[0]?.minutes).toBeCloseTo(
          optimum(puzzle),
          6,
        );
      }),
      { numRuns: 150, seed: 11 },
    );
  });

  it('with the foresight it uses, promises at most 3 % more than the optimum on small models', () => {
    let worst = 1;
    fc.assert(
      fc.property(puzzles, (parts) => {
        const { situation, puzzle } = build(parts);
        const ratio =
          (rankSteps(situation, EMPTY, beliefFrom(situation, EMPTY), { ...USUAL_FORESIGHT, freely: true })[0]
            ?.minutes ?? Infinity) / optimum(puzzle);
        worst = Math.max(worst, ratio);
        expect(ratio).toBeGreaterThan(1 - 1e-9);
        expect(ratio).toBeLessThan(1.03);
      }),
      { numRuns: 300, seed: 12 },
    );
    console.log(`worst ratio to the optimum: ${worst.toFixed(4)}`);
  });

  it('asks when an answer saves more than it costs, worked by hand', () => {
    // Two equally likely faults, remedies 20 + 3 minutes each. A sure check of 1 + 3 minutes: about 4 + 23 against
    // 23 + 0.5·23 = 34.5. A check of 12 + 3 minutes no longer pays.
    const make = (minutes: number) =>
      situationFor(
        smallModel({
          faults: [fault({ id: 'a', minutes: 20, answers: { c: 'no' } }), fault({ id: 'b', minutes: 20 })],
          checks: [check({ id: 'c', minutes })],
        }),
        WIRE,
      );
    expect(chooseStep(make(1), EMPTY, beliefFrom(make(1), EMPTY)).kind).toBe('ask');
    expect(chooseStep(make(12), EMPTY, beliefFrom(make(12), EMPTY)).kind).toBe('try');
  });

  it('asks what keeps people and gear safe first, whatever it is worth', () => {
    const situation = situationFor(
      smallModel({
        faults: [
          fault({ id: 'likely', weight: 50, minutes: 1 }),
          fault({ id: 'level', weight: 0.1, answers: { cable: 'no' } }),
        ],
        checks: [check({ id: 'cable', minutes: 30, safety: true })],
      }),
      WIRE,
    );
    expect(chooseStep(situation, EMPTY, beliefFrom(situation, EMPTY))).toMatchObject({ kind: 'ask', check: 0 });
    const answered = withObservation(EMPTY, { check: 0, answer: 0, look: 'look' });
    expect(chooseStep(situation, answered, beliefFrom(situation, answered))).toMatchObject({ kind: 'try', fault: 0 });
  });

  describe('behind a check that opens others', () => {
    // "far" says how far it gets; which of two settings is wrong can be seen only of one that moves.
    const model = smallModel({
      faults: [
        fault({ id: 'left', stage: 'program', minutes: 30, answers: { far: 'no', side: 'no' } }),
        fault({ id: 'right', stage: 'program', minutes: 30, answers: { far: 'no' } }),
        fault({ id: 'dark', stage: 'power', weight: 0.4, answers: { lamp: 'no' } }),
      ],
      checks: [
        check({ id: 'far', stage: 'program' }),
        check({ id: 'lamp' }),
        check({ id: 'side', stage: 'program', after: { check: 'far', answers: ['no'] } }),
      ],
    });
    const situation = situationFor(model, WIRE);
    const asked = (answers: readonly (readonly [number, number])[], unsure: readonly number[] = []) => {
      const said = answers.reduce(
        (evidence, [check, answer]) => withObservation(evidence, { check, answer, look: 'look' }),
        EMPTY,
      );
      const evidence = { ...said, unsure: new Set(unsure) };
      return rankSteps(situation, evidence, beliefFrom(situation, evidence)).flatMap((choice) =>
        choice.kind === 'ask' && !choice.again ? [choice.check] : [],
      );
    };
    it('asks nothing while that was not asked', () => {
      expect(asked([[1, 0]])).not.toContain(2);
    });
    it('goes on after "not sure" once the rest says that it is so', () => {
      expect(asked([[1, 0]], [0])).toContain(2);
      expect(asked([[1, 1]], [0])).not.toContain(2);
    });
  });

  it('does not let an equal step depend on anything but the order of the files', () => {
    const situation = situationFor(
      smallModel({
        faults: [fault({ id: 'a', minutes: 30, answers: { c: 'no', d: 'no' } }), fault({ id: 'b', minutes: 30 })],
        checks: [check({ id: 'c' }), check({ id: 'd' })],
      }),
      WIRE,
    );
    const first = rankSteps(situation, EMPTY, beliefFrom(situation, EMPTY));
    expect(first[0]).toMatchObject({ kind: 'ask', check: 0 });
    expect(rankSteps(situation, EMPTY, beliefFrom(situation, EMPTY))).toEqual(first);
  });

  it('walks every fault of a small model to its remedy in the steps counted by hand', () => {
    // Four equal faults with dear remedies and two sure checks that halve them: 2 questions + 1 remedy each.
    const situation = situationFor(
      smallModel({
        faults: ['00', '01', '10', '11'].map((bits) =>
          fault({
            id: `f${bits}`,
            minutes: 30,
            answers: { c: bits[0] === '1' ? 'no' : 'yes', d: bits[1] === '1' ? 'no' : 'yes' },
          }),
        ),
        checks: [check({ id: 'c' }), check({ id: 'd' })],
      }),
      WIRE,
    );
    const courses = evaluatePolicy(situation, chooseStep);
    expect(courses.map(({ meanSteps }) => meanSteps)).toEqual([3, 3, 3, 3]);
    expect(averaged(situation, courses, ({ meanMinutes }) => meanMinutes)).toBeCloseTo(
      (1 + TURN_MINUTES) * 2 + 30 + TURN_MINUTES,
      9,
    );
  });
});
