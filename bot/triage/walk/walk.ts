/** A walk from the first complaint to the cure, as pure functions over its record: start, answer, go back, next step. */
import { beliefFrom, gatherEvidence, type Belief, type Evidence } from '../engine/belief.js';
import { rankSteps, type Choice, type Foresight } from '../engine/choose-step.js';
import type { WalkContext } from '../model/context.js';
import type { TriageModel } from '../model/model.js';
import { readEvidence, type ReadText } from './read-evidence.js';
import { CLIENTS, SYSTEMS, type CheckEntry, type Client, type FaultEntry, type System } from '../model/schema.js';
import { situationFor, type Situation } from '../engine/situation.js';
import { TRY_OUTCOMES, UNSURE, type Speaker, type TryOutcome, type WalkEvent, type WalkState } from './walk-state.js';

export type OpeningField = 'path' | 'system' | 'client';

export type Step =
  | { readonly kind: 'ask'; readonly id: OpeningField; readonly opening: true }
  | {
      readonly kind: 'ask';
      readonly id: string;
      readonly opening: false;
      readonly check: CheckEntry;
      /** Asked before; the answer fits ill with the rest. */ readonly again: boolean;
    }
  | { readonly kind: 'try'; readonly id: string; readonly fault: FaultEntry }
  | { readonly kind: 'done'; readonly id: string; readonly fault: FaultEntry }
  | { readonly kind: 'handOn'; readonly id: 'unexplained' };

/** All that follows from a record at one moment. */
export interface Assessment {
  readonly context: WalkContext;
  readonly situation: Situation;
  readonly evidence: Evidence;
  readonly belief: Belief;
  readonly step: Step;
  /** What the step was picked from, cheapest first; empty during the opening questions. */
  readonly ranked: readonly Choice[];
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
  return { version: 1, names, events };
};

interface Opening {
  readonly context: WalkContext;
  readonly missing: OpeningField | null;
}

const openingOf = (model: TriageModel, events: readonly WalkEvent[]): Opening => {
  let pathId: string | null | undefined;
  let system: System | null | undefined;
  let client: Client | null | undefined;
  for (const event of events) {
    if (event.kind === 'path')
      pathId = event.value !== null && model.path(event.value) === undefined ? undefined : event.value;
    if (event.kind === 'system') system = event.value;
    if (event.kind === 'client') client = event.value;
  }
  const path = pathId == null ? undefined : model.path(pathId);
  if (path?.systems.length === 1) system = path.systems[0];
  if (path?.clients.length === 1) client = path.clients[0];
  const missing =
    pathId === undefined ? 'path' : system === undefined ? 'system' : client === undefined ? 'client' : null;
  return { context: { path: pathId ?? null, system: system ?? null, client: client ?? null }, missing };
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
  const { context, missing } = openingOf(model, state.events);
  const situation = situationFor(model, context, outcomes);
  const evidence = gatherEvidence(model, situation, state.events);
  const belief = beliefFrom(situation, evidence);
  const at = { context, situation, evidence, belief };

  const last = state.events.at(-1);
  const cured = last?.kind === 'try' && last.outcome === 'works' ? model.fault(last.fault) : undefined;
  if (cured !== undefined) return { ...at, step: { kind: 'done', id: cured.id, fault: cured }, ranked: [] };
  if (missing !== null) return { ...at, step: { kind: 'ask', id: missing, opening: true }, ranked: [] };

  const ranked = rankSteps(situation, evidence, belief, foresight);
  const best = ranked[0];
  const check = best?.kind === 'ask' ? situation.checks[best.check]?.entry : undefined;
  const fault = best?.kind === 'try' ? situation.faults[best.fault] : undefined;
  if (best?.kind === 'ask' && check !== undefined)
    return { ...at, ranked, step: { kind: 'ask', id: check.id, opening: false, check, again: best.again } };
  if (fault !== undefined) return { ...at, ranked, step: { kind: 'try', id: fault.id, fault } };
  return { ...at, ranked, step: { kind: 'handOn', id: 'unexplained' } };
};

/** Why an answer could not be taken. */
export interface AnswerTrouble {
  readonly trouble: 'unknown-step' | 'unknown-answer' | 'walk-too-long';
  readonly allowed: readonly string[];
}

const EVENT_LIMIT = 300;

const eventFor = (model: TriageModel, stepId: string, answerId: string, by: Speaker): WalkEvent | AnswerTrouble => {
  const notOneOf = (allowed: readonly string[]): AnswerTrouble => ({ trouble: 'unknown-answer', allowed });
  if (stepId === 'path') {
    const allowed = [...model.paths.map(({ id }) => id), UNSURE];
    return allowed.includes(answerId)
      ? { kind: 'path', value: answerId === UNSURE ? null : answerId, by }
      : notOneOf(allowed);
  }
  if (stepId === 'system') {
    const value = SYSTEMS.find((system) => system === answerId);
    return value !== undefined || answerId === UNSURE
      ? { kind: 'system', value: value ?? null, by }
      : notOneOf([...SYSTEMS, UNSURE]);
  }
  if (stepId === 'client') {
    const value = CLIENTS.find((client) => client === answerId);
    return value !== undefined || answerId === UNSURE
      ? { kind: 'client', value: value ?? null, by }
      : notOneOf([...CLIENTS, UNSURE]);
  }
  if (stepId === 'found') return { kind: 'found', cause: answerId.slice(0, 80), by };
  const check = model.check(stepId);
  if (check !== undefined) {
    const allowed = [...check.answers.map(({ id }) => id), UNSURE];
    return allowed.includes(answerId) ? { kind: 'answer', check: stepId, answer: answerId, by } : notOneOf(allowed);
  }
  if (model.fault(stepId) !== undefined) {
    const outcome: TryOutcome | undefined = TRY_OUTCOMES.find((known) => known === answerId);
    return outcome === undefined ? notOneOf(TRY_OUTCOMES) : { kind: 'try', fault: stepId, outcome, by };
  }
  return { trouble: 'unknown-step', allowed: [] };
};

/** Takes one answer: to an opening question, a check, or whether a remedy worked. */
export const answerStep = (
  model: TriageModel,
  state: WalkState,
  stepId: string,
  answerId: string,
  by: Speaker,
): WalkState | AnswerTrouble => {
  if (state.events.length >= EVENT_LIMIT) return { trouble: 'walk-too-long', allowed: [] };
  const event = eventFor(model, stepId, answerId, by);
  return 'trouble' in event ? event : { ...state, events: [...state.events, event] };
};

/** Takes pasted text or a symptom in words; the record keeps what it matched, not the text. */
export const tellText = (
  model: TriageModel,
  state: WalkState,
  text: string,
  by: Speaker,
): { readonly state: WalkState; readonly read: ReadText } => {
  const read = readEvidence(model, text);
  if (read.matched.length === 0 || state.events.length >= EVENT_LIMIT) return { state, read };
  const events: WalkEvent[] = [
    ...state.events,
    { kind: 'text', evidence: read.matched.map(({ id }) => id).slice(0, 60), by },
  ];
  if (read.system !== null && !state.events.some(({ kind }) => kind === 'system'))
    events.push({ kind: 'system', value: read.system, by: null });
  return { state: { ...state, events }, read };
};

/** Takes back the last thing somebody said (and what was read from it); null where nothing is left to take back. */
export const stepBack = (state: WalkState): WalkState | null => {
  const last = state.events.findLastIndex(({ by }) => by !== null);
  return last < 0 ? null : { ...state, events: state.events.slice(0, last) };
};
