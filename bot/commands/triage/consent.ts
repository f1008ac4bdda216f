/** Whose walk it is, they decide: a helper sits down when the member says so, and a walk begun by another is theirs once they answer. */
import { createHash } from 'node:crypto';
import { problem, type Problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import { NOWHERE, reply, type Reply } from '../../reply/reply.js';
import type { Store } from '../../store/store.js';
import type { Asker } from '../core/command.js';
import { notYours, speakerOf } from './find-walk.js';
import { keepWalk, type Walk } from './walk-keeper.js';
import { memberName } from './walk-words.js';

/** Names the one who asks within a button; which of two strangers is meant must be plain, no more. */
const codeOf = (helperId: string): string => createHash('sha256').update(helperId).digest('hex').slice(0, 8);

/** Any word of the member's own in a walk that another began for them. */
export const hasSpoken = (said: {
  readonly text?: unknown;
  readonly answer?: unknown;
  readonly file?: unknown;
}): boolean => said.text !== undefined || said.answer !== undefined || said.file !== undefined;

export const agreed = ({ awaitsMember: _none, ...walk }: Walk): Walk => walk;

/** Shows nothing of the walk; the press is the member's. */
export const askToHelp = async (store: Store, walk: Walk, asker: Asker): Promise<Reply> => {
  const name = tidy(asker.displayName, 40) || 'someone';
  await keepWalk(store, { ...walk, askedHelperId: asker.memberId });
  return reply({
    title: 'May they help?',
    summary: `${name} would help ${memberName(walk)} with this walk. Only the one whose mount it is can say yes; a helper sees the walk and answers in it.`,
    choices: [
      { label: `Yes, let ${name} help`, run: `triage walk:${walk.id} do:accept answer:${codeOf(asker.memberId)}` },
    ],
    pointsAt: NOWHERE,
    data: { asksToHelp: true },
  });
};

export const acceptHelper = async (
  store: Store,
  walk: Walk,
  asker: Asker,
  code: string | undefined,
): Promise<Reply | Problem> => {
  if (speakerOf(walk, asker) !== 'member') return notYours(walk);
  const { askedHelperId, ...rest } = walk;
  if (askedHelperId === undefined) return problem('nobody-asks', 'Nobody is asking to help with this walk.');
  if (code?.trim().toLowerCase() !== codeOf(askedHelperId))
    return problem('another-asks', 'Meanwhile somebody else has asked to help; answer the newest request.');
  if (walk.helperId !== null)
    return problem('has-a-helper', `This walk has a helper. Send them away first: triage walk:${walk.id} do:release`);
  await keepWalk(store, { ...rest, helperId: askedHelperId });
  return reply({
    title: 'A helper has joined',
    summary: 'Member and helper may both answer now. Only the one whose mount it is can end the walk.',
    choices: [
      { label: 'Go on', run: `triage walk:${walk.id}`, preferred: true },
      { label: 'Send the helper away', run: `triage walk:${walk.id} do:release` },
    ],
    pointsAt: NOWHERE,
    data: { walkId: walk.id },
  });
};
