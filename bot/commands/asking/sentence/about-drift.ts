/** Sentences about a star that drifts: which way, how fast or how far in which time, and where it stands. */
import { commandLine } from '../question-parts.js';
import { says, type Asked, type Rule } from './asked.js';
import { numberOf } from './words.js';

const MOVES =
  'drift(?:s|ing|ed)?|go(?:es|ing)?|went|mov(?:e|es|ed|ing)|creep(?:s|ing)?|crept|slid(?:e|es|ing)?|wander(?:s|ed|ing)?';
const DRIFTS = /\bdrift(?:s|ing|ed)?\b/u;
const TO = '(?: slowly| off| away| up| to(?: the)?| towards?(?: the)?| due)*';
const WAY = new RegExp(`\\b(?:${MOVES})${TO} (north|south)(?:wards?)?\\b`, 'u');
const ARCSEC = '(?:″|"|arc ?sec(?:ond)?s?|seconds of arc)';
const ARCMIN = '(?:′|arc ?min(?:ute)?s?|minutes of arc)';
const RATE = new RegExp(`(\\d+(?:\\.\\d+)?) ?${ARCSEC}`, 'u');

/** "drift east 2 south", "drift meridian 4 n", "drifts 5 arcsec to the north": the way beside its rate. */
const SHORT_WAY = new RegExp(
  `\\b\\d+(?:\\.\\d+)? ?(?:${ARCSEC}|${ARCMIN})?${TO} ?(north|south|n|s)(?:wards?)?\\b|\\b(north|south|n|s)(?= \\d)`,
  'u',
);
const MINUTES_RATE = new RegExp(`(\\d+(?:\\.\\d+)?) ?${ARCMIN}`, 'u');

/** "in 5 minutes", "over half an hour", "per 30 s": the time a drift was watched for, where it is not one minute. */
const WATCHED =
  /\b(?:in|over|during|within|after|per|every|for) (?:about |the )?(half (?:an hour|a minute)|an hour|\w+(?:\.\d+)?) ?(seconds?|secs?|s|minutes?|mins?|m|hours?|hrs?|h)?\b/gu;

const watchedFor = (plain: string): string | null => {
  for (const [, count = '', unit = ''] of plain.matchAll(WATCHED)) {
    if (count === 'half an hour') return '30 min';
    if (count === 'half a minute') return '30 s';
    if (count === 'an hour') return '60 min';
    const value = numberOf(count);
    if (value !== null && unit !== '') return `${String(value)} ${/^m/u.test(unit) ? 'min' : unit.charAt(0)}`;
  }
  return null;
};

/** Seconds of arc; a bare number is those, as the command takes it. */
const arcsecIn = (plain: string): number | null => {
  const seconds = RATE.exec(plain)?.[1];
  if (seconds !== undefined) return Number(seconds);
  const minutes = MINUTES_RATE.exec(plain)?.[1];
  if (minutes !== undefined) return Number(minutes) * 60;
  const bare = /^drift\b.*?(\d+(?:\.\d+)?)/u.exec(plain)?.[1];
  return bare === undefined ? null : Number(bare);
};

/** Where the star stands; one that is looked at in the south or the north is on the meridian. */
const driftWhere = (plain: string): string | null => {
  const words = plain.replace(WAY, '');
  const named = /\b(meridian|east|west)\b/u.exec(words)?.[1];
  // Only the azimuth shows there.
  const isOfAzimuth = /\b(?:in the|due|facing|looking) (?:south|north)\b|\bazimuth\b/u.test(words);
  return named ?? (isOfAzimuth ? 'meridian' : null);
};

const isOfDrift = (asked: Asked): boolean =>
  says(asked, DRIFTS)
    ? says(
        asked,
        /\bstar\b|\bnorth\b|\bsouth\b|\bmeridian\b|\balign|\b(?:in|of) (?:dec|declination)\b|\b(?:dec|declination) (?:axis )?drift|^drift (?:in the )?(?:east|west)\b/u,
      )
    : says(asked, /\bstar\b/u) && says(asked, WAY) && says(asked, RATE);

export const drift: Rule = (asked) => {
  if (!isOfDrift(asked)) return null;
  const short = SHORT_WAY.exec(asked.plain);
  const way = WAY.exec(asked.plain)?.[1] ?? short?.[1] ?? short?.[2];
  const arcsec = arcsecIn(asked.plain);
  const where = driftWhere(asked.plain);
  if (way === undefined || where === null) return { line: 'help drift' };
  const time = arcsec === null ? null : watchedFor(asked.plain);
  return {
    line: commandLine('drift', where, {
      by: `${way.charAt(0).toUpperCase()}${arcsec === null ? '' : ` ${String(arcsec)}`}${time === null ? '' : ` in ${time}`}`,
      // "in the field" is the eyepiece's.
      site: asked.place === null || asked.place === 'field' ? undefined : asked.place,
    }),
  };
};
