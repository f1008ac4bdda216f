/** What was tried, on the sheet for a helper: before the walk by the member's words, and every remedy with what it came to last. */
import { deniesPremise, outcomeSaid } from '../../reading/index.js';
import { takenBackIn, type TriageModel, type WalkEvent, type WalkState } from '../../triage/index.js';
import { fitted } from './fitted.js';
import { lowered } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

const OUTCOME_WORDS = {
  // Said in words to be as it should be when its remedy was shown.
  'in-order': 'not done, in order by their words',
  works: 'it works',
  same: 'no change',
  changed: 'something changed, not cured',
  'could-not': 'could not be done',
  'for-now': 'it helped, then came back',
  unsure: 'what came of it is not known',
} as const;

type Outcome = keyof typeof OUTCOME_WORDS;

const TRIED_ALREADY = 'tried-already';

interface Answered {
  readonly check: string;
  readonly answer: string;
}

export const labelOf = (model: TriageModel, { check, answer }: Answered): string | undefined =>
  model.check(check)?.answers.find(({ id }) => id === answer)?.label;

/** "Handset shows: a question". */
export const seenLine = (model: TriageModel, event: Answered): string | null => {
  const entry = model.check(event.check);
  const label = labelOf(model, event);
  return entry === undefined || label === undefined
    ? null
    : `${entry.brief ?? fitted(entry.question, 40)}: ${fitted(label, 48)}`;
};

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

/** What was said and answered in the turn in which a remedy's outcome was told. */
const turnAround = ({ events, turns }: WalkState, at: number): readonly WalkEvent[] => {
  const from = turns.findLast((start) => start <= at) ?? 0;
  return events.slice(from, turns.find((start) => start > at) ?? events.length);
};

/** What came of a remedy; a look that found all in order is no remedy that changed nothing. */
const outcomeOf = (model: TriageModel, state: WalkState, at: number): Outcome | null => {
  const event = state.events[at];
  if (event?.kind !== 'try') return null;
  const turn = turnAround(state, at);
  const said = turn.find(({ kind }) => kind === 'text');
  const fault = model.fault(event.fault);
  if (event.outcome !== 'same' || said?.kind !== 'text' || fault === undefined) return event.outcome;
  const { check, answer } = fault.verify;
  const isIt = (what: string, told: string): boolean => what === check && told === answer;
  const isSet = turn.some((one) =>
    one.kind === 'text'
      ? one.facts.some((fact) => isIt(fact.what, fact.answer))
      : one.kind === 'answer' && isIt(one.check, one.answer),
  );
  const isFoundSo = isSet && outcomeSaid(model.reading, said.words).how !== 'outright';
  return isFoundSo || deniesPremise(said.words, fault.title) ? 'in-order' : event.outcome;
};

/**
 * Every remedy done, with what it came to last.
 * @param isBrief those that came to the same share a line
 */
export const tried = (model: TriageModel, walk: Walk, isBrief = false): readonly string[] => {
  const last = new Map<string, Outcome>();
  for (const [at, event] of walk.state.events.entries()) {
    const outcome = outcomeOf(model, walk.state, at);
    if (event.kind === 'try' && outcome !== null) last.set(event.fault, outcome);
  }
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
