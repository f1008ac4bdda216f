/** From what was said to what is believed: Bayes' rule over the faults of a situation, with room for mistaken answers. */
import type { TriageModel } from '../model/model.js';
import type { CheckNumbers, Situation } from './situation.js';
import { UNSURE, type WalkEvent } from '../walk/walk-state.js';

/** How often an answer is wrong: a member's first look, a second look at the same thing, a line of pasted text. */
export const MISTAKE = { look: 0.03, relook: 0.02, text: 0.02 } as const;
export type Look = keyof typeof MISTAKE;

/** Chance that the right remedy shows no cure (done badly, seen wrongly), and that a wrong one seems to cure. */
const REMEDY_MISSES = 0.05;
const REMEDY_FLUKES = 0.01;

/** Probability of an answer under each hypothesis, mistakes included. */
export const answerLikelihood = (check: CheckNumbers, answer: number, hypothesis: number, look: Look): number => {
  const slip = MISTAKE[look];
  return (1 - slip) * (check.odds[answer]?.[hypothesis] ?? 0) + slip / check.answers.length;
};

/** How a thing that is `real` is reported, mistakes included. */
const reported = (answer: number, real: number, look: Look, answers: number): number =>
  (answer === real ? 1 - MISTAKE[look] : 0) + MISTAKE[look] / answers;

/**
 * Probability of a second answer to the same check, given the first: both looks see one and the same thing, so under each
 * hypothesis what it is gets summed over, and only the mistakes are independent.
 */
export const secondLookLikelihood = (
  check: CheckNumbers,
  first: Pick<Observation, 'answer' | 'look'>,
  answer: number,
  hypothesis: number,
  look: Look,
): number => {
  const n = check.answers.length;
  let both = 0;
  for (let real = 0; real < n; real++) {
    both +=
      (check.odds[real]?.[hypothesis] ?? 0) *
      reported(first.answer, real, first.look, n) *
      reported(answer, real, look, n);
  }
  return both / answerLikelihood(check, first.answer, hypothesis, first.look);
};

export interface Observation {
  readonly check: number;
  readonly answer: number;
  readonly look: Look;
}

/** What of a walk still counts, in a situation. */
export interface Evidence {
  readonly observations: readonly Observation[];
  /** Fault index → how many times its remedy was tried without a cure. */
  readonly tried: ReadonlyMap<number, number>;
  /** Remedies that are not to be tried again: could not be done, or done and something changed. */
  readonly closed: ReadonlySet<number>;
  /** Likelihood factors from texts and from the command that took over, by fault index. */
  readonly factors: ReadonlyMap<number, number>;
  /** Checks that gave "not sure". */
  readonly unsure: ReadonlySet<number>;
  /** Checks whose answers were set aside when a remedy changed something. */
  readonly setAside: ReadonlySet<number>;
}

const FOUND_FACTOR = 30;

/**
 * Replays the events. After a remedy changed something without curing, two causes were at work: answers about the chain
 * from that stage on, and remedies tried there, were given under the removed fault and are set aside; what lies before
 * it, and settings looked at one by one, still hold.
 */
export const gatherEvidence = (model: TriageModel, situation: Situation, events: readonly WalkEvent[]): Evidence => {
  let observations: Observation[] = [];
  let tried = new Map<number, number>();
  const closed = new Set<number>();
  let factors = new Map<number, number>();
  const unsure = new Set<number>();
  let setAside = new Set<number>();

  const observe = (checkId: string, answerId: string, look: Look): void => {
    const check = situation.checkIndex.get(checkId);
    const numbers = check === undefined ? undefined : situation.checks[check];
    if (check === undefined || numbers === undefined) return;
    if (answerId === UNSURE) {
      unsure.add(check);
      return;
    }
    const answer = numbers.answers.indexOf(answerId);
    if (answer < 0) return;
    unsure.delete(check);
    setAside.delete(check);
    const before = observations.filter((o) => o.check === check);
    // Said again: the second look counts beside the first; a third replaces the second.
    const kept = before.length > 1 ? observations.filter((o) => o !== before[1]) : observations;
    observations = [...kept, { check, answer, look: before.length > 0 && look === 'look' ? 'relook' : look }];
  };

  for (const event of events) {
    switch (event.kind) {
      case 'text': {
        const said = event.evidence.flatMap((id) => model.evidence.filter((entry) => entry.id === id));
        for (const [checkId, answerId] of agreedAnswers(said)) observe(checkId, answerId, 'text');
        for (const { suggests } of said) {
          for (const [faultId, factor] of Object.entries(suggests ?? {})) {
            const index = situation.faultIndex.get(faultId);
            if (index !== undefined) factors.set(index, (factors.get(index) ?? 1) * factor);
          }
        }
        break;
      }
      case 'answer':
        observe(event.check, event.answer, 'look');
        break;
      case 'found':
        for (const [i, fault] of situation.faults.entries()) {
          if (fault.handsOverTo !== undefined)
            factors.set(
              i,
              (factors.get(i) ?? 1) *
                (fault.astrayCauses?.includes(event.cause) === true ? FOUND_FACTOR : 1 / FOUND_FACTOR),
            );
        }
        break;
      case 'try': {
        const index = situation.faultIndex.get(event.fault);
        const fault = index === undefined ? undefined : situation.faults[index];
        if (index === undefined || fault === undefined) break;
        if (event.outcome === 'could-not') closed.add(index);
        if (event.outcome === 'same') tried.set(index, (tried.get(index) ?? 0) + 1);
        if (event.outcome === 'changed') {
          closed.add(index);
          const from = situation.stagePosition(fault.stage);
          const stale = (check: number): boolean => {
            const entry = situation.checks[check]?.entry;
            if (entry === undefined) return true;
            if (fault.answers?.[entry.id] !== undefined) return true;
            return (
              situation.stagePosition(entry.stage) >= from && (entry.scope === 'chain' || entry.byStage !== undefined)
            );
          };
          setAside = new Set([...setAside, ...observations.map(({ check }) => check).filter(stale)]);
          observations = observations.filter(({ check }) => !stale(check));
          tried = new Map([...tried].filter(([i]) => situation.stagePosition(situation.faults[i]?.stage ?? '') < from));
          tried.set(index, 1);
          factors = new Map();
        }
        break;
      }
      case 'path':
      case 'system':
      case 'client':
        break;
    }
  }
  return { observations, tried, closed, factors, unsure, setAside };
};

/** Answers on which the matched patterns agree; where two differ, neither counts. */
export const agreedAnswers = (
  entries: readonly { readonly answers?: Readonly<Record<string, string>> | undefined }[],
): ReadonlyMap<string, string> => {
  const agreed = new Map<string, string>();
  const torn = new Set<string>();
  for (const { answers } of entries) {
    for (const [check, answer] of Object.entries(answers ?? {})) {
      if ((agreed.get(check) ?? answer) !== answer) torn.add(check);
      agreed.set(check, answer);
    }
  }
  for (const check of torn) agreed.delete(check);
  return agreed;
};

/** Scales to a sum of 1; returns the sum before (0 leaves the array as it is). */
export const normalise = (belief: Float64Array): number => {
  let sum = 0;
  for (const p of belief) sum += p;
  if (sum > 0) for (let i = 0; i < belief.length; i++) belief[i] = (belief[i] ?? 0) / sum;
  return sum;
};

/** Takes one answer into a belief (in place, not normalised). `earlier`: the first look at the same thing, where this is the second. */
export const applyAnswer = (
  belief: Float64Array,
  situation: Situation,
  { check, answer, look }: Observation,
  earlier?: Observation,
): void => {
  const numbers = situation.checks[check];
  if (numbers === undefined) return;
  for (let h = 0; h < belief.length; h++) {
    belief[h] =
      (belief[h] ?? 0) *
      (earlier === undefined
        ? answerLikelihood(numbers, answer, h, look)
        : secondLookLikelihood(numbers, earlier, answer, h, look));
  }
};

/** Takes "no cure" of one remedy into a belief (in place, not normalised). */
export const applyNoCure = (belief: Float64Array, fault: number): void => {
  for (let h = 0; h < belief.length; h++)
    belief[h] = (belief[h] ?? 0) * (h === fault ? REMEDY_MISSES : 1 - REMEDY_FLUKES);
};

export interface Belief {
  /** Over the faults of the situation, then "unexplained"; sums to 1. */
  readonly probabilities: Float64Array;
  /** For each observation, in order: the probability that the answer was a mistake. */
  readonly mistaken: readonly number[];
}

export const beliefFrom = (situation: Situation, evidence: Evidence): Belief => {
  const probabilities = Float64Array.from(situation.priors);
  for (const [fault, factor] of evidence.factors) probabilities[fault] = (probabilities[fault] ?? 0) * factor;
  normalise(probabilities);
  const first = new Map<number, Observation>();
  for (const observation of evidence.observations) {
    applyAnswer(probabilities, situation, observation, first.get(observation.check));
    if (!first.has(observation.check)) first.set(observation.check, observation);
    normalise(probabilities);
  }
  for (const [fault, times] of evidence.tried) for (let i = 0; i < times; i++) applyNoCure(probabilities, fault);
  normalise(probabilities);
  const mistaken = evidence.observations.map((own) => {
    const numbers = situation.checks[own.check];
    const looks = evidence.observations.filter(({ check }) => check === own.check);
    if (numbers === undefined) return 0;
    let sum = 0;
    for (let h = 0; h < probabilities.length; h++) {
      let right = 0;
      let all = 0;
      for (let real = 0; real < numbers.answers.length; real++) {
        const seen = looks.reduce(
          (product, { answer, look }) => product * reported(answer, real, look, numbers.answers.length),
          numbers.odds[real]?.[h] ?? 0,
        );
        all += seen;
        if (real === own.answer) right = seen;
      }
      sum += (probabilities[h] ?? 0) * (1 - right / all);
    }
    return sum;
  });
  return { probabilities, mistaken };
};
