/** "As I said": a question that the member says was answered is gone on without. */
import { isProblem } from '../../ground/problem.js';
import { withoutSaidAlready, type Reading } from '../../reading/index.js';
import { passStep, type WalkState } from '../../triage/index.js';
import { saidBefore } from './said-before.js';
import type { Began } from './turn.js';

export const SAID_ALREADY = 'You told me already; I keep it, and do not ask again.';

const SET_UP: ReadonlySet<string> = new Set(['path', 'system', 'client']);

/**
 * Left for good: who has told it already is not asked once more; words that tell a new
 * thing speak of that. Not for looks that keep gear from harm.
 */
export const leftAsSaid = (
  { context, walk, before }: Began,
  state: WalkState,
  text: string,
  read: Reading,
): WalkState | null => {
  const { step } = before;
  if (step.kind !== 'ask' || withoutSaidAlready(text) === null) return null;
  const known = saidBefore(walk.state.events);
  if (read.facts.some(({ what }) => !SET_UP.has(what) && !known.has(what))) return null;
  const passed = passStep(context.model, state, step.id, context.by);
  const forGood = isProblem(passed) || step.opening ? passed : passStep(context.model, passed, step.id, context.by);
  return isProblem(forGood) ? null : forGood;
};
