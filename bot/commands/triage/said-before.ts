/** What a walk was told of each question. */
import type { WalkEvent } from '../../triage/index.js';

/** The last that was said of each check, answers and words alike, oldest first. */
export const saidBefore = (events: readonly WalkEvent[]): ReadonlyMap<string, string> => {
  const said = new Map<string, string>();
  const note = (check: string, answer: string): void => {
    said.delete(check);
    said.set(check, answer);
  };
  for (const event of events) {
    if (event.kind === 'answer') note(event.check, event.answer);
    if (event.kind === 'text') for (const { what, answer } of event.facts) note(what, answer);
  }
  return said;
};
