/** A member's walk at the console, as the tests of its screens play it. */
import type { Asker } from '../../bot/commands/core/command.js';
import { consoleLines } from '../../bot/platforms/console/write-reply.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer, ODALYS, realDeps } from '../commands/real-deps.js';

export const NOW = Date.UTC(2026, 10, 25, 21);
export const deps = await realDeps();

// The members are invented. Each is of a club of one's own: what other walks have confirmed, here or in another file, must not count.
export const member = (name: string): Asker => ({
  ...ODALYS,
  memberId: `console:${name.toLowerCase()}`,
  clubId: `console:club of ${name.toLowerCase()}`,
  displayName: name,
});
export const stepOf = (reply: Reply): { readonly kind: string; readonly id: string } =>
  reply.data['step'] as unknown as { kind: string; id: string };
export const idOf = (reply: Reply): string => reply.data['walkId'] as string;
export const linesOn = (reply: Reply): readonly string[] =>
  consoleLines({ ...reply, choices: [] }, null, { colour: false, width: 60 });

/** Answers "not sure", and "no change" to remedies, until the walk is there or so many turns are over. */
export const goOn = async (
  who: Asker,
  from: Reply,
  isThere: (reply: Reply) => boolean,
  mostTurns: number,
): Promise<Reply> => {
  let reply = from;
  for (let turn = 0; turn < mostTurns && !isThere(reply); turn++) {
    const { kind, id } = stepOf(reply);
    const said = kind === 'try' ? 'same' : 'unsure';
    reply = await answer(deps, `triage walk:${idOf(reply)} answer:${id}.${said}`, NOW, who);
  }
  return reply;
};
