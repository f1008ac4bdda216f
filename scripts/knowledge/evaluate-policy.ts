/** Follows a policy through every course a walk can take, fault by fault, and says how many steps and minutes the cure took. */
import { beliefFrom, type Belief } from '../../bot/triage/engine/belief.js';
import type { Evidence } from '../../bot/triage/engine/evidence.js';
import type { Observation } from '../../bot/triage/engine/mistakes.js';
import type { Choice } from '../../bot/triage/engine/choice.js';
import type { Situation } from '../../bot/triage/engine/situation.js';

export type Policy = (situation: Situation, evidence: Evidence, belief: Belief) => Choice;

/** What became of one fault, averaged over what its checks may answer; shares add up to 1. */
export interface FaultCourse {
  readonly fault: number;
  readonly meanSteps: number;
  readonly meanMinutes: number;
  readonly cured: number;
  readonly handedOn: number;
  /** Cured or handed on in at most ten steps. */
  readonly within10: number;
}

export const EMPTY: Evidence = {
  observations: [],
  tried: new Map(),
  attempts: new Map(),
  notTaken: new Set(),
  mended: new Set(),
  factors: new Map(),
  unsure: new Set(),
  turns: 0,
  setAside: new Set(),
};

export const withObservation = (evidence: Evidence, observation: Observation): Evidence => ({
  ...evidence,
  observations: [...evidence.observations, observation],
  turns: evidence.turns + 1,
});
export const withTry = (evidence: Evidence, fault: number): Evidence => ({
  ...evidence,
  turns: evidence.turns + 1,
  tried: new Map([...evidence.tried, [fault, (evidence.tried.get(fault) ?? 0) + 1]]),
  attempts: new Map([...evidence.attempts, [fault, (evidence.attempts.get(fault) ?? 0) + 1]]),
});

const GIVE_UP_AFTER = 60;
const NEGLIGIBLE = 1e-7;

/**
 * Exact, not sampled: at each step the faults still possible split by what the check answers under them. Answers are as the
 * model has them, without mistakes and without "not sure"; the right remedy always cures.
 */
export const evaluatePolicy = (situation: Situation, policy: Policy): readonly FaultCourse[] => {
  const n = situation.faults.length;
  const steps = new Float64Array(n);
  const minutes = new Float64Array(n);
  const cured = new Float64Array(n);
  const handedOn = new Float64Array(n);
  const within10 = new Float64Array(n);

  const follow = (weights: Float64Array, evidence: Evidence, taken: number, spent: number): void => {
    const choice = policy(situation, evidence, beliefFrom(situation, evidence));
    const end = (fault: number, how: Float64Array, atSteps: number, atMinutes: number): void => {
      const w = weights[fault] ?? 0;
      steps[fault] = (steps[fault] ?? 0) + w * atSteps;
      minutes[fault] = (minutes[fault] ?? 0) + w * atMinutes;
      how[fault] = (how[fault] ?? 0) + w;
      if (atSteps <= 10) within10[fault] = (within10[fault] ?? 0) + w;
    };
    if (choice.kind === 'handOn' || taken >= GIVE_UP_AFTER) {
      for (let f = 0; f < n; f++) if ((weights[f] ?? 0) > 0) end(f, handedOn, taken, spent);
      return;
    }
    if (choice.kind === 'try') {
      const now = spent + (situation.tryMinutes[choice.fault] ?? 0);
      if ((weights[choice.fault] ?? 0) > 0) end(choice.fault, cured, taken + 1, now);
      const rest = Float64Array.from(weights);
      rest[choice.fault] = 0;
      if (rest.some((w) => w > NEGLIGIBLE)) follow(rest, withTry(evidence, choice.fault), taken + 1, now);
      return;
    }
    const numbers = situation.checks[choice.check];
    if (numbers === undefined) return;
    for (let answer = 0; answer < numbers.answers.length; answer++) {
      const part = weights.map((w, f) => w * (numbers.odds[answer]?.[f] ?? 0));
      if (part.some((w) => w > NEGLIGIBLE)) {
        follow(
          part,
          withObservation(evidence, { check: choice.check, answer, look: choice.again ? 'relook' : 'look' }),
          taken + 1,
          spent + numbers.minutes,
        );
      }
    }
  };
  follow(new Float64Array(n).fill(1), EMPTY, 0, 0);
  return situation.faults.map((_, f) => {
    const total = (cured[f] ?? 0) + (handedOn[f] ?? 0);
    const share = (part: Float64Array): number => (part[f] ?? 0) / total;
    return {
      fault: f,
      meanSteps: share(steps),
      meanMinutes: share(minutes),
      cured: share(cured),
      handedOn: share(handedOn),
      within10: share(within10),
    };
  });
};

/** Over the faults of a situation, weighted by their priors. */
export const averaged = (
  situation: Situation,
  courses: readonly FaultCourse[],
  value: (course: FaultCourse) => number,
): number => {
  let sum = 0;
  let weight = 0;
  for (const course of courses) {
    const prior = situation.priors[course.fault] ?? 0;
    sum += prior * value(course);
    weight += prior;
  }
  return sum / weight;
};
