/** When the look at a cause that the member named comes: at once, but for what keeps gear from harm and what a remedy just done calls for. */
import type { Belief } from '../engine/belief.js';
import type { Evidence } from '../engine/evidence.js';
import { safetyWaits } from '../engine/safety.js';
import type { Situation } from '../engine/situation.js';
import { attempts } from '../engine/rules-of-order.js';
import type { CheckEntry, FaultEntry } from '../model/schema.js';
import { lastDone } from './after-remedy.js';
import { OWN_SUSPICION, ownSuspicion, supposedCheck } from './suppose.js';
import { UNSURE, type WalkEvent } from './walk-state.js';

interface At {
  readonly situation: Situation;
  readonly evidence: Evidence;
  readonly belief: Belief;
}

/** The trouble went with what the member suspected. */
export const FOUND_BY_THEM = OWN_SUSPICION;

/** The look at it; or, where that has shown it, its remedy. */
export type Named =
  | { readonly kind: 'look'; readonly check: CheckEntry }
  | { readonly kind: 'remedy'; readonly fault: FaultEntry }
  | { readonly kind: 'found' };

/** A cause shows itself in an answer from here on; and against all else that was said, so likely it must be. */
const [SHOWS, LEAST_LIKELY] = [0.5, 0.008];
/** Of several answers that show it, one counts from here on. */
const AMONG_SHOWN = 0.2;

/** The cause that the member named, whose own look has shown it and whose remedy was not offered yet. */
const shownByTheLook = ({ situation, evidence, belief }: At, events: readonly WalkEvent[]): FaultEntry | undefined => {
  const named = events.flatMap((event) => (event.kind === 'supposed' && event.said !== undefined ? [event.check] : []));
  const shown = situation.faults.flatMap((fault, f) => {
    const confirm = fault.remedy.confirm ?? fault.verify.check ?? '';
    const check = situation.checkIndex.get(confirm) ?? -1;
    const last = evidence.observations.findLast((one) => one.check === check && one.guessed !== true);
    if (!named.includes(confirm) || last === undefined || attempts(evidence, f) > 0) return [];
    const numbers = situation.checks[check];
    const odds = (answer: number): number => numbers?.odds[answer]?.[f] ?? 0;
    const good = numbers?.good ?? -1;
    const isShown = last.answer !== good && odds(last.answer) >= AMONG_SHOWN && 1 - odds(good) >= SHOWS;
    const likely = belief.probabilities[f] ?? 0;
    return isShown && likely >= LEAST_LIKELY ? [{ fault, likely }] : [];
  });
  return shown.sort((a, b) => b.likely - a.likely)[0]?.fault;
};

export const namedNext = (at: At, events: readonly WalkEvent[]): Named | null => {
  if (!events.some(({ kind }) => kind === 'supposed')) return null;
  const { situation, evidence, belief } = at;
  const last = lastDone(events);
  if (last?.kind === 'answer' && last.check === OWN_SUSPICION && ownSuspicion(events)?.isGone === true)
    return { kind: 'found' };
  if (safetyWaits(situation, evidence, belief)) return null;
  const fault = shownByTheLook(at, events);
  if (fault !== undefined) return { kind: 'remedy', fault };
  const check = supposedCheck(situation, evidence, events);
  return check === undefined ? null : { kind: 'look', check };
};

/** Where so few ways have the part, which of them it is matters to a look at it. */
const FEW_WAYS = 4;

/** Whether it is asked before which way to the mount it is; what a remedy came to calls for its own next step first. */
export const comesBeforeTheWay = (named: Named, isWayOpen: boolean, events: readonly WalkEvent[]): boolean => {
  const last = lastDone(events);
  if (last?.kind === 'try' && last.outcome !== UNSURE) return false;
  if (!isWayOpen || named.kind === 'found') return true;
  const { only } = named.kind === 'remedy' ? named.fault : named.check;
  return (only?.paths?.length ?? Infinity) > FEW_WAYS;
};
