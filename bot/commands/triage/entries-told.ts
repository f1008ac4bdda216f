/**
 * "The mount shows longitude 4 25 E": read out in a walk, it is held against the place that is saved or was named there, so that nobody
 * has to see for themselves that a letter, a sign or a number is wrong.
 */
import { isProblem } from '../../ground/problem.js';
import type { Understood } from '../../reading/index.js';
import type { UtcMs } from '../../sky/types.js';
import { MONTHS, siteClock } from '../../times/index.js';
import { wordsIn } from '../../triage/index.js';
import { siteFor } from '../asking/resolve-site.js';
import { numberOf } from '../asking/sentence/words.js';
import type { Deps } from '../core/command.js';
import { keepPlaceIn, spotNamed, type SpotNamed } from './place-in-walk.js';
import type { Began, TurnContext } from './turn.js';

/** Said of what stands in the mount, and not of where one lives. */
const IN_THE_MOUNT =
  /\b(?:mount|telescope|scope|hand ?set|(?:hand ?)?controller|keypad|app|program|driver|it|screen|display)\b.{0,40}\b(?:has|have|shows?|says?|said|reads?|gives?|thinks?|is set|holds?|stands?|had)\b|\b(?:long?(?:itude)?|lat(?:itude)?|date|zone|offset)\b.{0,14}\b(?:shows?|says?|reads?|is set|stands?)\b/iu;

const NUMBER = String.raw`([-+−]?\d{1,3}(?:[.,]\d+)?)(?:\s*(?:°|º|deg(?:rees)?|d|:)?\s*(\d{1,2})(?![\d.,])\s*(?:['′]|min\w*|m\b)?)?`;
const LONGITUDE = new RegExp(
  String.raw`\blong?i?(?:tude)?\b[^\d+−-]{0,20}?(?:\b(e|w|east|west)\b\s*)?${NUMBER}(?:\s*\d{1,2}["″])?\s*\b(e|w|east|west)?\b`,
  'iu',
);
const LATITUDE = new RegExp(
  String.raw`\blat(?:itude)?\b[^\d+−-]{0,20}?(?:\b(n|s|north|south)\b\s*)?${NUMBER}(?:\s*\d{1,2}["″])?\s*\b(n|s|north|south)?\b`,
  'iu',
);
/** The letter alone: "longitude says E". */
const LONGITUDE_SIDE = /\blong?i?(?:tude)?\b[^.\d]{0,20}?\b(E|W|east|west)\b/u;

/** "It shows 1 05 E": a letter says which of the two numbers it is. */
const WITH_EAST_WEST =
  /(?<![\d.,:])([-+−]?\d{1,3}(?:[.,]\d+)?(?:\s*[°º: ]\s*\d{1,2}(?![\d.,]))?\s*['′]?\s*(?:E|W|east|west))\b/giu;
const WITH_NORTH_SOUTH =
  /(?<![\d.,:])([-+−]?\d{1,2}(?:[.,]\d+)?(?:\s*[°º: ]\s*\d{1,2}(?![\d.,]))?\s*['′]?\s*(?:N|S|north|south))\b/giu;
/** "It says E next to 003 42". */
const LETTER_FIRST =
  /(?<![\p{L}'’]|\d[ °º'′]{0,2})(E|W|east|west|N|S|north|south) (?:(?:next to|before|by|beside|in front of|and|then|at) )?(?=\d{1,3}[ °º:.]\d)/gu;
const withNames = (said: string): string => {
  const text = said.replace(LETTER_FIRST, (_, side: string) =>
    /^[ew]/iu.test(side) ? `longitude ${side} ` : `latitude ${side} `,
  );
  const named = /\blong?i?(?:tude)?\b/iu.test(text) ? text : text.replace(WITH_EAST_WEST, 'longitude $1');
  return /\blat(?:itude)?\b/iu.test(named) ? named : named.replace(WITH_NORTH_SOUTH, 'latitude $1');
};

interface Angle {
  readonly deg: number;
  /** 1 or −1 where a letter or a sign says so. */
  readonly side: number | null;
  readonly wholeDeg: number;
  readonly minutes: number | null;
}

const sideOf = (letter: string | undefined, value: number, negative: RegExp): number | null => {
  if (letter !== undefined) return negative.test(letter) ? -1 : 1;
  return value < 0 ? -1 : null;
};

const angleIn = (text: string, pattern: RegExp, negative: RegExp): Angle | null => {
  const found = pattern.exec(text);
  if (found === null) return null;
  const [, before, number = '', minutes, after] = found;
  const value = Number(number.replace(',', '.').replace('−', '-'));
  return {
    deg: Math.abs(value) + Number(minutes ?? 0) / 60,
    side: sideOf(after ?? before, value, negative),
    wholeDeg: Math.trunc(Math.abs(value)),
    minutes: minutes === undefined ? null : Number(minutes),
  };
};

/** So near, a town's place and what was typed for a garden are the same, degrees. */
const SAME_DEG = 0.6;
/** Further, somebody who lives near a town may be; not to the other side of the globe. */
const NEAR_TOWN_SHARE = 0.2;
const MOST_NEAR_TOWN_DEG = 1.5;
/** Nearer to Greenwich or the equator no side can be told wrong. */
const NO_SIDE_DEG = 0.2;

const isNear = (a: number, b: number): boolean => Math.abs(Math.abs(a) - Math.abs(b)) <= SAME_DEG;

const isOtherSide = (told: Angle | null, deg: number): boolean => {
  if (told === null || told.side === null || Math.abs(deg) <= NO_SIDE_DEG || told.side * deg > 0) return false;
  const nearDeg = Math.max(SAME_DEG, Math.min(MOST_NEAR_TOWN_DEG, NEAR_TOWN_SHARE * Math.abs(deg)));
  return Math.abs(told.deg - Math.abs(deg)) <= nearDeg;
};

/** 4.42° typed as 4° 42′: the minutes are the decimals. */
const areDecimals = (told: Angle | null, deg: number): boolean => {
  if (told?.minutes == null) return false;
  const whole = Math.trunc(Math.abs(deg));
  const decimals = Math.round((Math.abs(deg) - whole) * 100);
  return told.wholeDeg === whole && Math.abs(told.minutes - decimals) <= 1 && Math.abs(told.deg - Math.abs(deg)) > 0.1;
};

type Found = readonly [answer: string, label: string];

const isOff = (told: Angle | null, deg: number): boolean =>
  told !== null && Math.abs(told.deg - Math.abs(deg)) > MOST_NEAR_TOWN_DEG;

/** The letter alone tells as well. */
const isOtherSideOfGreenwich = (text: string, longitude: Angle | null, deg: number): boolean => {
  const letter = LONGITUDE_SIDE.exec(text)?.[1];
  if (longitude !== null || letter === undefined) return isOtherSide(longitude, deg);
  return Math.abs(deg) > NO_SIDE_DEG && /^w/iu.test(letter) !== deg < 0;
};

/** Both told, each the other's. */
const areSwapped = (latitude: Angle, longitude: Angle, { latitudeDeg, longitudeDeg }: SpotNamed['observer']): boolean =>
  !isNear(latitudeDeg, longitudeDeg) && isNear(longitude.deg, latitudeDeg) && isNear(latitude.deg, longitudeDeg);

const bothFact = (latitude: Angle | null, longitude: Angle | null, observer: SpotNamed['observer']): Found | null => {
  const { latitudeDeg, longitudeDeg } = observer;
  if (latitude !== null && longitude !== null && areSwapped(latitude, longitude, observer))
    return ['swapped', 'latitude and longitude changed places in the mount'];
  if (areDecimals(longitude, longitudeDeg) || areDecimals(latitude, latitudeDeg))
    return ['decimals', 'decimals were typed as minutes'];
  if (isOff(longitude, longitudeDeg) || isOff(latitude, latitudeDeg))
    return ['another-place', 'the mount has another place'];
  return latitude !== null && longitude !== null ? ['match', 'latitude and longitude in the mount are right'] : null;
};

const siteFact = (text: string, { observer }: SpotNamed): Found | null => {
  const longitude = angleIn(text, LONGITUDE, /^w/iu);
  const latitude = angleIn(text, LATITUDE, /^s/iu);
  if (isOtherSideOfGreenwich(text, longitude, observer.longitudeDeg))
    return ['east-west', 'the mount has the longitude on the other side of Greenwich'];
  if (isOtherSide(latitude, observer.latitudeDeg))
    return ['north-south', 'the mount has the latitude on the other side of the equator'];
  return bothFact(latitude, longitude, observer);
};

const OFFSET =
  /\b(?:utc|gmt|time ?zone|zone|offset)\b[^\d+−-]{0,15}([+−-]?)\s?(\d{1,2})(?::?(30|45|00))?\b(?!\s*(?:°|\d))/iu;
const MINUTES_IN_HOUR = 60;

const WORDED_SIGN = /\b(plus|minus)\s+(\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b/giu;
const inFigures = (text: string): string =>
  text.replace(
    WORDED_SIGN,
    (_, sign: string, hours: string) =>
      `${sign.toLowerCase() === 'plus' ? '+' : '-'}${numberOf(hours.toLowerCase()) ?? hours}`,
  );
/** "Time zone +1": what stands behind the name of an entry is that entry. */
const ZONE_READ = /\b(?:time ?zone|utc offset|offset|zone)(?: is| of|:| =)?\s*[+−-]\s?\d/iu;

const zoneFact = (text: string, { zone }: SpotNamed, nowUtcMs: UtcMs): Found | null => {
  const found = OFFSET.exec(text);
  if (found === null) return null;
  const [, sign = '', hours = '', minutes = '0'] = found;
  const told = (sign === '-' || sign === '−' ? -1 : 1) * (Number(hours) * MINUTES_IN_HOUR + Number(minutes));
  const { utcOffsetMinutes, daylightSavingMinutes, standardOffsetMinutes } = siteClock(zone, nowUtcMs);
  if (told === utcOffsetMinutes && daylightSavingMinutes === 0)
    return ['match', 'the UTC offset in the mount is right'];
  if (told === utcOffsetMinutes || told === standardOffsetMinutes) return null;
  if (told === -standardOffsetMinutes || told === -utcOffsetMinutes)
    return ['sign', 'the UTC offset in the mount has the wrong sign'];
  return daylightSavingMinutes === 0 && told - utcOffsetMinutes === MINUTES_IN_HOUR
    ? ['summer-time', 'the mount has summer time, and there is none now']
    : ['offset', 'the UTC offset in the mount is not that of the place'];
};

const NAMED_DATE =
  /\b(?:(\d{1,2})(?:st|nd|rd|th)?\.?\s+(?:of )?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*|(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?\s+(\d{1,2})(?:st|nd|rd|th)?)\b/iu;

const YEAR = /(?<![\d.:/])(?:19|20)\d\d(?![\d.:])/u;
/** A receiver that counts weeks from zero, or a cell that is empty, is years behind. */
const YEARS_BEHIND = 2;

const SHOWN = /\b(?:says?|said|shows?|showing|reads?|displays?|thinks?|date|clock|year|gps|back|gives|got)\b/iu;
/** Of the gear itself, not of what it shows. */
const OF_THE_GEAR =
  /\b(?:bought|built|made|since|firmware|version|manual|driver|update\w*|released?|model|copyright|worked|phased|warranty)\b/iu;

/** A year long past, read beside a day and its month. */
const longPast = (text: string, nowUtcMs: UtcMs): Found | null => {
  if (!NAMED_DATE.test(text) || !SHOWN.test(text) || OF_THE_GEAR.test(text)) return null;
  const year = YEAR.exec(text)?.[0];
  return year !== undefined && Number(year) <= new Date(nowUtcMs).getUTCFullYear() - YEARS_BEHIND
    ? ['reset', 'the mount has a date of years ago']
    : null;
};

const dateFact = (text: string, { zone }: SpotNamed, nowUtcMs: UtcMs): Found | null => {
  const found = NAMED_DATE.exec(text);
  if (found === null) return null;
  const day = Number(found[1] ?? found[4]);
  const named = (found[2] ?? found[3] ?? '').toLowerCase();
  const month = 1 + MONTHS.findIndex((name) => name.startsWith(named));
  const { local } = siteClock(zone, nowUtcMs);
  return local.day !== local.month && day === local.month && month === local.day
    ? ['swapped', 'the mount has day and month the wrong way round']
    : null;
};

const SURENESS = 0.92;
const QUOTE = 120;

const understoodAs = (what: string, [answer, label]: Found, text: string): Understood => ({
  fact: { what, answer, sureness: SURENESS, quote: text.trim().slice(0, QUOTE), by: 'words' },
  label,
});

/** What of the entries read out is not as it should be there, or that it is. */
export const entriesCompared = (text: string, spot: SpotNamed, nowUtcMs: UtcMs): readonly Understood[] =>
  (
    [
      ['site-entries', siteFact(text, spot)],
      ['zone-entries', zoneFact(text, spot, nowUtcMs)],
      ['date-entries', dateFact(text, spot, nowUtcMs)],
    ] as const
  ).flatMap(([what, found]) => (found === null ? [] : [understoodAs(what, found, text)]));

/** @param earlier the walk's words so far */
const entriesTold = async (
  deps: Deps,
  request: Pick<TurnContext, 'asker' | 'privacy' | 'nowUtcMs'>,
  earlier: readonly string[],
  line: string,
): Promise<readonly Understood[]> => {
  const past = longPast(line, request.nowUtcMs);
  if (past !== null) return [understoodAs('date-entries', past, line)];
  const text = inFigures(withNames(line));
  const isRead = IN_THE_MOUNT.test(text) || LONGITUDE_SIDE.test(text) || ZONE_READ.test(text);
  if (!isRead || ![LONGITUDE, LATITUDE, LONGITUDE_SIDE, OFFSET, NAMED_DATE].some((one) => one.test(text))) return [];
  const named = spotNamed(deps, [...earlier, line]);
  if (named !== null) return entriesCompared(text, named, request.nowUtcMs);
  const own = await siteFor(deps, request, undefined);
  return isProblem(own) ? [] : entriesCompared(text, own.site, request.nowUtcMs);
};

/** What the mount shows and where that is, in one breath: both are taken. */
export const entriesAndPlace = async (
  began: Began,
  text: string,
): Promise<{ readonly began: Began; readonly entries: readonly Understood[] }> => {
  const { context, walk } = began;
  const entries = await entriesTold(context.deps, context, wordsIn(walk.state), text);
  const kept = entries.length === 0 ? null : await keepPlaceIn(context, text);
  return { began: kept === null ? began : { ...began, notes: [...began.notes, kept] }, entries };
};
