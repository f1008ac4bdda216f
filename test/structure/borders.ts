/** Which room of bot/ may import which, and the finders of what goes against it: forbidden imports, cycles, side doors. */
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';

/** Source by path from the project's root, with forward slashes. */
export type Sources = ReadonlyMap<string, string>;

const FOUNDATION = ['ground', 'sky'] as const;
const ASKED = [...FOUNDATION, 'catalogue', 'places', 'times', 'reply', 'store', 'cautions'] as const;
const COMMAND: readonly string[] = [
  ...ASKED,
  'reading',
  'pictures',
  'ahead',
  'small-bodies',
  'commands/core',
  'commands/asking',
  'pointing',
  'reminders',
  'evening',
  'triage',
];
const PLATFORM: readonly string[] = [
  'ground',
  'sky',
  'reply',
  'store',
  'reminders',
  'app',
  'commands/core',
  'platforms/shared',
];

/**
 * What each room may import besides itself, all types included. A room is a folder of bot/; of `commands` and `platforms` each
 * folder is one. A new room needs a line here; a command's folder may import what every command may, and other commands' folders;
 * a platform's what every platform may, and serve.ts opens them all.
 */
export const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  ground: [],
  sky: ['ground'],
  pointing: FOUNDATION,
  catalogue: FOUNDATION,
  places: FOUNDATION,
  'small-bodies': [...FOUNDATION, 'catalogue'],
  cautions: ['ground'],
  times: [...FOUNDATION, 'pointing'],
  reply: FOUNDATION,
  reading: ['ground'],
  pictures: ['ground'],
  triage: ['ground', 'reading'],
  ahead: [...FOUNDATION, 'catalogue', 'small-bodies'],
  // Of pointing the kinds of mount that a member's gear may be.
  store: [...FOUNDATION, 'reply', 'pointing'],
  evening: [...FOUNDATION, 'catalogue', 'pointing', 'reply', 'small-bodies'],
  reminders: [...FOUNDATION, 'pointing', 'times', 'reply', 'store', 'app'],
  // Dispatch lays what people type out over the options, and completion names saved sites: both are asked for in asking/.
  'commands/core': [...ASKED, 'triage', 'pictures', 'commands/asking'],
  // What one looks with is read as the evening reads it.
  // Which lines come near the Sun is told by weights, as what is said of a mount.
  'commands/asking': [...ASKED, 'reading', 'pointing', 'evening', 'commands/core'],
  commands: COMMAND,
  app: [...ASKED, 'triage', 'pictures', 'small-bodies', 'reading', 'commands', 'commands/core'],
  'platforms/shared': ['ground', 'sky', 'reply', 'store', 'app', 'commands/core'],
  main: ['app', 'serve'],
  serve: ['ground', 'app', 'reminders'],
  try: ['ground', 'app', 'reminders', 'platforms/browser'],
  ask: ['ground', 'app', 'reply', 'platforms/console'],
  backup: ['ground', 'app', 'store'],
};

/** The folders that have an index.ts: it is their only door, or it is not there. Tests may go in by the window. */
export const doorsIn = (sources: Sources): readonly string[] =>
  [...sources.keys()].filter((file) => file.endsWith('/index.ts')).map((file) => path.posix.dirname(file));

const SPLIT = ['commands', 'platforms'];

export const roomOf = (file: string): string => {
  const [, first = '', second = '', ...rest] = file.split('/');
  if (second === '') return first.replace(/\.ts$/u, '');
  return SPLIT.includes(first) && rest.length > 0 ? `${first}/${second}` : first;
};

const IMPORT = /(?:\bfrom|\bimport\()\s*'(\.[^']+)'/gu;

const isPlatform = (room: string): boolean => room.startsWith('platforms/') && room !== 'platforms/shared';

/** What a room may import; null for a room that the table does not know. */
export const allowedTo = (room: string): ((target: string) => boolean) | null => {
  const listed = MAY_IMPORT[room];
  if (room === 'serve') return (target) => listed?.includes(target) === true || isPlatform(target);
  if (listed !== undefined && room !== 'commands') return (target) => listed.includes(target);
  if (isPlatform(room)) return (target) => PLATFORM.includes(target);
  const isCommand = room === 'commands' || room.startsWith('commands/');
  return isCommand ? (target) => COMMAND.includes(target) || /^commands(?:\/|$)/u.test(target) : null;
};

/** The project's files that one file imports, types included. */
export const importsOf = (file: string, source: string): readonly string[] =>
  [...source.matchAll(IMPORT)].map(([, specifier = '']) =>
    path.posix.join(path.posix.dirname(file), specifier).replace(/\.js$/u, '.ts'),
  );

export const readSources = (root: string, folder: string): Sources =>
  new Map(
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => [
        `${folder}/${name.replaceAll(path.sep, '/')}`,
        readFileSync(path.join(root, folder, name), 'utf8'),
      ]),
  );

/** "bot/sky/x.ts (sky) may not import bot/store/y.ts (store)", for each import that crosses a border it may not. */
export const forbiddenImports = (sources: Sources): readonly string[] =>
  [...sources].flatMap(([file, source]) => {
    const room = roomOf(file);
    return importsOf(file, source)
      .filter((target) => target.startsWith('bot/'))
      .filter((target) => roomOf(target) !== room && allowedTo(room)?.(roomOf(target)) !== true)
      .map((target) => `${file} (${room}) may not import ${target} (${roomOf(target)})`);
  });

/** Imports that go round a folder's door. */
export const sideDoors = (sources: Sources): readonly string[] => {
  const doors = doorsIn(sources);
  return [...sources].flatMap(([file, source]) =>
    importsOf(file, source)
      .filter((target) =>
        doors.some(
          (door) => target.startsWith(`${door}/`) && !file.startsWith(`${door}/`) && target !== `${door}/index.ts`,
        ),
      )
      .map((target) => `${file} goes round the door to ${target}`),
  );
};

/** The knots of files that import one another in a circle, each as its files in order (Tarjan, SIAM J. Comput. 1, 146 (1972)). */
export const knotsIn = (sources: Sources): readonly (readonly string[])[] => {
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const knots: (readonly string[])[] = [];
  const lower = (file: string, to: number | undefined): void =>
    void lowest.set(file, Math.min(lowest.get(file) ?? Infinity, to ?? Infinity));
  const visit = (file: string): void => {
    order.set(file, order.size);
    lower(file, order.get(file));
    open.push(file);
    for (const target of importsOf(file, sources.get(file) ?? '')) {
      if (!order.has(target)) {
        visit(target);
        lower(file, lowest.get(target));
      } else if (open.includes(target)) lower(file, order.get(target));
    }
    if (lowest.get(file) !== order.get(file)) return;
    const knot = open.splice(open.indexOf(file));
    if (knot.length > 1) knots.push(knot.sort());
  };
  for (const file of sources.keys()) if (!order.has(file)) visit(file);
  return knots;
};
