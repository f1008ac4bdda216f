/**
 * The fault model narrowed to one context and laid out as numbers: who can be at fault, how likely beforehand, and what
 * each check answers under each fault. One fault is taken to be at work, or something the model does not know.
 */
import { appliesIn, contextKey, type WalkContext } from '../model/context.js';
import type { TriageModel } from '../model/model.js';
import type { AnswerOdds, CheckEntry, FaultEntry } from '../model/schema.js';

/** The share of walks whose cause the model does not hold; a guess, set so that a few surprises outweigh it. */
export const UNEXPLAINED_PRIOR = 0.02;
/** What a turn costs besides its own minutes: reading, going to the mount and back, typing. */
export const TURN_MINUTES = 3;
/** What it costs when the walk gives up and a person has to come and look. */
export const HAND_ON_MINUTES = 90;
/** How many walks of the shipped weights one confirmed outcome is weighed against. */
const PSEUDO_WALKS = 60;
const USUAL_UNSURE = 0.05;

export interface CheckNumbers {
  readonly entry: CheckEntry;
  readonly answers: readonly string[];
  readonly minutes: number;
  readonly unsure: number;
  /** [answer][hypothesis]: probability of the answer before mistakes; the last hypothesis is "unexplained". */
  readonly odds: readonly Float64Array[];
}

export interface Situation {
  readonly context: WalkContext;
  readonly faults: readonly FaultEntry[];
  readonly checks: readonly CheckNumbers[];
  /** Index of "unexplained" in every array over hypotheses. */
  readonly unexplained: number;
  readonly priors: Float64Array;
  /** Minutes to try the remedy of each fault and see whether it worked, the turn included. */
  readonly tryMinutes: Float64Array;
  readonly handOnMinutes: number;
  readonly faultIndex: ReadonlyMap<string, number>;
  readonly checkIndex: ReadonlyMap<string, number>;
  /** Position of a stage along the path. */
  readonly stagePosition: (stageId: string) => number;
}

const weightIn = (fault: FaultEntry, context: WalkContext): number =>
  (fault.weightOn ?? []).reduce(
    (weight, { path, system, client, factor }) =>
      (path === undefined || path === context.path) &&
      (system === undefined || system === context.system) &&
      (client === undefined || client === context.client)
        ? weight * factor
        : weight,
    fault.weight,
  );

const spread = (odds: AnswerOdds, answers: readonly string[]): number[] => {
  if (typeof odds === 'string') return answers.map((answer) => (answer === odds ? 1 : 0));
  const named = Object.values(odds).reduce((sum, value) => sum + value, 0);
  const silent = answers.filter((answer) => odds[answer] === undefined).length;
  if (silent === 0) return answers.map((answer) => (odds[answer] ?? 0) / named);
  return answers.map((answer) => odds[answer] ?? Math.max(0, 1 - named) / silent);
};

/**
 * What a check answers under a fault, an array beside `answers`: as the fault says; else as the check says for the
 * fault's stage, or for any; else, for a check of the whole chain behind the fault, not good; else good.
 */
const oddsUnder = (
  fault: FaultEntry,
  check: CheckEntry,
  answers: readonly string[],
  position: (stage: string) => number,
): number[] => {
  const named = fault.answers?.[check.id] ?? check.byStage?.[fault.stage] ?? check.usual;
  if (named !== undefined) return spread(named, answers);
  if (check.scope === 'chain' && position(fault.stage) < position(check.stage)) {
    const others = answers.length - 1;
    if (check.bad === undefined) return answers.map((answer) => (answer === check.good ? 0 : 1 / others));
    return answers.map((answer) =>
      answer === check.good ? 0 : answer === check.bad ? (others === 1 ? 1 : 0.9) : 0.1 / (others - 1),
    );
  }
  return answers.map((answer) => (answer === check.good ? 1 : 0));
};

const buildSituation = (
  model: TriageModel,
  context: WalkContext,
  outcomes: Readonly<Record<string, number>>,
): Situation => {
  const path = context.path === null ? undefined : model.path(context.path);
  const order = path?.stages ?? model.stages.map(({ id }) => id);
  const positions = new Map(order.map((stage, i) => [stage, i]));
  const stagePosition = (stage: string): number => positions.get(stage) ?? order.length;
  const faults = model.faults.filter((fault) => positions.has(fault.stage) && appliesIn(fault.only, context));
  const unexplained = faults.length;

  const allWeights = model.faults.reduce((sum, { weight }) => sum + weight, 0);
  const weights = faults.map((fault) => {
    const pseudoCount = (PSEUDO_WALKS * fault.weight) / allWeights;
    return (weightIn(fault, context) * (pseudoCount + (outcomes[fault.id] ?? 0))) / pseudoCount;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const priors = Float64Array.from([
    ...weights.map((weight) => ((1 - UNEXPLAINED_PRIOR) * weight) / total),
    UNEXPLAINED_PRIOR,
  ]);

  const checks = model.checks
    .filter((check) => positions.has(check.stage) && appliesIn(check.only, context))
    .map((entry): CheckNumbers => {
      const answers = entry.answers.map(({ id }) => id);
      const columns = faults.map((fault) => oddsUnder(fault, entry, answers, stagePosition));
      // Something unknown may break anything or nothing here.
      columns.push(answers.map((answer) => (answer === entry.good ? 0.5 : 0.5 / (answers.length - 1))));
      return {
        entry,
        answers,
        minutes: entry.minutes + TURN_MINUTES,
        unsure: entry.unsure ?? USUAL_UNSURE,
        odds: answers.map((_, a) => Float64Array.from(columns, (column) => column[a] ?? 0)),
      };
    });

  return {
    context,
    faults,
    checks,
    unexplained,
    priors,
    stagePosition,
    tryMinutes: Float64Array.from(faults, ({ remedy }) => remedy.minutes + TURN_MINUTES),
    handOnMinutes: HAND_ON_MINUTES,
    faultIndex: new Map(faults.map(({ id }, i) => [id, i])),
    checkIndex: new Map(checks.map(({ entry }, i) => [entry.id, i])),
  };
};

const kept = new WeakMap<TriageModel, Map<string, Situation>>();
const KEPT_LIMIT = 200;

/**
 * @param outcomes causes confirmed in this club, by fault id; they join the shipped weights as counts join a Dirichlet prior
 */
export const situationFor = (
  model: TriageModel,
  context: WalkContext,
  outcomes: Readonly<Record<string, number>> = {},
): Situation => {
  const key = `${contextKey(context)} ${Object.entries(outcomes)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([id, n]) => `${id}=${n}`)
    .join(' ')}`;
  const cache = kept.get(model) ?? new Map<string, Situation>();
  kept.set(model, cache);
  const known = cache.get(key);
  if (known !== undefined) return known;
  if (cache.size >= KEPT_LIMIT) cache.clear();
  const made = buildSituation(model, context, outcomes);
  cache.set(key, made);
  return made;
};
