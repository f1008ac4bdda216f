/** A saved site in words and as data, alike wherever it is shown. */
import { SKY_WORDS } from '../../evening/equipment.js';
import { positionName } from '../../places/index.js';
import type { Fact, Json } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';
import type { StoredSite } from '../../store/store.js';
import { formatLocalTime } from '../../times/index.js';
import { horizonWords } from './horizon-words.js';

export const siteFacts = (site: StoredSite, nowUtcMs: UtcMs): readonly Fact[] => [
  { label: 'Position', value: positionName({ ...site }) },
  { label: 'Elevation', value: `${Math.round(site.elevationM)} m` },
  { label: 'Time zone', value: `${site.zone}, now ${formatLocalTime(nowUtcMs, site.zone)}` },
  { label: 'Horizon', value: horizonWords(site.horizon) },
  ...(site.sky === undefined ? [] : [{ label: 'Sky', value: SKY_WORDS[site.sky] }]),
];

/** One line for a list. */
export const siteLine = (site: StoredSite): string =>
  `${positionName({ ...site })}, ${Math.round(site.elevationM)} m, ${site.zone}${site.horizon === null ? '' : ', with horizon'}${site.sky === undefined ? '' : `, ${SKY_WORDS[site.sky]}`}${site.isDefault ? '; the usual one' : ''}`;

export const siteData = (site: StoredSite): Json => ({
  name: site.name,
  latitudeDeg: site.latitudeDeg,
  longitudeDeg: site.longitudeDeg,
  elevationM: site.elevationM,
  zone: site.zone,
  horizon:
    site.horizon === null ? null : site.horizon.map(({ azimuthDeg, altitudeDeg }) => ({ azimuthDeg, altitudeDeg })),
  sky: site.sky ?? null,
  isDefault: site.isDefault,
});
