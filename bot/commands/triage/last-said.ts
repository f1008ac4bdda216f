/** What was said last to the question in hand. */
import { curedByDeed, outcomeSaid } from '../../reading/index.js';
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

const FAILED: ReadonlySet<string> = new Set(['unchanged', 'worse', 'could-not', 'partly', 'not-yet', 'asks-back']);

/** "Got my printer's lead, com4 is there", said to the step in hand a line before its cure: what was done. */
export const deedSaidBefore = (began: Began): string | null => {
  const said = lastSaidToRemedy(began) ?? lastSaidToIt(began);
  if (said === null || !curedByDeed(said).isDone) return null;
  return FAILED.has(outcomeSaid(began.context.model.reading, said).what) ? null : said;
};

/** The same, once the words of the cure are kept as well. */
export const deedBeforeLast = ({ walk, ...began }: Began): string | null => {
  const at = walk.state.events.findLastIndex(({ kind }) => kind === 'text');
  return deedSaidBefore({
    ...began,
    walk: { ...walk, state: { ...walk.state, events: walk.state.events.slice(0, at) } },
  });
};
