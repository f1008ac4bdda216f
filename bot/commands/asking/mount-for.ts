/** Which kind of mount a question is about: the one named, the one the member told of before, else a German equatorial. */
import { MOUNT_KINDS, type MountKind } from '../../pointing/mount/mount.js';
import { orWhenSilent } from '../../store/or-when-silent.js';
import type { Gear, Store } from '../../store/store.js';
import { choice, optional } from '../core/command.js';
import type { Asking } from './resolve-site.js';

/** What people call each kind of mount. */
export const MOUNT_NAMES = {
  equatorial: 'german',
  eq: 'german',
  gem: 'german',
  'german-equatorial': 'german',
  wedge: 'fork',
  'fork-on-a-wedge': 'fork',
  dobsonian: 'altaz',
  dob: 'altaz',
  'alt-az': 'altaz',
  'alt-azimuth': 'altaz',
  altazimuth: 'altaz',
  az: 'altaz',
} as const satisfies Readonly<Record<string, MountKind>>;

export const mountOption = optional(
  choice('The mount: german, fork or altaz; without it yours if you saved it, else german', MOUNT_KINDS, MOUNT_NAMES),
);

/** A store that does not answer costs only what the member saved. */
const gearIn = (store: Store, memberId: string): Promise<Gear | null> =>
  orWhenSilent(() => store.gear.get(memberId), null);

/** A saved mount makes the answer the asker's alone; the usual one, used where none is saved, does not. */
export const mountFor = async ({ asker, privacy }: Asking, asked: MountKind | undefined): Promise<MountKind> => {
  if (asked !== undefined) return asked;
  const saved = (await gearIn(privacy.unmarked, asker.memberId))?.mount ?? null;
  if (saved !== null) privacy.markPersonal();
  return saved ?? 'german';
};

/** What the asker saved of their mount in numbers, where that is the kind of mount asked about: for them alone. */
export const savedNumbers = async <N extends 'speeds' | 'limits'>(
  { asker, privacy }: Asking,
  which: N,
  mount: MountKind,
): Promise<Gear[N] | null> => {
  const gear = await gearIn(privacy.unmarked, asker.memberId);
  if (gear === null || gear[which] === null || (gear.mount ?? mount) !== mount) return null;
  privacy.markPersonal();
  return gear[which];
};

/**
 * Connection and computer, for a walk that the member begins themself: `gear` tells who saves them that such a walk begins from
 * them and shows them to those who follow it, so they do not make it the asker's alone.
 */
export const gearForOwnWalk = async ({ asker, privacy }: Asking): Promise<Pick<Gear, 'connection' | 'system'>> => {
  const saved = await gearIn(privacy.unmarked, asker.memberId);
  return { connection: saved?.connection ?? null, system: saved?.system ?? null };
};

/**
 * The aperture of the asker's telescope, in millimetres: as `gear` tells who saves it, answers of what one shows are for it in the open, so
 * it does not make them the asker's alone.
 */
export const savedApertureMm = async ({ asker, privacy }: Asking): Promise<number | null> =>
  (await gearIn(privacy.unmarked, asker.memberId))?.apertureMm ?? null;

export const MOUNT_WORDS: Readonly<Record<MountKind, string>> = {
  german: 'a German equatorial mount',
  fork: 'a fork mount',
  altaz: 'an alt-azimuth mount',
};

/** Where each mount stands when it is switched on or parked. */
export const HOME_WORDS: Readonly<Record<MountKind, string>> = {
  german: 'home (tube at the pole, counterweight down)',
  fork: 'home (tube at the pole)',
  altaz: 'home (tube level, to the north)',
};
