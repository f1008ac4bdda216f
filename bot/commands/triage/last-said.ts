/** What was said last to the question in hand. */
import { assess } from '../../triage/index.js';
import type { Began } from './turn.js';

/** The words last said, where they were said to the step in hand, past the opening, and left it in hand. */
const lastSaidTo = ({ context, walk, before }: Began, kind: 'ask' | 'try'): string | null => {
  const { events } = walk.state;
  const last = events.at(-1);
  const began = events.findIndex(({ by }) => by !== null);
  if (before.step.kind !== kind || last?.kind !== 'text' || events.length - 1 <= began) return null;
  const then = assess(context.model, { ...walk.state, events: events.slice(0, -1) }, context.outcomes).step;
  return then.kind === kind && then.id === before.step.id ? last.words : null;
};

/** To the question in hand. */
export const lastSaidToIt = (began: Began): string | null => lastSaidTo(began, 'ask');

export const lastSaidToRemedy = (began: Began): string | null => lastSaidTo(began, 'try');
