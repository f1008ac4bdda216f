/** From what a member said to what is to be run, and where its answer belongs. */
import { problem } from '../../../ground/problem.js';
import type { Outcome } from '../../../reply/reply.js';
import type { Content, MatrixEvent } from './matrix-event.js';
import { answerRelation, relationTo } from './matrix-event.js';
import type { Offer, Offers } from './offers.js';
import type { Asked } from './read-message.js';

export interface Task {
  /** A command line, or the words for a pick that cannot be. */
  readonly run: { readonly line: string } | { readonly outcome: Outcome };
  readonly relation: Content;
}

const noSuchChoice = (offer: Offer | null): Outcome =>
  problem(
    'no-such-choice',
    offer === null
      ? 'There is nothing to choose from just now. Ask a question, or type help.'
      : `Choose a number from 1 to ${offer.runs.length}, or ask another question.`,
  );

const UNREADABLE = problem(
  'unreadable',
  'I cannot read the message you answered: it is from before I came, or its key is lost. Please ask anew.',
);

/** Null where nothing was meant for the bot. */
export const findTask = async (
  offers: Offers,
  roomId: string,
  event: MatrixEvent,
  asked: Asked,
  arrivedMs: number,
): Promise<Task | null> => {
  const relation = answerRelation(event);
  if (asked.kind === 'line') return { run: { line: asked.line }, relation };
  const found = await offers.find({ roomId, event, asked, arrivedMs });
  if (found === 'unreadable')
    return asked.kind === 'number' && asked.addressed ? { run: { outcome: UNREADABLE }, relation } : null;
  const line = found?.runs[asked.number - 1];
  if (found !== null && line !== undefined) {
    // Nothing can be a reply to a reaction; the answer follows the offer instead.
    return {
      run: { line },
      relation: asked.kind === 'reaction' ? relationTo(found.eventId, found.threadRoot) : relation,
    };
  }
  const isMeant = asked.kind === 'number' && (asked.addressed || (found !== null && asked.repliedTo !== null));
  return isMeant ? { run: { outcome: noSuchChoice(found) }, relation } : null;
};
