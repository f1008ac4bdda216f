/** Runs what a member asked, as the member they are in that room. */
import type { Asker, Command } from '../../../commands/core/command.js';
import { runLine } from '../../../commands/core/dispatch.js';
import { parseLine } from '../../../commands/core/grammar.js';
import type { MemberFile } from '../../../ground/member-file.js';
import { isProblem, type Problem } from '../../../ground/problem.js';
import { tidy } from '../../../ground/tidy.js';
import type { PlatformContext } from '../../../app/platform.js';
import type { Outcome } from '../../../reply/reply.js';
import type { UtcMs } from '../../../sky/types.js';
import { commandFaults } from '../../shared/faults.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import { displayNameIn, mayManage, type RoomState } from '../rooms/rooms.js';
import type { Run } from './find-task.js';
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

/** The command that files and words in a walk's thread are for. */
const WALK_COMMAND = 'triage';
/** Words of a thread that turn out to be for nobody are met with silence. */
const FOR_NOBODY: readonly string[] = ['unknown-command', 'unexpected-words', 'beside-the-walk'];

/** Names as ids, and the file that the line speaks of where the command takes one. */
const valuesFor = (
  command: Command,
  raw: ReadonlyMap<string, string>,
  state: RoomState,
  file: MemberFile | null,
): ReadonlyMap<string, unknown> | Problem => {
  const values = withMemberIds(command, raw, state);
  const option = Object.entries(command.options).find(([, { type }]) => type === 'file')?.[0];
  return isProblem(values) || file === null || option === undefined
    ? values
    : new Map<string, unknown>([...values, [option, file]]);
};

/** Never rejects. Null: it was for nobody. */
export const createRunner = (context: PlatformContext, client: PierhandMatrixClient) => {
  const { deps } = context;
  const onError = commandFaults(context, 'matrix');
  const lineOf = (run: Run): string => {
    if ('line' in run) return run.line;
    return 'words' in run ? run.words : WALK_COMMAND;
  };
  return async (run: Run, asker: Asker, state: RoomState, askedUtcMs: UtcMs): Promise<Done | null> => {
    if ('outcome' in run) return { name: 'pick', outcome: run.outcome };
    const isWords = 'words' in run;
    // Talk that happens to begin with a command's name asks for nothing.
    if (isWords && !isProblem(parseLine(run.words, deps.commands))) return null;
    let name = 'unknown';
    let isTyping = false;
    const typing = (is: boolean): void => {
      isTyping = is;
      void client.setTyping(asker.channelId, is, TYPING_MS).catch(() => undefined);
    };
    const file = ('walkFile' in run && run.walkFile) || ('line' in run && run.file) || null;
    const outcome = await runLine(deps, lineOf(run), {
      asker,
      nowUtcMs: askedUtcMs,
      valuesOf: (command, raw) => {
        ({ name } = command);
        if (file !== null) typing(true);
        return valuesFor(command, raw, state, file);
      },
      onError,
    });
    if (isTyping) typing(false);
    return isWords && isProblem(outcome) && FOR_NOBODY.includes(outcome.problem) ? null : { name, outcome };
  };
};
