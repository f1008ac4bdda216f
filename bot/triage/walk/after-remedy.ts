/** What a remedy's outcome calls for at once, before the next step is picked by its worth. */
import type { Belief } from '../engine/belief.js';
import { HOW_FAR, type Evidence } from '../engine/evidence.js';
import { attempts, wasDone } from '../engine/rules-of-order.js';
import type { Observation } from '../engine/mistakes.js';
import { showsSecondCause, shownBefore } from '../engine/second-cause.js';
import type { Situation } from '../engine/situation.js';
import type { TriageModel } from '../model/model.js';
import type { CheckEntry, FaultEntry } from '../model/schema.js';
import type { WalkEvent, WalkState } from './walk-state.js';

/** What the program says or the mount does tells how far it gets as well. */
const SAYS_HOW_FAR: ReadonlySet<string> = new Set([HOW_FAR, 'message', 'mount-does']);

/** How often the trouble came back after this remedy had cured it. */
const timesBack = (events: readonly WalkEvent[], fault: string): number =>
  events.filter((event) => event.kind === 'try' && event.fault === fault && event.outcome === 'for-now').length;

/** A remedy that helped for now is followed by what makes it last, once. */
const lastingWay = (model: TriageModel, events: readonly WalkEvent[]): FaultEntry | null => {
  const last = lastDone(events);
  if (last?.kind !== 'try' || last.outcome !== 'for-now') return null;
  const fault = model.fault(last.fault);
  return fault === undefined || showsSecondCause(fault, last.outcome, timesBack(events, last.fault)) ? null : fault;
};

/** After "something changed", how far it gets now is asked before all else: it says where the second cause lies. */
export const asksHowFarNow = (model: TriageModel, situation: Situation, events: readonly WalkEvent[]): boolean => {
  const changed = events.findLastIndex(
    (event, at) =>
      event.kind === 'try' &&
      showsSecondCause(model.fault(event.fault), event.outcome, timesBack(events.slice(0, at + 1), event.fault)),
  );
  if (changed < 0 || !situation.checkIndex.has(HOW_FAR)) return false;
  return !events.slice(changed + 1).some((event) => {
    if (event.kind === 'answer' || event.kind === 'passed') return event.check === HOW_FAR;
    return event.kind === 'text' && event.facts.some(({ what }) => SAYS_HOW_FAR.has(what));
  });
};

const checkNamed = (situation: Situation, id: string | undefined): CheckEntry | undefined =>
  id === undefined ? undefined : situation.checks[situation.checkIndex.get(id) ?? -1]?.entry;

/** The last thing answered or tried: words said since then leave what follows from it in hand. */
export const lastDone = (events: readonly WalkEvent[]): WalkEvent | undefined =>
  events.findLast(
    ({ kind }) => kind !== 'text' && kind !== 'not-so' && kind !== 'right' && kind !== 'slip' && kind !== 'supposed',
  );

/** The remedy that cured it, where nothing has been answered or tried since; null where it is not mended. */
export const mendedBy = ({ events }: Pick<WalkState, 'events'>): string | null => {
  const last = lastDone(events);
  return last?.kind === 'try' && last.outcome === 'works' ? last.fault : null;
};

/** Whether the last word on a remedy was that it could not be done. */
export const couldNotDo = ({ events }: Pick<WalkState, 'events'>, fault: string): boolean => {
  const last = events.findLast((event) => event.kind === 'try' && event.fault === fault);
  return last?.kind === 'try' && last.outcome === 'could-not';
};

/** A remedy that could not be done is offered its other way at once, while the cause is in mind. */
const otherWay = (model: TriageModel, events: readonly WalkEvent[]): FaultEntry | null => {
  const last = lastDone(events);
  if (last?.kind !== 'try' || last.outcome !== 'could-not') return null;
  const fault = model.fault(last.fault);
  if (fault?.remedy.otherwise === undefined) return null;
  const times = events.filter((event) => event.kind === 'try' && event.fault === last.fault).length;
  return times > 1 ? null : fault;
};

/** A remedy that was done and changed nothing may only be half of the cure: the other half, where it was not tried yet. */
const otherHalf = (situation: Situation, evidence: Evidence, events: readonly WalkEvent[]): FaultEntry | null => {
  const last = lastDone(events);
  if (last?.kind !== 'try' || last.outcome !== 'same') return null;
  const done = situation.faults[situation.faultIndex.get(last.fault) ?? -1];
  const next = situation.faultIndex.get(done?.remedy.followedBy ?? '');
  if (next === undefined || attempts(evidence, next) > 0 || wasDone(situation, evidence, next)) return null;
  return situation.faults[next] ?? null;
};

/** What the outcome of the remedy before calls for at once: what makes it last, its other way, or its other half. */
export const remedyAtOnce = (
  model: TriageModel,
  { situation, evidence }: { readonly situation: Situation; readonly evidence: Evidence },
  events: readonly WalkEvent[],
): { readonly fault: FaultEntry; readonly otherwise: boolean; readonly lasting?: true } | null => {
  const kept = lastingWay(model, events);
  if (kept !== null) return { fault: kept, otherwise: false, lasting: true };
  const another = otherWay(model, events);
  if (another !== null) return { fault: another, otherwise: true };
  const half = otherHalf(situation, evidence, events);
  return half === null ? null : { fault: half, otherwise: false };
};

/** Not the complaint itself once more. */
const isOfOnePart = ({ scope, byStage }: CheckEntry): boolean => scope !== 'chain' && byStage === undefined;

/** A cause still this likely after its remedy changed nothing is worth a look at whether the remedy has taken. */
const VERIFY_ABOVE = 0.3;

/** Where the other causes still in question show the same this often, looking once more tells nothing of the remedy; nor how likely its cause is. */
const SHOWN_BY_OTHERS = 0.1;
const SHOWN_BY_ALL = 0.6;

/** How often the other causes that are still in question would give an answer. */
const amongOthers = (
  { checks }: Situation,
  { probabilities }: Belief,
  fault: number,
  { check, answer }: Observation,
): number => {
  const odds = checks[check]?.odds[answer];
  let [others, same] = [0, 0];
  for (const [h, p] of probabilities.entries()) {
    if (h === fault) continue;
    others += p;
    same += p * (odds?.[h] ?? 0);
  }
  return others > 0 ? same / others : 1;
};

/** Whether a look can tell if the remedy of a fault has taken: it showed the fault and hardly any other, or the fault is still likely. */
const isWorthVerifying = (situation: Situation, evidence: Evidence, belief: Belief, fault: number): boolean => {
  const shown = shownBefore(situation, evidence.observations, fault);
  const elsewhere = shown === undefined ? 0 : amongOthers(situation, belief, fault, shown);
  if (shown !== undefined && elsewhere < SHOWN_BY_OTHERS) return true;
  return elsewhere < SHOWN_BY_ALL && (belief.probabilities[fault] ?? 0) >= VERIFY_ABOVE;
};

/** What shows whether the remedy just done has taken; a look at one part, not the complaint itself once more. */
export const verifyingCheck = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  events: readonly WalkEvent[],
): CheckEntry | undefined => {
  const last = lastDone(events);
  if (last?.kind !== 'try' || last.outcome !== 'same') return undefined;
  const index = situation.faultIndex.get(last.fault) ?? -1;
  if (attempts(evidence, index) > 1 || !isWorthVerifying(situation, evidence, belief, index)) return undefined;
  const check = checkNamed(situation, situation.faults[index]?.verify.check);
  if (check === undefined || !isOfOnePart(check)) return undefined;
  const since = events.slice(events.lastIndexOf(last) + 1);
  return since.some((event) => event.kind === 'text' && event.facts.some(({ what }) => what === check.id))
    ? undefined
    : check;
};
