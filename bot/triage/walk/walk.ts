/** A walk from the first complaint to the cure, as pure functions over its record: start, answer, go back, next step. */
import { isProblem } from '../../ground/problem.js';
import type { Belief } from '../engine/belief.js';
import type { Choice } from '../engine/choice.js';
import { rankSteps, type Foresight } from '../engine/choose-step.js';
import { gatherEvidence, HOW_FAR, type Evidence } from '../engine/evidence.js';
import { KNOWN_CAUSE, likeliest, remedyOnAnyWay } from '../engine/rules-of-order.js';
import { situationFor, type Situation } from '../engine/situation.js';
import { believed, rankedSteps } from '../engine/weigh.js';
import type { WalkContext } from '../model/context.js';
import type { TriageModel } from '../model/model.js';
import {
  CLIENTS,
  NO_CLIENT,
  SYSTEMS,
  type CheckEntry,
  type Client,
  type FaultEntry,
  type System,
} from '../model/schema.js';
import { asksHowFarNow, mendedBy, remedyAtOnce, verifyingCheck } from './after-remedy.js';
import { comesBeforeTheWay, FOUND_BY_THEM, namedNext, type Named } from './named-next.js';
import { numbersWanted, NUMBERS } from './numbers.js';
import { fieldFor, NO_COMPUTER, openingOf, pathMatters, type Opening, type OpeningField } from './opening.js';
import { toldNext } from './told-next.js';
import {
  EVENT_LIMIT,
  TRY_OUTCOMES,
  UNSURE,
  type Speaker,
  type TryOutcome,
  type WalkEvent,
  type WalkState,
} from './walk-state.js';

export type Step =
  | { readonly kind: 'ask'; readonly id: OpeningField; readonly opening: true; readonly paths: readonly string[] }
  | {
      readonly kind: 'ask';
      readonly id: string;
      readonly opening: false;
      readonly check: CheckEntry;
      /** `again`: the answer before fits ill. `verify`: has the likeliest cause's remedy taken? `supposed`: the member wonders. */
      readonly because: 'again' | 'changed' | 'verify' | 'supposed' | null;
    }
  /** The numbers of a miss, in one line or a form. */
  | { readonly kind: 'numbers'; readonly id: typeof NUMBERS }
  /** `lasting`: the remedy helped and the trouble came back; what makes the cure last. */
  | {
      readonly kind: 'try';
      readonly id: string;
      readonly fault: FaultEntry;
      readonly otherwise: boolean;
      readonly lasting?: boolean;
    }
  | { readonly kind: 'done'; readonly id: string; readonly fault: FaultEntry }
  /** `fault`: the cause is known and a person must mend it. */
  | { readonly kind: 'handOn'; readonly id: string; readonly fault: FaultEntry | null };

/** All that follows from a record at one moment. */
export interface Assessment {
  readonly context: WalkContext;
  readonly situation: Situation;
  readonly evidence: Evidence;
  readonly belief: Belief;
  readonly step: Step;
  /** What the step was picked from, cheapest first; empty during the opening questions. */
  readonly ranked: readonly Choice[];
  /** A path, and a link of the chain, in words. */
  readonly pathTitle: (path: string) => string;
  readonly linkTitle: (link: string) => string;
}

export interface Known {
  readonly path?: string | null;
  readonly system?: System | null;
  readonly client?: Client | null;
}

/** A new record. `known`: what the member has saved about the gear; those questions are skipped. */
export const startWalk = (names: WalkState['names'], known: Known = {}): WalkState => {
  const events: WalkEvent[] = [];
  if (known.path != null) events.push({ kind: 'path', value: known.path, by: null });
  if (known.system != null) events.push({ kind: 'system', value: known.system, by: null });
  if (known.client != null) events.push({ kind: 'client', value: known.client, by: null });
  return { version: 1, names, events, turns: [] };
};

/** With the cause, where it is known and its remedies are spent. */
const handOnStep = (situation: Situation, belief: Belief): Step => {
  const top = likeliest(situation, belief);
  const known = top.probability >= KNOWN_CAUSE ? situation.faults[top.fault] : undefined;
  return { kind: 'handOn', id: known?.id ?? 'unexplained', fault: known ?? null };
};

const stepFor = (situation: Situation, evidence: Evidence, belief: Belief, best: Choice | undefined): Step => {
  const check = best?.kind === 'ask' ? situation.checks[best.check]?.entry : undefined;
  if (best?.kind === 'ask' && check !== undefined)
    return { kind: 'ask', id: check.id, opening: false, check, because: best.again ? 'again' : null };
  const fault = best?.kind === 'try' ? situation.faults[best.fault] : undefined;
  if (best?.kind === 'try' && fault !== undefined)
    return { kind: 'try', id: fault.id, fault, otherwise: best.otherwise };
  return handOnStep(situation, belief);
};

const namedStep = (next: Named): Step => {
  if (next.kind === 'found') return { kind: 'handOn', id: FOUND_BY_THEM, fault: null };
  if (next.kind === 'remedy') return { kind: 'try', id: next.fault.id, fault: next.fault, otherwise: false };
  return { kind: 'ask', id: next.check.id, opening: false, check: next.check, because: 'supposed' };
};

/** The first of those steps, or the question of system or program that it hangs on. */
const pickedFrom = (
  ranked: readonly Choice[],
  opening: Opening,
  { situation, evidence, belief }: Pick<Assessment, 'situation' | 'evidence' | 'belief'>,
): Pick<Assessment, 'step' | 'ranked'> => {
  const field = fieldFor(opening, situation, belief, ranked[0]);
  if (field !== null) return { step: { kind: 'ask', id: field, opening: true, paths: opening.paths }, ranked: [] };
  return { step: stepFor(situation, evidence, belief, ranked[0]), ranked };
};

const nextStep = (
  model: TriageModel,
  state: WalkState,
  opening: Opening,
  at: Pick<Assessment, 'situation' | 'evidence' | 'belief'>,
  foresight: Foresight | undefined,
): Pick<Assessment, 'step' | 'ranked'> => {
  const { situation, evidence, belief } = at;
  const named = namedNext(at, state.events);
  if (named !== null && comesBeforeTheWay(named, opening.open.has('path'), state.events))
    return { step: namedStep(named), ranked: [] };
  if (opening.open.has('path') && pathMatters(situation, evidence, belief)) {
    const anyWay = remedyOnAnyWay(situation, evidence, belief, opening.paths);
    return anyWay === null
      ? { step: { kind: 'ask', id: 'path', opening: true, paths: opening.paths }, ranked: [] }
      : pickedFrom([anyWay], opening, at);
  }
  const remedy = remedyAtOnce(model, { situation, evidence }, state.events);
  if (remedy !== null) return { step: { kind: 'try', id: remedy.fault.id, ...remedy }, ranked: [] };
  const howFar = asksHowFarNow(model, situation, state.events) ? model.check(HOW_FAR) : undefined;
  if (howFar !== undefined)
    return { step: { kind: 'ask', id: HOW_FAR, opening: false, check: howFar, because: 'changed' }, ranked: [] };
  const verifying = verifyingCheck(situation, evidence, belief, state.events);
  if (verifying !== undefined)
    return { step: { kind: 'ask', id: verifying.id, opening: false, check: verifying, because: 'verify' }, ranked: [] };
  if (named !== null) return { step: namedStep(named), ranked: [] };
  const told = toldNext({ situation, evidence, belief });
  if (told !== null) return { step: namedStep({ kind: 'remedy', fault: told }), ranked: [] };
  if (numbersWanted(situation, evidence, belief, state.events))
    return { step: { kind: 'numbers', id: NUMBERS }, ranked: [] };
  const ranked =
    foresight === undefined ? rankedSteps(situation, evidence) : rankSteps(situation, evidence, belief, foresight);
  return pickedFrom(ranked, opening, at);
};

/**
 * Where the walk stands and what comes next. The same record, model and outcome counts always give the same step.
 * @param outcomes causes confirmed in this club, by fault id
 */
export const assess = (
  model: TriageModel,
  state: WalkState,
  outcomes: Readonly<Record<string, number>> = {},
  foresight?: Foresight,
): Assessment => {
  const opening = openingOf(model, state.events);
  const { context } = opening;
  const situation = situationFor(model, context, outcomes);
  const evidence = gatherEvidence(situation, state.events);
  const belief = believed(situation, evidence);
  const linkTitle = (link: string): string => model.link(link)?.title ?? link;
  const pathTitle = (path: string): string => model.path(path)?.title ?? path;
  const at = { context, situation, evidence, belief, linkTitle, pathTitle };

  const cured = model.fault(mendedBy(state) ?? '');
  if (cured !== undefined) return { ...at, step: { kind: 'done', id: cured.id, fault: cured }, ranked: [] };
  return { ...at, ...nextStep(model, state, opening, at, foresight) };
};

/** Why an answer could not be taken. */
export interface AnswerProblem {
  readonly problem: 'unknown-step' | 'unknown-answer' | 'walk-too-long';
  readonly allowed: readonly string[];
}

const notOneOf = (allowed: readonly string[]): AnswerProblem => ({ problem: 'unknown-answer', allowed });

const openingEvent = (
  model: TriageModel,
  field: OpeningField,
  answerId: string,
  by: Speaker,
): WalkEvent | AnswerProblem => {
  // Nothing reaches the mount but the hand controller.
  if (answerId === NO_COMPUTER) return { kind: 'client', value: NO_CLIENT, by };
  if (field === 'path') {
    const allowed = [...model.paths.map(({ id }) => id), UNSURE];
    if (!allowed.includes(answerId)) return notOneOf(allowed);
    return { kind: 'path', value: answerId === UNSURE ? null : answerId, by };
  }
  if (field === 'system') {
    const value = SYSTEMS.find((system) => system === answerId) ?? null;
    return value !== null || answerId === UNSURE ? { kind: 'system', value, by } : notOneOf([...SYSTEMS, UNSURE]);
  }
  const value = CLIENTS.find((client) => client === answerId) ?? null;
  return value !== null || answerId === UNSURE ? { kind: 'client', value, by } : notOneOf([...CLIENTS, UNSURE]);
};

/** Step ids that are no check and no fault: what was read, and the numbers of a miss. */
const sideEvent = (stepId: string, answerId: string, by: Speaker): WalkEvent | AnswerProblem | null => {
  if (stepId === 'found') return { kind: 'found', cause: answerId.slice(0, 80), causes: [], said: '', by };
  if (stepId === 'not') return { kind: 'not-so', what: answerId.slice(0, 80), by };
  if (stepId === 'read') return answerId === 'right' ? { kind: 'right', by } : notOneOf(['right']);
  if (stepId === NUMBERS)
    return answerId === UNSURE ? { kind: 'answer', check: NUMBERS, answer: UNSURE, by } : notOneOf([UNSURE]);
  return null;
};

const eventFor = (model: TriageModel, stepId: string, answerId: string, by: Speaker): WalkEvent | AnswerProblem => {
  if (stepId === 'path' || stepId === 'system' || stepId === 'client') return openingEvent(model, stepId, answerId, by);
  const side = sideEvent(stepId, answerId, by);
  if (side !== null) return side;
  const check = model.check(stepId);
  if (check !== undefined) {
    const allowed = [...check.answers.map(({ id }) => id), UNSURE];
    return allowed.includes(answerId) ? { kind: 'answer', check: stepId, answer: answerId, by } : notOneOf(allowed);
  }
  if (model.fault(stepId) === undefined) return { problem: 'unknown-step', allowed: [] };
  const outcome: TryOutcome | undefined = TRY_OUTCOMES.find((known) => known === answerId);
  return outcome === undefined ? notOneOf(TRY_OUTCOMES) : { kind: 'try', fault: stepId, outcome, by };
};

/** Takes one answer: to an opening question, a check, or whether a remedy worked. */
export const answerStep = (
  model: TriageModel,
  state: WalkState,
  stepId: string,
  answerId: string,
  by: Speaker,
): WalkState | AnswerProblem => {
  if (state.events.length >= EVENT_LIMIT) return { problem: 'walk-too-long', allowed: [] };
  const event = eventFor(model, stepId, answerId, by);
  return isProblem(event) ? event : { ...state, events: [...state.events, event] };
};

/** Leaves a question that was answered in words which were not understood; a check may come once more later. */
export const passStep = (
  model: TriageModel,
  state: WalkState,
  stepId: string,
  by: Speaker,
): WalkState | AnswerProblem =>
  model.check(stepId) === undefined || state.events.length >= EVENT_LIMIT
    ? answerStep(model, state, stepId, UNSURE, by)
    : { ...state, events: [...state.events, { kind: 'passed', check: stepId, by }] };

/** Takes an answer in place of what was answered to the same check before. */
export const answerInstead = (
  model: TriageModel,
  state: WalkState,
  { check, answer }: { readonly check: string; readonly answer: string },
  by: Speaker,
): WalkState => {
  const next = answerStep(
    model,
    { ...state, events: [...state.events, { kind: 'slip', check, by }] },
    check,
    answer,
    by,
  );
  return isProblem(next) ? state : next;
};
