/** What a helper does next: the look that tells most, or the remedy that is left to a person. */
import { UNSURE, type Assessment, type FaultEntry, type TriageModel, type WalkEvent } from '../../triage/index.js';
import { fitted } from './fitted.js';
import type { Walk } from './walk-keeper.js';
import { ownLines } from './walk-words.js';
import { alreadySaid } from './words-for-helper.js';

const REMEDY_SHOWN = 220;

export type Answered = Extract<WalkEvent, { kind: 'answer' }>;

/** The last answer to each check, oldest first. */
export const answered = (events: readonly WalkEvent[]): readonly Answered[] => {
  const answers = events.filter((event): event is Answered => event.kind === 'answer' && event.answer !== UNSURE);
  return answers.filter((event, i) => !answers.slice(i + 1).some(({ check }) => check === event.check));
};

/** A look whose answer is this likely known beforehand tells a helper nothing. */
const AS_GOOD_AS_KNOWN = 0.85;

const isForegone = ({ situation, belief }: Assessment, check: number): boolean =>
  (situation.checks[check]?.odds ?? []).some(
    (odds) => belief.probabilities.reduce((sum, p, h) => sum + p * (odds[h] ?? 0), 0) > AS_GOOD_AS_KNOWN,
  );

/** What is best looked at next by somebody who knows: nothing answered or said already, and nothing whose answer is foregone. */
export const lookAtNext = (model: TriageModel, walk: Walk, assessment: Assessment): string | null => {
  const known = new Set(answered(walk.state.events).map(({ check }) => check));
  for (const choice of assessment.ranked) {
    if (choice.kind !== 'ask' || choice.again || isForegone(assessment, choice.check)) continue;
    const check = assessment.situation.checks[choice.check]?.entry;
    if (check !== undefined && !known.has(check.id) && !alreadySaid(model, walk.state, check)) return check.question;
  }
  return null;
};

/** The remedy that is left to a person: the other way, where the first was tried. */
export const mustBeDone = (walk: Walk, fault: FaultEntry, { context }: Assessment): string => {
  const { steps, otherwise, lasting } = fault.remedy;
  const tries = walk.state.events.flatMap((event) =>
    event.kind === 'try' && event.fault === fault.id ? event.outcome : [],
  );
  const another = tries.includes('for-now') ? (lasting ?? otherwise) : otherwise;
  const own = tries.length > 0 && another !== undefined ? another : steps;
  return fitted(ownLines(own, context.system, walk.state).join(' '), REMEDY_SHOWN);
};
