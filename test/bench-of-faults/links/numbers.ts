/** The numbers of a miss as a member reads them off sky and display, in the line that the walk takes. */
import { wrapHours24 } from '../../../bot/sky/angles.js';
import { siderealTimes } from '../../../bot/sky/sidereal-time.js';
import { messageOf, slewOf } from '../chain.js';
import type { World } from '../world.js';
import { altAzOf, believedAltitudeDeg, believedSite, believedTarget, missOf, siderealGapHours } from './sky.js';

const clock = (hours: number): string => {
  const minutes = Math.round(wrapHours24(hours) * 60) % 1440;
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
};

/** Half degrees are what a member can judge against a chart. */
const half = (deg: number): string => (Math.round(deg * 2) / 2).toFixed(1);

/** Null where the mount cannot be sent anywhere, or stands on a base the line says nothing of. */
export const numbersFrom = (w: World): string | null => {
  const { sky } = w;
  if (messageOf(w) !== 'connects' || slewOf(w) !== 'moves' || sky.mount !== 'german') return null;
  const miss = missOf(sky);
  if (miss.mirrored || Math.abs(miss.eastDeg) > 150) return null;
  const lstHours = siderealTimes(sky.utcMs, sky.longitudeDeg).lastHours;
  const hourAngleHours = -sky.target.eastHours - miss.eastDeg / 15 / Math.cos((sky.target.decDeg * Math.PI) / 180);
  const [altitudeDeg, azimuthDeg] = altAzOf(
    { hourAngleHours, decDeg: sky.target.decDeg + miss.northDeg },
    sky.latitudeDeg,
  );
  const shownAzimuthDeg = altAzOf(believedTarget(sky), believedSite(sky).latitudeDeg)[1];
  return [
    `target ${clock(lstHours + sky.target.eastHours)} ${half(sky.target.decDeg)}`,
    `landed ${half(altitudeDeg)},${half((azimuthDeg + 360) % 360)}`,
    `shown ${half(believedAltitudeDeg(sky))},${half((shownAzimuthDeg + 360) % 360)}`,
    `lst ${clock(lstHours + siderealGapHours(sky))}`,
    `site ${sky.latitudeDeg.toFixed(2)},${sky.longitudeDeg.toFixed(2)}`,
    `at ${new Date(sky.utcMs).toISOString().slice(0, 16)}Z`,
  ].join('; ');
};
