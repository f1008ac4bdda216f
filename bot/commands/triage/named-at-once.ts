/** "Is there a phone setting for it": named before the opening is over, the look is told at once, and the question in hand stands. */
import type { Reading } from '../../reading/index.js';
import { wantsPlainWords, type WalkState } from '../../triage/index.js';
import type { Began } from './turn.js';
import { forPhone, linesFor } from './walk-words.js';

/** @param state the words in it */
export const namedAtOnce = (
  { context: { model }, before }: Began,
  state: WalkState,
  read: Reading,
): readonly string[] => {
  const { step } = before;
  const check = model.check(read.named[0]?.check ?? '');
  if (step.kind !== 'ask' || !step.opening || check?.only?.systems?.length !== 1) return [];
  const { system } = before.context;
  if (wantsPlainWords(check) || check.how === undefined || system === null || !check.only.systems.includes(system))
    return [];
  const lines = linesFor(check.how, system).flatMap(forPhone(state));
  return [`It may be. To look at once: ${lines.join(' ')} Tell me how it stands there.`];
};
