/** The cause that a member names or wonders about ("could it be the wrong socket?") is looked at next. */
import type { Evidence } from '../engine/evidence.js';
import { isTheirs, type Situation } from '../engine/situation.js';
import type { CheckEntry } from '../model/schema.js';
import type { Speaker, WalkEvent, WalkState } from './walk-state.js';

type Supposed = Extract<WalkEvent, { kind: 'supposed' }>;

/** A walk has few: each wants words of the member that are no answer. */
const MOST = 20;
/** So much of what is supposed is kept. */
const SAID_KEPT = 120;

/** The look at what the member suspects where no check looks at it: with it away, is the trouble gone? */
export const OWN_SUSPICION = 'own-suspicion';
/** Its answer where the trouble went with what was suspected. */
const GONE = 'gone';

const isTold = (situation: Situation, { observations, unsure }: Evidence, index: number): boolean =>
  unsure.has(index) || observations.some(({ check, guessed }) => check === index && guessed !== true);

/** Answered or passed over since; or another remedy has gone first and the member named nothing anew. */
const isOver = (events: readonly WalkEvent[], at: number, check: string): boolean =>
  events
    .slice(at + 1)
    .some(
      (event) =>
        ((event.kind === 'answer' || event.kind === 'passed') && event.check === check) ||
        (event.kind === 'text' && event.facts.some(({ what }) => what === check)),
    );

/** What the member named last and was not looked at yet; of several named at once the first. */
export const supposedCheck = (
  situation: Situation,
  evidence: Evidence,
  events: readonly WalkEvent[],
): CheckEntry | undefined => {
  const open = events.flatMap((event, at) => {
    if (event.kind !== 'supposed' || isOver(events, at, event.check)) return [];
    const index = situation.checkIndex.get(event.check) ?? -1;
    const numbers = situation.checks[index];
    if (numbers === undefined || !isTheirs(situation, numbers)) return [];
    const isOwn = event.check === OWN_SUSPICION;
    return !isOwn && isTold(situation, evidence, index) ? [] : [{ at, entry: numbers.entry }];
  });
  const last = open.at(-1);
  // Those that came with the same words stand side by side.
  const begins = open.findLastIndex(({ at }, i) => i > 0 && open[i - 1]?.at !== at - 1);
  return open[Math.max(0, begins)]?.entry ?? last?.entry;
};

/** What the member suspects that no check looks at, the newest first told; and whether the trouble went with it. */
export const ownSuspicion = (
  events: readonly WalkEvent[],
): { readonly said: string; readonly isGone: boolean } | null => {
  const at = events.findLastIndex((event) => event.kind === 'supposed' && event.check === OWN_SUSPICION);
  const event = events[at];
  if (event?.kind !== 'supposed') return null;
  const answer = events.slice(at).findLast((one) => one.kind === 'answer' && one.check === OWN_SUSPICION);
  return { said: event.said ?? '', isGone: answer?.kind === 'answer' && answer.answer === GONE };
};

/** All that the member has suspected, in their own words, once each. */
export const suspicions = (events: readonly WalkEvent[]): readonly Supposed[] =>
  events
    .filter((event): event is Supposed => event.kind === 'supposed' && (event.said ?? '') !== '')
    .filter(({ check, said }, i, all) => all.findIndex((one) => one.check === check && one.said === said) === i);

const withSupposed = (state: WalkState, supposed: Supposed): WalkState =>
  state.events.filter(({ kind }) => kind === 'supposed').length >= MOST
    ? state
    : { ...state, events: [...state.events, supposed] };

/** With that look next, whatever comes of it. */
export const supposing = (state: WalkState, check: string, said: string, by: Speaker): WalkState =>
  withSupposed(state, { kind: 'supposed', check, said: said.trim().slice(0, SAID_KEPT), by });

/** With a look next that the words only touch on: no cause is named, so what it shows is weighed like any answer. */
export const touchingOn = (state: WalkState, check: string, by: Speaker): WalkState =>
  withSupposed(state, { kind: 'supposed', check, by });

/** Kept in the member's words for whoever helps, and not looked at. */
export const keepSuspicion = (state: WalkState, said: string, by: Speaker): WalkState => {
  const kept = supposing(state, OWN_SUSPICION, said, by);
  return kept === state ? state : { ...kept, events: [...kept.events, { kind: 'passed', check: OWN_SUSPICION, by }] };
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
  how: { readonly by: Speaker; readonly said: string },
): WalkState | null => {
  const index = situation.checkIndex.get(check) ?? -1;
  const numbers = situation.checks[index];
  if (numbers === undefined || check === step.id || !isTheirs(situation, numbers)) return null;
  if (check !== OWN_SUSPICION && isTold(situation, evidence, index)) return null;
  const next = supposing(state, check, how.said, how.by);
  return next === state ? null : next;
};
