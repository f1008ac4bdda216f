/** What was said last to the question in hand. */
import { assess } from '../../triage/index.js';
import type { Began } from './turn.js';

/** The words last said, where they were said to the question in hand, past the opening, and left it in hand. */
export const lastSaidToIt = ({ context, walk, before }: Began): string | null => {
  const { events } = walk.state;
  const last = events.at(-1);
  const began = events.findIndex(({ by }) => by !== null);
  if (before.step.kind !== 'ask' || last?.kind !== 'text' || events.length - 1 <= began) return null;
  const then = assess(context.model, { ...walk.state, events: events.slice(0, -1) }, context.outcomes).step;
  return then.kind === 'ask' && then.id === before.step.id ? last.words : null;
};
