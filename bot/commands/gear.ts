/** `gear`: what a member observes with, so that troubleshooting and routes need not ask. */
import { tidy } from '../ground/tidy.js';
import { isProblem, problem, type Problem } from '../ground/problem.js';
import { isHandHeld, readEquipment } from '../evening/equipment.js';
import { fittingChoices, NOWHERE, reply, type Fact, type Outcome } from '../reply/reply.js';
import type { Gear } from '../store/store.js';
import { choice, defineCommand, optional, text, type Deps } from './core/command.js';
import { keepLastAsked } from './asking/following/last-asked.js';
import { MOUNT_NAMES } from './asking/mount-for.js';
import { limitsWords, readLimits, readSpeeds, speedsWords } from './asking/mount-numbers.js';
import { MOUNT_KINDS, type MountKind } from '../pointing/mount/mount.js';
import { SYSTEMS } from '../reading/index.js';
import { commandLine } from './asking/question-parts.js';

const NOTHING: Gear = { mount: null, connection: null, system: null, speeds: null, limits: null, apertureMm: null };

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

/** "8 inch", "200 mm": of a telescope alone, in millimetres. */
const readAperture = (text: string): number | Problem => {
  const read = readEquipment(text);
  return isProblem(read) || isHandHeld(read)
    ? problem('bad-option', 'aperture: takes that of a telescope, such as aperture:150 or aperture:"8 inch", or none.')
    : read.apertureMm;
};

/** The ways of connecting whose name or title holds the words. */
const pathsLike = (deps: Deps, words: string) =>
  deps.triage().paths.filter(({ id, title }) => `${id} ${title}`.toLowerCase().includes(words.toLowerCase()));

const usedWords = ({ apertureMm }: Gear): string =>
  `Walks you begin start from it and show it to those who follow them; routes past the Sun use it for you alone.${
    apertureMm === null ? '' : ' What up and tonight show is for that telescope, for all to read.'
  }`;

const keptWords = (gear: Gear): string =>
  Object.values(gear).every((value) => value === null)
    ? 'Nothing is saved yet. Say it once: gear mount:german connection:controller-serial system:linux'
    : usedWords(gear);

interface GearSaid {
  readonly mount?: MountKind | 'none' | undefined;
  readonly connection?: string | undefined;
  readonly system?: NonNullable<Gear['system']> | 'none' | undefined;
  readonly speeds?: string | undefined;
  readonly limits?: string | undefined;
  readonly aperture?: string | undefined;
}

const changedGear = (before: Gear, said: GearSaid): Gear | Problem => {
  const speeds = changedNumbers(said.speeds, before.speeds, readSpeeds);
  if (isProblem(speeds)) return speeds;
  const limits = changedNumbers(said.limits, before.limits, readLimits);
  if (isProblem(limits)) return limits;
  const apertureMm = changedNumbers(said.aperture, before.apertureMm, readAperture);
  if (isProblem(apertureMm)) return apertureMm;
  return {
    mount: changed(said.mount, before.mount),
    connection: changed(said.connection?.trim().toLowerCase(), before.connection),
    system: changed(said.system, before.system),
    speeds,
    limits,
    apertureMm,
  };
};

const gearFacts = (deps: Deps, now: Gear): readonly Fact[] => [
  { label: 'Mount', value: now.mount === null ? 'not said' : MOUNT_WORDS[now.mount] },
  { label: 'Connection', value: connectionTitle(deps, now.connection) },
  { label: 'Computer', value: now.system === null ? 'not said' : SYSTEM_WORDS[now.system] },
  ...(now.speeds === null ? [] : [{ label: 'Top speeds', value: speedsWords(now.speeds) }]),
  ...(now.limits === null ? [] : [{ label: 'Past level', value: limitsWords(now.limits) }]),
  ...(now.apertureMm === null ? [] : [{ label: 'Telescope', value: `${Math.round(now.apertureMm)} mm aperture` }]),
];

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
    aperture: optional(text('Of your telescope, such as 150 or "8 inch"; none takes it away', { maxLength: 40 })),
  },
  bare: 'mount',
  examples: [
    'gear mount:german connection:controller-serial system:linux',
    'gear',
    'gear connection:none',
    'gear speeds:4,3 limits:"10 west"',
    'gear aperture:"8 inch"',
  ],
  completeOwn: async (deps, _option, partial) => {
    return pathsLike(deps, partial).map(({ id, title }) => ({ label: title.slice(0, 100), value: id }));
  },
  run: async (deps, { options, asker, nowUtcMs }): Promise<Outcome> => {
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
    const now = changedGear(before, options);
    if (isProblem(now)) return now;
    if (isChange) await deps.store.gear.put(asker.memberId, now);
    // It takes the place of what was told before in talk.
    if (options.aperture !== undefined)
      for (const kept of ['scope', 'kit'] as const) keepLastAsked(deps.store, asker, null, nowUtcMs, kept);
    return reply({
      title: 'Your gear',
      level: isChange ? 'good' : 'info',
      summary: isChange ? `Saved. ${usedWords(now)}` : keptWords(now),
      facts: gearFacts(deps, now),
      pointsAt: NOWHERE,
      data: { gear: { ...now } },
    });
  },
});
