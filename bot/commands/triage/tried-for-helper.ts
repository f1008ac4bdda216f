/** What was tried, on the sheet for a helper: before the walk by the member's words, and every remedy with what it came to last. */
import { takenBackIn, type TriageModel, type TryOutcome, type WalkEvent } from '../../triage/index.js';
import { fitted } from './fitted.js';
import { lowered } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

const OUTCOME_WORDS = {
  works: 'it works',
  same: 'no change',
  changed: 'something changed, not cured',
  'could-not': 'could not be done',
  'for-now': 'it helped, then came back',
  unsure: 'what came of it is not known',
} as const;

const TRIED_ALREADY = 'tried-already';

interface Answered {
  readonly check: string;
  readonly answer: string;
}

export const labelOf = (model: TriageModel, { check, answer }: Answered): string | undefined =>
  model.check(check)?.answers.find(({ id }) => id === answer)?.label;

/** Beyond so many remedies those that came to the same share a line. */
const MOST_LINES = 4;
const TITLE_SHOWN = 60;

/** What was done before the walk began, by the member's words. */
const doneBefore = (model: TriageModel, events: readonly WalkEvent[]): readonly string[] => {
  const denied = takenBackIn(events);
  const check = model.check(TRIED_ALREADY);
  const done = events.flatMap((event) =>
    event.kind === 'text' && !denied.has(TRIED_ALREADY)
      ? event.facts.flatMap(({ what, answer }) => (what === TRIED_ALREADY && answer !== check?.good ? [answer] : []))
      : [],
  );
  const labels = [...new Set(done)].flatMap((answer) => labelOf(model, { check: TRIED_ALREADY, answer }) ?? []);
  return labels.length === 0 ? [] : [`Before this walk: ${labels.map(lowered).join('; ')}`];
};

/**
 * Every remedy done, with what it came to last.
 * @param isBrief those that came to the same share a line
 */
export const tried = (model: TriageModel, walk: Walk, isBrief = false): readonly string[] => {
  const last = new Map<string, TryOutcome>();
  for (const event of walk.state.events) if (event.kind === 'try') last.set(event.fault, event.outcome);
  const titled = [...last].map(([fault, outcome]) => ({
    title: fitted(model.fault(fault)?.title ?? fault, TITLE_SHOWN),
    outcome,
  }));
  const before = doneBefore(model, walk.state.events);
  if (titled.length <= (isBrief ? 1 : MOST_LINES))
    return [...before, ...titled.map((one) => `${one.title}: ${OUTCOME_WORDS[one.outcome]}`)];
  const outcomes = [...new Set(titled.map(({ outcome }) => outcome))];
  return [
    ...before,
    ...outcomes.map((outcome) => {
      const same = titled
        .filter((one) => one.outcome === outcome)
        .map(({ title }, i) => (i === 0 ? title : lowered(title)));
      return `${same.join('; ')}: ${OUTCOME_WORDS[outcome]}`;
    }),
  ];
};
