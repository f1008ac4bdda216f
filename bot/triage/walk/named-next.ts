/** When the look at a cause that the member named comes: at once, but for what keeps gear from harm and what a remedy just done calls for. */
import type { Belief } from '../engine/belief.js';
import type { Evidence } from '../engine/evidence.js';
import { safetyWaits } from '../engine/safety.js';
import type { Situation } from '../engine/situation.js';
import type { CheckEntry } from '../model/schema.js';
import { lastDone } from './after-remedy.js';
import { OWN_SUSPICION, ownSuspicion, supposedCheck } from './suppose.js';
import { UNSURE, type WalkEvent } from './walk-state.js';

/** The trouble went with what the member suspected. */
export const FOUND_BY_THEM = OWN_SUSPICION;

export type Named = CheckEntry | typeof FOUND_BY_THEM;

export const namedNext = (
  {
    situation,
    evidence,
    belief,
  }: { readonly situation: Situation; readonly evidence: Evidence; readonly belief: Belief },
  events: readonly WalkEvent[],
): Named | null => {
  const last = lastDone(events);
  if (last?.kind === 'answer' && last.check === OWN_SUSPICION && ownSuspicion(events)?.isGone === true)
    return FOUND_BY_THEM;
  const check = supposedCheck(situation, evidence, events);
  return check === undefined || safetyWaits(situation, evidence, belief) ? null : check;
};

/** Where so few ways have the part, which of them it is matters to a look at it. */
const FEW_WAYS = 4;

/** Whether it is asked before which way to the mount it is; what a remedy came to calls for its own next step first. */
export const comesBeforeTheWay = (named: Named, isWayOpen: boolean, events: readonly WalkEvent[]): boolean => {
  const last = lastDone(events);
  if (last?.kind === 'try' && last.outcome !== UNSURE) return false;
  return !isWayOpen || named === FOUND_BY_THEM || (named.only?.paths?.length ?? Infinity) > FEW_WAYS;
};
