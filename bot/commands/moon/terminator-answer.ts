/** The terminator of one evening: where the light ends on the Moon, and what stands along it. */
import { MOON_FEATURES, type MoonFeature } from '../../catalogue/index.js';
import { reply, type Reply } from '../../reply/reply.js';
import { compassWord, degrees, isoUtc, listed, rounded } from '../../reply/wording.js';
import { MOON, moonAt } from '../../sky/moon.js';
import { horizontalOf } from '../../sky/place.js';
import { sunHeightDeg, sunOverMoon } from '../../sky/moon-terminator.js';
import { wrapDeg180 } from '../../sky/angles.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDateTime, formatLocalTime } from '../../times/index.js';
import type { ResolvedSite } from '../asking/resolve-site.js';

/** Shadows are long with the Sun so high; common practice, no source. */
const LIGHT = { fromDeg: 0, toDeg: 10 } as const;
const EDGE_DEG = 80;
const MOST = 8;

/** The best known of those in low light: the table has what is shown to beginners before what is not. */
const alongTerminator = (utcMs: UtcMs): readonly MoonFeature[] => {
  const sun = sunOverMoon(utcMs);
  return MOON_FEATURES.filter((feature) => {
    const height = sunHeightDeg(feature, sun);
    return (
      feature.kind !== 'letter' &&
      height >= LIGHT.fromDeg &&
      height <= LIGHT.toDeg &&
      Math.abs(feature.longitudeDeg) < EDGE_DEG
    );
  })
    .slice(0, MOST)
    .sort((a, b) => b.latitudeDeg - a.latitudeDeg);
};

/** "39° west": of the line itself, at the Moon's equator. */
const lineWords = (longitudeDeg: number): string =>
  `${degrees(Math.abs(longitudeDeg))} ${longitudeDeg < 0 ? 'west' : 'east'}`;

export const terminatorAnswer = (where: ResolvedSite, utcMs: UtcMs, notes: readonly string[]): Reply => {
  const { observer, zone } = where.site;
  const { waxing, illuminatedFraction } = moonAt(observer, utcMs);
  const { colongitudeDeg } = sunOverMoon(utcMs);
  const longitudeDeg = wrapDeg180(waxing ? -colongitudeDeg : 180 - colongitudeDeg);
  const found = alongTerminator(utcMs);
  const moon = horizontalOf(MOON, observer, utcMs);
  const isUp = moon.altitudeDeg > 0;
  const at = formatLocalTime(utcMs, zone);
  const along =
    found.length === 0
      ? 'Of what I know nothing stands in low light then.'
      : `Along it in low light, north to south: ${listed(found.map(({ name }) => name))}.`;
  const stands = isUp
    ? `${degrees(moon.altitudeDeg)} high in the ${compassWord(moon.azimuthDeg)}`
    : 'below the horizon';
  return reply({
    title: `The Moon’s terminator, ${formatLocalDateTime(utcMs, zone)}`,
    level: isUp ? 'good' : 'info',
    summary: `${along} The ${waxing ? 'sunrise' : 'sunset'} line is at ${lineWords(longitudeDeg)}; Moon ${stands} at ${at}.`,
    facts: [
      { label: 'Lit', value: `${Math.round(illuminatedFraction * 100)} %, ${waxing ? 'growing' : 'shrinking'}` },
      { label: 'Colongitude', value: degrees(colongitudeDeg, 1) },
    ],
    notes: [...notes, 'East and west as on the Moon: Mare Crisium is in the east.'],
    pointsAt: isUp ? [{ what: 'the Moon', when: { utcMs }, observer, zone, direction: MOON }] : [],
    choices: found.slice(0, 3).map(({ name }) => ({ label: `More on ${name}`, run: `moon feature:"${name}"` })),
    data: {
      utc: isoUtc(utcMs),
      colongitudeDeg: rounded(colongitudeDeg, 2),
      terminatorLongitudeDeg: rounded(longitudeDeg, 1),
      features: found.map(({ name }) => name),
    },
  });
};
