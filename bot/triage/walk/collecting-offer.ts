/** When one paste is worth more than a row of questions: at the first question once the system is known, before any log was read. */
import type { CollectingLine } from '../model/collecting.js';
import type { TriageModel } from '../model/model.js';
import { openingOf, pathMatters } from './opening.js';
import type { WalkState } from './walk-state.js';
import type { Assessment } from './walk.js';

/** Later than this, few questions are left to answer. */
const MOST_EVENTS_BEFORE = 40;

/** The line to offer at this step, or null. Offered at one question alone: the next answer ends it. */
export const collectingOffer = (
  model: TriageModel,
  { events }: WalkState,
  { context, step, situation, evidence, belief }: Assessment,
): CollectingLine | null => {
  const line = model.collecting.find(({ system }) => system === context.system);
  if (line === undefined || step.kind !== 'ask' || step.opening || events.length > MOST_EVENTS_BEFORE) return null;
  if (step.check.safety === true || !pathMatters(situation, evidence, belief)) return null;
  if (events.some((event) => event.kind === 'text' && event.facts.some(({ by }) => by !== 'words'))) return null;
  const known = events.findIndex((_, i) => openingOf(model, events.slice(0, i + 1)).context.system !== null);
  return events.slice(known + 1).some(({ kind }) => kind === 'answer' || kind === 'try' || kind === 'found')
    ? null
    : line;
};
