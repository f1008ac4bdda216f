/** Where the tube goes: what the mount was told about place and time, and how it was started, against the true sky. */
import { wrapDeg180, wrapHours12 } from '../../../bot/sky/angles.js';
import { siderealTimes } from '../../../bot/sky/sidereal-time.js';
import type { SkyState, World } from '../world.js';

const RAD = Math.PI / 180;
const HOUR_MS = 3_600_000;

/** How far the mount's idea of universal time is ahead of the truth, hours. */
export const clockAheadHours = ({ told, zoneHours, summer, sends }: SkyState): number => {
  if (sends === 'right') return 0;
  if (sends === 'wrong-clock') return -2;
  return told.clockOffHours - (told.zoneHours - zoneHours) - (Number(told.summer) - Number(summer));
};

/** The place the mount works with. A program that sends its own overwrites what was typed. */
export const believedSite = (sky: SkyState): { readonly latitudeDeg: number; readonly longitudeDeg: number } => {
  if (sky.sends === 'right') return { latitudeDeg: sky.latitudeDeg, longitudeDeg: sky.longitudeDeg };
  // A program's factory site: an observatory far away, as good as any.
  if (sky.sends === 'wrong-site') return { latitudeDeg: sky.latitudeDeg - 11, longitudeDeg: sky.longitudeDeg + 23 };
  return sky.told;
};

/** The mount's sidereal time minus the true one, hours in (-12, 12]. */
export const siderealGapHours = (sky: SkyState): number => {
  const site = believedSite(sky);
  const mounts = siderealTimes(sky.utcMs + clockAheadHours(sky) * HOUR_MS, site.longitudeDeg).lastHours;
  return wrapHours12(mounts - siderealTimes(sky.utcMs, sky.longitudeDeg).lastHours);
};

interface HourPlace {
  /** Hours west of the meridian. */
  readonly hourAngleHours: number;
  readonly decDeg: number;
}

export const altAzOf = ({ hourAngleHours, decDeg }: HourPlace, latitudeDeg: number): readonly [number, number] => {
  const [h, d, f] = [hourAngleHours * 15 * RAD, decDeg * RAD, latitudeDeg * RAD];
  const altitude = Math.asin(Math.sin(f) * Math.sin(d) + Math.cos(f) * Math.cos(d) * Math.cos(h));
  const azimuth = Math.atan2(
    -Math.cos(d) * Math.sin(h),
    Math.sin(d) * Math.cos(f) - Math.cos(d) * Math.sin(f) * Math.cos(h),
  );
  return [altitude / RAD, azimuth / RAD];
};

const hourPlaceOf = (altitudeDeg: number, azimuthDeg: number, latitudeDeg: number): HourPlace => {
  const [a, z, f] = [altitudeDeg * RAD, azimuthDeg * RAD, latitudeDeg * RAD];
  const dec = Math.asin(Math.sin(f) * Math.sin(a) + Math.cos(f) * Math.cos(a) * Math.cos(z));
  const h = Math.atan2(-Math.cos(a) * Math.sin(z), Math.sin(a) * Math.cos(f) - Math.cos(a) * Math.sin(f) * Math.cos(z));
  return { hourAngleHours: h / RAD / 15, decDeg: dec / RAD };
};

const trueTarget = ({ target }: SkyState): HourPlace => ({ hourAngleHours: -target.eastHours, decDeg: target.decDeg });
export const believedTarget = (sky: SkyState): HourPlace => ({
  hourAngleHours: wrapHours12(-sky.target.eastHours + siderealGapHours(sky)),
  decDeg: sky.target.decDeg,
});

/** The altitude at which the mount believes its target, degrees. */
export const believedAltitudeDeg = (sky: SkyState): number =>
  altAzOf(believedTarget(sky), believedSite(sky).latitudeDeg)[0];

export interface Miss {
  readonly eastDeg: number;
  readonly northDeg: number;
  readonly totalDeg: number;
  readonly mirrored: boolean;
}

/** Where the tube lands as seen from the target. An equatorial mount keeps hour angle; an alt-azimuth mount keeps altitude and azimuth. */
export const missOf = (sky: SkyState): Miss => {
  const wanted = trueTarget(sky);
  const set = believedTarget(sky);
  const landed =
    sky.mount === 'altaz'
      ? hourPlaceOf(...altAzOf(set, believedSite(sky).latitudeDeg), sky.latitudeDeg)
      : { hourAngleHours: set.hourAngleHours, decDeg: set.decDeg };
  let eastDeg = wrapDeg180((wanted.hourAngleHours - landed.hourAngleHours) * 15) * Math.cos(wanted.decDeg * RAD);
  let northDeg = landed.decDeg - wanted.decDeg;
  // Started elsewhere than at home, both axes carry the same error to every target.
  if (!sky.atHome) [eastDeg, northDeg] = [eastDeg + 17, northDeg - 9];
  // A sync on the wrong star moves the whole model by the distance between the two, here some degrees.
  if (!sky.starRight) [eastDeg, northDeg] = [eastDeg - 4, northDeg + 6];
  if (sky.epochMixed) [eastDeg, northDeg] = [eastDeg - 0.33, northDeg + 0.12];
  if (sky.mount !== 'altaz' && sky.polarOffDeg > 2) northDeg += sky.polarOffDeg;
  // An equatorial mount told the other hemisphere turns its hour axis the other way.
  const otherHemisphere = sky.mount !== 'altaz' && believedSite(sky).latitudeDeg * sky.latitudeDeg < 0;
  return { eastDeg, northDeg, totalDeg: Math.hypot(eastDeg, northDeg), mirrored: sky.reversed || otherHemisphere };
};

export const MISSES_FROM_DEG = 0.25;
/** Whether the mount refuses the target because it believes it below its limit. */
export const refusesTarget = ({ sky, program }: World): boolean => believedAltitudeDeg(sky) < program.lowLimitDeg;
export const lands = ({ sky, oddity }: World): boolean =>
  missOf(sky).totalDeg < MISSES_FROM_DEG &&
  !missOf(sky).mirrored &&
  oddity?.shows !== 'misses-small' &&
  oddity?.shows !== 'misses-anyhow';

const missKind = (w: World): string => {
  const { eastDeg, northDeg, totalDeg, mirrored } = missOf(w.sky);
  if (mirrored || totalDeg > 60) return 'mirrored';
  if (w.oddity?.shows === 'misses-anyhow') return 'anywhere';
  if (totalDeg < MISSES_FROM_DEG) return w.oddity?.shows === 'misses-small' ? 'small' : 'on-target';
  if (totalDeg < 1) return 'small';
  if (!w.sky.atHome) return 'anywhere';
  if (Math.abs(northDeg) > Math.abs(eastDeg)) return 'north-south';
  return Math.abs(Math.abs(eastDeg) - 15) < 3 ? 'one-hour' : 'east-west';
};

const gapKind = (sky: SkyState): string => {
  const minutes = Math.abs(siderealGapHours(sky)) * 60;
  if (minutes < 1.5) return 'same';
  if (Math.abs(minutes - 60) < 4) return 'one-hour';
  const overHour = Math.abs(minutes - 60 * Math.round(minutes / 60));
  if (minutes > 60 && overHour < 4) return 'whole-hours';
  const days = minutes / 3.943;
  return days < 60 && Math.abs(days - Math.round(days)) < 0.15 && minutes < 200 ? 'four-minutes' : 'another';
};

const zoneEntry = ({ told, zoneHours, summer }: SkyState): string => {
  if (told.zoneHours === -zoneHours && zoneHours !== 0) return 'sign';
  if (told.zoneHours !== zoneHours) return 'offset';
  return told.summer === summer ? 'match' : 'summer-time';
};

const screenLine = (sky: SkyState): string => {
  if (sky.told.siteEntry === 'north-south') return 'latitude';
  if (sky.told.siteEntry === 'east-west' || sky.told.siteEntry === 'decimals') return 'longitude';
  if (sky.told.siteEntry !== 'match') return 'place';
  if (['swapped', 'day-off', 'reset'].includes(sky.told.entry)) return 'date';
  if (sky.told.entry !== 'right') return 'time';
  const zone = zoneEntry(sky);
  if (zone !== 'match') return zone === 'summer-time' ? 'summer-time' : 'offset';
  if (sky.sends === 'wrong-clock') return 'time';
  return sky.sends === 'wrong-site' ? 'place' : 'all-match';
};

const doubt = ({ sky }: World): string => {
  if (!sky.atHome) return 'not-home';
  if (!sky.starRight) return 'star';
  return sky.polarOffDeg > 1 ? 'axis' : 'none';
};

const programClock = ({ sky }: World): string => {
  if (sky.sends === 'wrong-clock') return 'wrong-clock';
  return sky.sends === 'wrong-site' ? 'wrong-site' : 'right-or-none';
};

/** What looks at place, time and start answer. */
export const SKY_RULES: Readonly<Record<string, (w: World) => string>> = {
  miss: missKind,
  'sidereal-gap': ({ sky }) => gapKind(sky),
  'site-entries': ({ sky }) => (sky.sends === 'wrong-site' ? 'another-place' : sky.told.siteEntry),
  'zone-entries': ({ sky }) => zoneEntry(sky),
  'date-entries': ({ sky }) => (sky.sends === 'wrong-clock' ? 'clock-off' : sky.told.entry),
  'entries-screen': ({ sky }) => screenLine(sky),
  'program-clock': programClock,
  'epoch-entries': ({ sky }) => (sky.epochMixed ? 'differ' : 'same'),
  'start-doubts': doubt,
  'home-start': ({ sky }) => (sky.atHome ? 'at-home' : 'elsewhere'),
  'star-sure': ({ sky }) => (sky.starRight ? 'sure' : 'doubtful'),
  'polar-axis': ({ sky }) => (sky.polarOffDeg > 1 ? 'off' : 'close'),
  'east-key': ({ sky }) => (sky.reversed ? 'west' : 'east'),
};
