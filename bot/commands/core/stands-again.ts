/** A question that waits for the member, under the answer to something else: it stood above, and may have scrolled away. */
import { isProblem, MESSAGE_LIMIT, type Problem } from '../../ground/problem.js';
import { fittingChoices, type Outcome, type Reply } from '../../reply/reply.js';
import type { StandsAgain } from './command.js';

const underProblem = (outcome: Problem, { note, back }: StandsAgain): Problem => {
  const message = `${outcome.message}\n${note}`;
  return {
    ...outcome,
    message: message.length <= MESSAGE_LIMIT ? message : outcome.message,
    choices: fittingChoices([...(outcome.choices ?? []), back]),
  };
};

const underReply = (outcome: Reply, { note, back }: StandsAgain): Reply => ({
  ...outcome,
  notes: [...outcome.notes, note],
  choices: fittingChoices([...(outcome.choices ?? []), back]),
});

/** The answer's own choices keep their places. */
export const withStanding = (outcome: Outcome, standing: StandsAgain): Outcome =>
  isProblem(outcome) ? underProblem(outcome, standing) : underReply(outcome, standing);

/** It speaks of what waits: the walk's own reply, or a word that it goes on waiting. */
export const isOfWhatWaits = (outcome: Outcome): boolean =>
  isProblem(outcome) ? outcome.problem === 'beside-the-walk' : typeof outcome.data['walkId'] === 'string';
