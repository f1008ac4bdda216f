/** What a member wonders about ("could it be the wrong socket?") is looked at next. */
import type { Evidence } from '../engine/evidence.js';
import { isTheirs, type Situation } from '../engine/situation.js';
import type { CheckEntry } from '../model/schema.js';
import type { Speaker, WalkEvent, WalkState } from './walk-state.js';

/** A walk has few: each wants words of the member that are no answer. */
const MOST = 20;

/** What the member wondered about last, until it is answered, passed over or told. */
export const supposedCheck = (situation: Situation, events: readonly WalkEvent[]): CheckEntry | undefined => {
  const at = events.findLastIndex(({ kind }) => kind === 'supposed');
  const last = events[at];
  if (last?.kind !== 'supposed') return undefined;
  const isOver = events.slice(at + 1).some((event) => {
    if (event.kind === 'answer' || event.kind === 'passed') return event.check === last.check;
    return event.kind === 'try' || (event.kind === 'text' && event.facts.some(({ what }) => what === last.check));
  });
  return isOver ? undefined : situation.checks[situation.checkIndex.get(last.check) ?? -1]?.entry;
};

/** With that look next; null where the check is none of this walk's, stands already, or is answered. */
export const supposeCheck = (
  {
    situation,
    evidence,
    step,
  }: { readonly situation: Situation; readonly evidence: Evidence; readonly step: { readonly id: string } },
  state: WalkState,
  check: string,
  by: Speaker,
): WalkState | null => {
  const index = situation.checkIndex.get(check) ?? -1;
  const numbers = situation.checks[index];
  if (numbers === undefined || check === step.id || !isTheirs(situation, numbers)) return null;
  const isAnswered = evidence.observations.some((one) => one.check === index && one.guessed !== true);
  if (isAnswered || evidence.unsure.has(index)) return null;
  if (state.events.filter(({ kind }) => kind === 'supposed').length >= MOST) return null;
  return { ...state, events: [...state.events, { kind: 'supposed', check, by }] };
};
