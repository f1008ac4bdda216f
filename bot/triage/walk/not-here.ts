/** What the member has not got: no cause, no question and no way that needs it comes into this walk. */
import type { TriageModel } from '../model/model.js';
import { NOT_HERE } from '../model/references.js';
import type { CheckEntry } from '../model/schema.js';
import { takenBackAfter, type WalkEvent } from './walk-state.js';

/** From here on it is plainly said. */
const PLAINLY = 0.75;

type Told = readonly { readonly what: string; readonly answer: string }[];

const toldIn = (event: WalkEvent, takenBack: ReadonlySet<string> | undefined): Told => {
  if (event.kind === 'answer') return [{ what: event.check, answer: event.answer }];
  if (event.kind === 'path') return event.value === null ? [] : [{ what: 'path', answer: event.value }];
  if (event.kind !== 'text') return [];
  return event.facts.filter(({ what, sureness }) => sureness >= PLAINLY && takenBack?.has(what) !== true);
};

const needsOf = (model: TriageModel, check: CheckEntry): readonly string[] =>
  check.needs ?? model.stage(check.stage)?.needs ?? [];

/** What an answer says is missing: that of the check above, or a "there is none here" of another. */
const missingBy = (model: TriageModel, { what, answer }: Told[number]): string | undefined => {
  const check = model.check(what);
  if (what === NOT_HERE) return answer === check?.good ? undefined : answer;
  return check?.answers.find(({ id }) => id === answer)?.lacks;
};

/** What an answer says is there after all: a way picked, or something seen of the thing itself. */
const thereBy = (model: TriageModel, event: WalkEvent, { what, answer }: Told[number]): readonly string[] => {
  if (what === 'path') return event.kind === 'path' ? (model.path(answer)?.needs ?? []) : [];
  const check = model.check(what);
  return check === undefined || !check.answers.some(({ id }) => id === answer) ? [] : needsOf(model, check);
};

/** As answers of that check; later words or picks that need a thing bring it back. */
export const notHereIn = (model: TriageModel, events: readonly WalkEvent[]): readonly string[] => {
  const takenBack = takenBackAfter(events);
  const missing = new Set<string>();
  for (const [at, event] of events.entries()) {
    const told = toldIn(event, takenBack[at]);
    for (const one of told)
      if (missingBy(model, one) === undefined) for (const part of thereBy(model, event, one)) missing.delete(part);
    for (const one of told) {
      const part = missingBy(model, one);
      if (part !== undefined) missing.add(part);
    }
  }
  return [...missing].sort();
};
