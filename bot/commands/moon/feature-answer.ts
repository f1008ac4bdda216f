/** One feature of the Moon: whether the Sun is up on it, and when its shadows are next seen from here. */
import type { MoonFeature } from '../../catalogue/index.js';
import { MS_PER_DAY } from '../../ground/durations.js';
import { tableOf } from '../../ground/table-of.js';
import { reply, type Reply } from '../../reply/reply.js';
import { compassWord, degrees, isoUtc, rounded } from '../../reply/wording.js';
import { MOON } from '../../sky/moon.js';
import type { TimeSpan } from '../../sky/night.js';
import { sunHeightDeg, sunOverMoon, sunPasses } from '../../sky/moon-terminator.js';
import type { UtcMs } from '../../sky/types.js';
import { formatClock, formatLocalDateTime, formatLocalTime } from '../../times/index.js';
import { dayWords } from '../ahead/ahead-words.js';
import type { ResolvedSite } from '../asking/resolve-site.js';
import { moonSeenIn, type MoonStands } from './moon-seen.js';

/** Heights of the Sun there between which shadows model it; higher it is flat. Common practice, no source. */
const FIRST_LIGHT_DEG = -1;
const RELIEF = { lowDeg: 1, highDeg: 12 } as const;
const FLAT_DEG = 30;
/** The letters are rims that catch the Sun before the ground does, for some four hours; from memory. */
const LETTER = { lowDeg: -1.7, highDeg: 0.3 } as const;
const MONTHS_AHEAD = 7;
const LUNATION_MS = 29.5 * MS_PER_DAY;

export interface FeatureQuestion {
  readonly feature: MoonFeature;
  readonly where: ResolvedSite;
  readonly utcMs: UtcMs;
  readonly notes: readonly string[];
}

const isLetter = ({ kind }: MoonFeature): boolean => kind === 'letter';

const stateWords = (feature: MoonFeature, utcMs: UtcMs): string => {
  const height = sunHeightDeg(feature, sunOverMoon(utcMs));
  const { name } = feature;
  if (isLetter(feature))
    return height >= LETTER.lowDeg && height <= LETTER.highDeg
      ? `${name} is out then: its rims catch the Sun and the ground does not`
      : `${name} is not out then`;
  if (height < FIRST_LIGHT_DEG) return `${name} is in the dark part`;
  if (height < RELIEF.lowDeg) return `${name} is on the terminator itself, its rim in first or last light`;
  const sun = `the Sun ${degrees(height)} high over it`;
  if (height <= RELIEF.highDeg) return `${name} is in light close to the terminator, ${sun}: long shadows, at its best`;
  return height <= FLAT_DEG ? `${name} is in light, ${sun}: short shadows` : `${name} is in full light, ${sun}: flat`;
};

/** Between which instants it is at its best, from one on: after its sunrise, and before its sunset where it has one in reach. */
const spansOf = (feature: MoonFeature, fromUtcMs: UtcMs): readonly TimeSpan[] => {
  const { lowDeg, highDeg } = isLetter(feature) ? LETTER : RELIEF;
  const span = (isRising: boolean): TimeSpan | null => {
    const end = sunPasses(feature, { heightDeg: isRising ? highDeg : lowDeg, isRising }, fromUtcMs);
    if (end === null) return null;
    const start = sunPasses(feature, { heightDeg: isRising ? lowDeg : highDeg, isRising }, end - 3 * MS_PER_DAY);
    return start === null ? null : { startUtcMs: Math.max(start, fromUtcMs), endUtcMs: end };
  };
  return (isLetter(feature) ? [span(true)] : [span(true), span(false)])
    .filter((each) => each !== null)
    .sort((a, b) => a.startUtcMs - b.startUtcMs);
};

interface SeenSpan extends TimeSpan {
  readonly best: MoonStands;
}

/** The first hours here in which it is at its best and the Moon is seen. */
const nextSeen = ({ feature, where, utcMs }: FeatureQuestion): SeenSpan | null => {
  for (let month = 0; month < MONTHS_AHEAD; month++)
    for (const span of spansOf(feature, utcMs + month * LUNATION_MS)) {
      const [seen] = moonSeenIn(where.site.observer, span);
      if (seen !== undefined) return seen;
    }
  return null;
};

const hoursWords = ({ startUtcMs, endUtcMs, best }: SeenSpan, zone: string, nowUtcMs: UtcMs): string =>
  `${dayWords(startUtcMs, zone, nowUtcMs)}, ${formatClock(startUtcMs, zone)} to ${formatLocalTime(endUtcMs, zone)}, the Moon up to ${degrees(best.altitudeDeg)} high in the ${compassWord(best.azimuthDeg)}`;

const OF_LETTER =
  'The letter lasts some four hours about the first quarter; its hour is reckoned for the mean ground, and may be off by an hour.';
const NOTES = tableOf({
  'Straight Wall': 'Rupes Recta by its name: a black line after its sunrise, a bright one before its sunset.',
});

/** The next pass of that letter, seen from here or not. */
const nextLetter = ({ feature, where, utcMs }: FeatureQuestion): string | null => {
  const [next] = isLetter(feature) ? spansOf(feature, utcMs) : [];
  if (next === undefined || moonSeenIn(where.site.observer, next).length > 0) return null;
  const { zone } = where.site;
  return `It comes out ${dayWords(next.startUtcMs, zone, utcMs)}, ${formatClock(next.startUtcMs, zone)} to ${formatLocalTime(next.endUtcMs, zone)}, but by day or with the Moon down here`;
};

export const featureAnswer = (question: FeatureQuestion): Reply => {
  const { feature, where, utcMs, notes } = question;
  const { zone, observer } = where.site;
  const seen = nextSeen(question);
  const rise = sunPasses(feature, { heightDeg: 0, isRising: true }, utcMs);
  const set = sunPasses(feature, { heightDeg: 0, isRising: false }, utcMs);
  const day = (at: UtcMs): string => `${dayWords(at, zone, utcMs)}, ${formatLocalTime(at, zone)}`;
  const missed = nextLetter(question);
  const best =
    seen === null ? 'Not seen so from here in the months ahead' : `Best seen here ${hoursWords(seen, zone, utcMs)}`;
  const { colongitudeDeg } = sunOverMoon(utcMs);
  return reply({
    title: `${feature.name} on the Moon, ${formatLocalDateTime(utcMs, zone)}`,
    level: seen === null ? 'info' : 'good',
    summary: [stateWords(feature, utcMs), missed, best]
      .filter((part) => part !== null)
      .map((part) => `${part}.`)
      .join(' '),
    facts: [
      { label: 'It is', value: placeWords(feature) },
      ...(rise === null || isLetter(feature) ? [] : [{ label: 'Sunrise there', value: day(rise) }]),
      ...(set === null || isLetter(feature) ? [] : [{ label: 'Sunset there', value: day(set) }]),
      { label: 'Colongitude', value: `${degrees(colongitudeDeg, 1)}` },
    ],
    notes: [
      ...notes,
      ...(isLetter(feature) ? [OF_LETTER] : []),
      ...[NOTES.get(feature.name)].filter((note) => note !== undefined),
    ],
    pointsAt:
      seen === null ? [] : [{ what: 'the Moon', when: { utcMs: seen.best.utcMs }, observer, zone, direction: MOON }],
    data: {
      feature: feature.name,
      utc: isoUtc(utcMs),
      sunHeightDeg: rounded(sunHeightDeg(feature, sunOverMoon(utcMs)), 2),
      colongitudeDeg: rounded(colongitudeDeg, 2),
      sunriseUtc: rise === null ? null : isoUtc(rise),
      sunsetUtc: set === null ? null : isoUtc(set),
      bestUtc: seen === null ? null : isoUtc(seen.best.utcMs),
    },
  });
};

const KIND_WORDS: Readonly<Record<MoonFeature['kind'], string>> = {
  crater: 'crater',
  mountains: 'mountains',
  peak: 'peak',
  valley: 'valley',
  scarp: 'scarp',
  rille: 'rille',
  sea: 'sea',
  bay: 'bay',
  dome: 'domes',
  letter: 'letter of light on rims',
};
const OWN_KIND = tableOf({ 'Reiner Gamma': 'bright swirl' });

const placeWords = ({ name, kind, latitudeDeg, longitudeDeg, sizeKm }: MoonFeature): string =>
  `${OWN_KIND.get(name) ?? KIND_WORDS[kind]}, ${sizeKm} km, at ${degrees(Math.abs(latitudeDeg))} ${latitudeDeg < 0 ? 'south' : 'north'} and ${degrees(Math.abs(longitudeDeg))} ${longitudeDeg < 0 ? 'west' : 'east'} on the Moon`;
