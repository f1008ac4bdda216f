/** A question that waits for the member, under the answer to something else: it stood above, and may have scrolled away. */
import { isProblem, MESSAGE_LIMIT, type Problem } from '../../ground/problem.js';
import { fittingChoices, type Outcome, type Reply } from '../../reply/reply.js';
import type { StandsAgain } from './command.js';

const underProblem = (outcome: Problem, { note, choices, back }: StandsAgain): Problem => {
  const message = `${outcome.message}\n${note}`;
  return {
    ...outcome,
    message: message.length <= MESSAGE_LIMIT ? message : outcome.message,
    choices: fittingChoices(outcome.choices === undefined ? choices : [...outcome.choices, back]),
  };
};

const REMOVES_ALL = /^forget\b/u;

/** Beside a choice that removes everything no answer to something else is numbered: a slip would cost too much. */
const underReply = (outcome: Reply, { note, choices, back }: StandsAgain): Reply => {
  const own = outcome.choices ?? [];
  const isGrave = own.some(({ run }) => REMOVES_ALL.test(run));
  return {
    ...outcome,
    notes: [...outcome.notes, note],
    choices: fittingChoices([...own, ...(isGrave ? [back] : choices)]),
  };
};

/** The answer's own choices keep their places; where it asks something itself, that is answered first. */
export const withStanding = (outcome: Outcome, standing: StandsAgain): Outcome =>
  isProblem(outcome) ? underProblem(outcome, standing) : underReply(outcome, standing);

/** It speaks of what waits: the walk's own reply, or a word that it goes on waiting. */
export const isOfWhatWaits = (outcome: Outcome): boolean =>
  isProblem(outcome) ? outcome.problem === 'beside-the-walk' : typeof outcome.data['walkId'] === 'string';
