/** `gear`: what a member observes with, so that troubleshooting and routes need not ask. */
import { tidy } from '../ground/tidy.js';
import { isProblem, problem, type Problem } from '../ground/problem.js';
import { fittingChoices, NOWHERE, reply, type Outcome } from '../reply/reply.js';
import type { Gear } from '../store/store.js';
import { choice, defineCommand, optional, text, type Deps } from './core/command.js';
import { MOUNT_NAMES } from './asking/mount-for.js';
import { limitsWords, readLimits, readSpeeds, speedsWords } from './asking/mount-numbers.js';
import { MOUNT_KINDS } from '../pointing/mount/mount.js';
import { SYSTEMS } from '../reading/index.js';
import { commandLine } from './asking/question-parts.js';

const NOTHING: Gear = { mount: null, connection: null, system: null, speeds: null, limits: null };

const MOUNT_WORDS: Readonly<Record<NonNullable<Gear['mount']>, string>> = {
  german: 'German equatorial',
  fork: 'fork on a wedge',
  altaz: 'alt-azimuth',
};
const SYSTEM_WORDS: Readonly<Record<NonNullable<Gear['system']>, string>> = {
  windows: 'Windows',
  macos: 'macOS',
  linux: 'Linux',
  phone: 'phone or tablet',
};

const connectionTitle = (deps: Deps, id: string | null): string =>
  id === null ? 'not said' : (deps.triage().path(id)?.title ?? id);

/** What was given replaces what was there; "none" empties it; what was not given stays. */
const changed = <T extends string>(given: T | 'none' | undefined, before: T | null): T | null => {
  if (given === undefined) return before;
  return given === 'none' ? null : given;
};

/** The same for what has to be read first. */
const changedNumbers = <T>(
  given: string | undefined,
  before: T | null,
  read: (text: string) => T | Problem,
): T | null | Problem => {
  if (given === undefined) return before;
  return given.trim().toLowerCase() === 'none' ? null : read(given);
};

/** The ways of connecting whose name or title holds the words. */
const pathsLike = (deps: Deps, words: string) =>
  deps.triage().paths.filter(({ id, title }) => `${id} ${title}`.toLowerCase().includes(words.toLowerCase()));

const keptWords = (gear: Gear): string =>
  Object.values(gear).every((value) => value === null)
    ? 'Nothing is saved yet. Say it once: gear mount:german connection:controller-serial system:linux'
    : 'Walks you begin start from it and show it to those who follow them; routes past the Sun use it for you alone.';

export const gear = defineCommand({
  name: 'gear',
  summary: 'Say once what you observe with: mount, connection, computer',
  options: {
    mount: optional(choice('The kind of mount; none takes it away', [...MOUNT_KINDS, 'none'], MOUNT_NAMES)),
    connection: optional(text('How the computer reaches it; none takes it away', { complete: 'own', maxLength: 60 })),
    system: optional(
      choice("The computer's operating system; none takes it away", [...SYSTEMS, 'none'], {
        mac: 'macos',
        osx: 'macos',
        pc: 'windows',
        win: 'windows',
        tablet: 'phone',
      }),
    ),
    speeds: optional(
      text('Top speeds of both axes in degrees a second, such as 4,3; none takes them away', { maxLength: 40 }),
    ),
    limits: optional(
      text('Degrees past level a German mount may track, east and west, such as 0,10; none takes them away', {
        maxLength: 40,
      }),
    ),
  },
  bare: 'mount',
  examples: [
    'gear mount:german connection:controller-serial system:linux',
    'gear',
    'gear connection:none',
    'gear speeds:4,3 limits:"10 west"',
  ],
  completeOwn: async (deps, _option, partial) => {
    return pathsLike(deps, partial).map(({ id, title }) => ({ label: title.slice(0, 100), value: id }));
  },
  run: async (deps, { options, asker }): Promise<Outcome> => {
    const given = options.connection?.trim().toLowerCase();
    if (given !== undefined && given !== 'none' && deps.triage().path(given) === undefined) {
      return problem(
        'unknown-connection',
        `There is no connection "${tidy(given, 40)}". There are: ${deps
          .triage()
          .paths.map(({ id }) => id)
          .join(', ')}; or none.`,
        fittingChoices(
          pathsLike(deps, given).map(({ id, title }) => ({
            label: title,
            run: commandLine('gear', '', { mount: options.mount, connection: id, system: options.system }),
          })),
        ),
      );
    }
    const before = (await deps.store.gear.get(asker.memberId)) ?? NOTHING;
    const isChange = Object.values(options).some((value) => value !== undefined);
    const speeds = changedNumbers(options.speeds, before.speeds, readSpeeds);
    if (isProblem(speeds)) return speeds;
    const limits = changedNumbers(options.limits, before.limits, readLimits);
    if (isProblem(limits)) return limits;
    const now: Gear = {
      mount: changed(options.mount, before.mount),
      connection: changed(given, before.connection),
      system: changed(options.system, before.system),
      speeds,
      limits,
    };
    if (isChange) await deps.store.gear.put(asker.memberId, now);
    return reply({
      title: 'Your gear',
      level: isChange ? 'good' : 'info',
      summary: isChange
        ? 'Saved. Walks you begin start from it and show it to those who follow them; routes past the Sun use it for you alone.'
        : keptWords(now),
      facts: [
        { label: 'Mount', value: now.mount === null ? 'not said' : MOUNT_WORDS[now.mount] },
        { label: 'Connection', value: connectionTitle(deps, now.connection) },
        { label: 'Computer', value: now.system === null ? 'not said' : SYSTEM_WORDS[now.system] },
        ...(now.speeds === null ? [] : [{ label: 'Top speeds', value: speedsWords(now.speeds) }]),
        ...(now.limits === null ? [] : [{ label: 'Past level', value: limitsWords(now.limits) }]),
      ],
      pointsAt: NOWHERE,
      data: { gear: { ...now } },
    });
  },
});
