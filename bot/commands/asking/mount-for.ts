/** Which kind of mount a question is about: the one named, the one the member told of before, else a German equatorial. */
import { MOUNT_KINDS, type MountKind } from '../../pointing/mount/mount.js';
import { StoreError, type Gear } from '../../store/store.js';
import { choice, optional, type Asker, type Request } from '../core/command.js';
import type { Deps } from '../core/deps.js';

/** What people call each kind of mount. */
export const MOUNT_NAMES: Readonly<Record<string, MountKind>> = {
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
};

export const mountOption = optional(
  choice('The mount: german, fork or altaz; without it yours if you saved it, else german', MOUNT_KINDS, MOUNT_NAMES),
);

/** Who asks, and the mark that their own row was used. */
export type Asking = Pick<Request<unknown>, 'asker' | 'privacy'>;

/** What the asker saved of their mount; a store that does not answer costs only that. */
const savedGear = async (deps: Pick<Deps, 'store'>, asker: Asker): Promise<Gear | null> => {
  try {
    return await deps.store.gear.get(asker.memberId);
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    return null;
  }
};

export const mountFor = async (
  deps: Pick<Deps, 'store'>,
  asker: Asker,
  asked: MountKind | undefined,
): Promise<MountKind> => asked ?? (await savedGear(deps, asker))?.mount ?? 'german';

/**
 * What the asker saved of their mount in numbers, where that is the kind of mount asked about. Nobody else is to read these, so
 * using them marks the request.
 */
export const savedNumbers = async <N extends 'speeds' | 'limits'>(
  deps: Pick<Deps, 'store'>,
  { asker, privacy }: Asking,
  which: N,
  mount: MountKind,
): Promise<Gear[N] | null> => {
  const gear = await savedGear(deps, asker);
  if (gear === null || gear[which] === null || (gear.mount ?? mount) !== mount) return null;
  privacy.markPersonal();
  return gear[which];
};

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
