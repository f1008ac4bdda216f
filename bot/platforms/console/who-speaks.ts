/** Members on the console: whoever sits at the machine, and others by name, so that a helper and a member can share it. */
import { tidy } from '../../ground/tidy.js';
import { fileOnDisk } from './file-on-disk.js';
import type { Asker, Command, Deps } from '../../commands/core/command.js';
import { runLine, type ErrorSink } from '../../commands/core/dispatch.js';
import type { Outcome } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';

/** Whoever sits at the machine, with every right over its own store. */
export const CONSOLE_ASKER: Asker = {
  platform: 'console',
  memberId: 'console:local',
  displayName: 'you',
  clubId: 'console:club',
  channelId: 'console',
  isManager: true,
  isPrivate: true,
};

const NAME_LIMIT = 40;

/** "Tamsin", "@tamsin" or "console:tamsin"; "me" is the one given, usually whoever sits at the machine. */
export const askerNamed = (given: string, me = CONSOLE_ASKER): Asker => {
  const displayName = tidy(given, NAME_LIMIT).replace(/^(?:console:|@)+/iu, '');
  const key = displayName.normalize('NFC').toLowerCase();
  if (['', 'me', 'you'].includes(key)) return me;
  return key === 'local' ? CONSOLE_ASKER : { ...CONSOLE_ASKER, memberId: `console:${key}`, displayName };
};

/** Members by name become ids; a path becomes the file there. */
const withMembersAndFiles = (
  command: Command,
  raw: ReadonlyMap<string, string>,
  asker: Asker,
): ReadonlyMap<string, unknown> =>
  new Map(
    [...raw].map(([name, value]) => {
      const type = command.options[name]?.type;
      if (type === 'member') return [name, askerNamed(value, asker).memberId];
      return [name, type === 'file' ? fileOnDisk(value) : value];
    }),
  );

/** Reads and runs one line said by a member on the console. Never rejects. */
export const runConsoleLine = (
  deps: Deps,
  line: string,
  asker: Asker,
  nowUtcMs: UtcMs,
  onError: ErrorSink,
): Promise<Outcome> =>
  runLine(deps, line, {
    asker,
    nowUtcMs,
    onError,
    valuesOf: (command, raw) => withMembersAndFiles(command, raw, asker),
  });
