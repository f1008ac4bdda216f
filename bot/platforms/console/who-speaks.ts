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

/** "As I said", "as before", "as it happens": these begin a sentence and name nobody. */
const NO_NAME = new Set(
  (
    'i you he she it we they this that these those there my our your his her its their a an the one if in on at to from for of with by per ' +
    'said before above below usual always ever expected requested promised told asked shown described follows follow stated mentioned ' +
    'noted written planned normal well soon long far much many little good bad such yet until when what who how is are was were be can ' +
    'could do does did will would should suggested advised instructed predicted per regards though opposed first last second no not yes ' +
    'and or but so then now here already seen read given'
  ).split(' '),
);
const NAME = /^(?:console:|@)?\p{L}[\p{L}\p{N}'\u2019._-]*(?: \p{L}[\p{L}\p{N}'\u2019._-]*){0,2}$/u;

/**
 * Who is to speak from now on: "as Tamsin", "/as tamsin berg". Of several words each begins with a capital, unless the slash or a name
 * spoken under before makes it plain.
 * @param heard names spoken under so far, in lower case
 * @returns null where the line is a sentence
 */
export const speakerNamed = (line: string, heard: ReadonlySet<string>): string | null => {
  const [, slash = '', given = ''] = /^\s*(\/?)as\s+(\S.*?)\s*$/iu.exec(line) ?? [];
  const name = given.normalize('NFC').replace(/\s+/gu, ' ');
  const words = name.split(' ');
  if (heard.has(name.toLowerCase()) || /^(?:me|you)$/iu.test(name)) return name;
  if (!NAME.test(name) || words.some((word) => NO_NAME.has(word.toLowerCase()))) return null;
  return slash !== '' || words.length === 1 || words.every((word) => /^\p{Lu}/u.test(word)) ? name : null;
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
