/** Runs what a member asked, as the member they are in that room. */
import type { Asker } from '../../../commands/core/command.js';
import { runLine } from '../../../commands/core/dispatch.js';
import { tidy } from '../../../ground/tidy.js';
import type { PlatformContext } from '../../../app/platform.js';
import type { Outcome } from '../../../reply/reply.js';
import type { UtcMs } from '../../../sky/types.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import { displayNameIn, mayManage, type RoomState } from '../rooms/rooms.js';
import type { Task } from './find-task.js';
import { withMemberIds } from './member-option.js';

const TYPING_MS = 20_000;

export interface Done {
  /** The command's name, for the counts. */
  readonly name: string;
  readonly outcome: Outcome;
}

export const askerIn = (roomId: string, senderId: string, state: RoomState, isPrivate: boolean): Asker => {
  const memberId = `matrix:${senderId}`;
  return {
    platform: 'matrix',
    memberId,
    displayName: tidy(displayNameIn(state, senderId) ?? '', 60) || tidy(senderId.slice(1).replace(/:.*$/u, ''), 60),
    clubId: isPrivate ? memberId : `matrix:${roomId}`,
    channelId: roomId,
    isManager: isPrivate || mayManage(state, senderId),
    isPrivate,
  };
};

/** Never rejects. */
export const createRunner =
  ({ deps, log, metrics }: PlatformContext, client: PierhandMatrixClient) =>
  async (run: Task['run'], asker: Asker, state: RoomState, askedUtcMs: UtcMs): Promise<Done> => {
    if ('outcome' in run) return { name: 'pick', outcome: run.outcome };
    let name = 'unknown';
    let isTyping = false;
    const typing = (is: boolean): void => {
      isTyping = is;
      void client.setTyping(asker.channelId, is, TYPING_MS).catch(() => undefined);
    };
    const outcome = await runLine(deps, run.line, {
      asker,
      nowUtcMs: askedUtcMs,
      valuesOf: (command, raw) => {
        ({ name } = command);
        if (command.slow === true) typing(true);
        return withMemberIds(command, raw, state);
      },
      onError: (error, failed) => {
        log.error({ err: error, command: failed }, 'a command failed');
        metrics.failed('matrix', 'command');
      },
    });
    if (isTyping) typing(false);
    return { name, outcome };
  };
