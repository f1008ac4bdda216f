/**
 * An independent reader of replies that name many directions (lists of the evening, stars to align on, what is coming, reminders):
 * each "24° high, north-west, 304°" or "19° in the west-south-west" with the hour and the date it stands beside, judged by the Sun of sun-reader.ts.
 * It shares no code with bot/. A compass word is good to half of its 22.5°, so that only what is wanting for all of it counts.
 */
import { DateTime } from 'luxon';
import type { Reply } from '../../bot/reply/reply.js';
import { altitudeOf, sunAt, type Where } from './sun-reader.js';

const RAD = Math.PI / 180;
const COMPASS = [
  ...['north', 'north-north-east', 'north-east', 'east-north-east', 'east', 'east-south-east', 'south-east'],
  ...['south-south-east', 'south', 'south-south-west', 'south-west', 'west-south-west', 'west', 'west-north-west'],
  ...['north-west', 'north-north-west'],
];
const DIRECTION =
  /(\d{1,2})° (?:high )?(?:in the |, )?((?:north|south|east|west)(?:-(?:north|south|east|west))*)\b(?:, (\d{1,3})°| \((\d{1,3})°\))?/u;
const HOUR = /\b([01]\d|2[0-3]):([0-5]\d)\b/gu;
const DATE = /\b(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun) (\d{1,2}) ([A-Z][a-z]{2})(?: (\d{4}))?/u;

export interface NamedDirection {
  readonly text: string;
  readonly utcMs: number;
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  /** How far off the azimuth may be. */
  readonly azimuthSlackDeg: number;
}

/** The instant a text names for its direction: its date (the next such from `fromUtcMs`, or the night's) and the hour last before it; `fromUtcMs` where it names none. */
const instantIn = (text: string, { zone }: Where, fromUtcMs: number): number => {
  const hours = [...text.matchAll(HOUR)];
  const before = hours.filter(({ index }) => index < (DIRECTION.exec(text)?.index ?? 0));
  const hour = before.at(-1) ?? hours[0];
  if (hour === undefined) return fromUtcMs;
  const date = DATE.exec(text);
  const from = DateTime.fromMillis(fromUtcMs, { zone });
  const at = { hour: Number(hour[1]), minute: Number(hour[2]), second: 0, millisecond: 0 };
  if (date === null) {
    const same = from.set(at);
    return (same.toMillis() < fromUtcMs - 60_000 ? same.plus({ days: 1 }) : same).toMillis();
  }
  const day = DateTime.fromFormat(`${date[1]} ${date[2]} ${date[3] ?? from.year}`, 'd LLL yyyy', {
    zone,
    locale: 'en-US',
  });
  const dated = day.set(at);
  const isOver = date[3] === undefined && dated < from.minus({ days: 1 });
  return (isOver ? dated.plus({ years: 1 }) : dated).toMillis();
};

export const directionsNamed = (reply: Reply, where: Where, fromUtcMs: number): NamedDirection[] =>
  [reply.summary, ...reply.facts.map(({ label, value }) => `${label}: ${value}`)].flatMap((text) => {
    const found = DIRECTION.exec(text);
    if (found === null) return [];
    const azimuth = found[3] ?? found[4];
    return [
      {
        text,
        utcMs: instantIn(text, where, fromUtcMs),
        altitudeDeg: Number(found[1]),
        azimuthDeg: azimuth === undefined ? COMPASS.indexOf(found[2]!) * 22.5 : Number(azimuth),
        azimuthSlackDeg: azimuth === undefined ? 12 : 1,
      },
    ];
  });

/** Altitude and azimuth of the Sun, degrees; azimuth from its altitude's derivative, so that one formula serves both. */
const sunHorizontal = (where: Where, utcMs: number): readonly [number, number] => {
  const sun = sunAt(utcMs);
  const altitudeDeg = altitudeOf(sun, where, utcMs);
  const [d, p, a] = [sun[1] * RAD, where.latitudeDeg * RAD, altitudeDeg * RAD];
  const cosAzimuth = (Math.sin(d) - Math.sin(a) * Math.sin(p)) / (Math.cos(a) * Math.cos(p));
  const azimuthDeg = Math.acos(Math.max(-1, Math.min(1, cosAzimuth))) / RAD;
  const isEast = where.latitudeDeg > 0 || Math.abs(where.latitudeDeg) > 1 ? isBeforeTransit(where, utcMs) : true;
  return [altitudeDeg, isEast ? azimuthDeg : 360 - azimuthDeg];
};
/** Whether the Sun is on the way to its upper meridian: it stands higher half a minute of rotation on, seen from the equator of the same meridian. */
const isBeforeTransit = ({ longitudeDeg }: Where, utcMs: number): boolean => {
  const equator = { latitudeDeg: 0, longitudeDeg, zone: 'UTC' };
  const rises =
    altitudeOf([sunAt(utcMs)[0], 0], equator, utcMs + 30_000) > altitudeOf([sunAt(utcMs)[0], 0], equator, utcMs);
  return rises;
};

export interface ListWanting {
  readonly text: string;
  readonly why: string;
}

const RISES_WITHIN_MS = 50 * 60_000;

/** What a reply should have said of the Sun for one direction it names, and did not. */
export const listWanting = (reply: Reply, where: Where, named: NamedDirection): ListWanting | null => {
  const [sunAltitudeDeg, sunAzimuthDeg] = sunHorizontal(where, named.utcMs);
  const cautions = reply.cautions.join(' ');
  const warned = (levels: readonly string[]): boolean => levels.includes(reply.level) && /Sun/u.test(cautions);
  const at = new Date(named.utcMs).toISOString();
  if (sunAltitudeDeg < -1.5) {
    // In the last 50 minutes of the hour before sunrise nobody can miss it by the reading of minutes.
    const rises = altitudeOf(sunAt(named.utcMs + RISES_WITHIN_MS), where, named.utcMs + RISES_WITHIN_MS) > 0;
    return rises && !warned(['caution', 'danger'])
      ? { text: named.text, why: `${at}: no word that the Sun rises` }
      : null;
  }
  if (sunAltitudeDeg < 0.3) return null;
  const awayDeg = Math.abs(((named.azimuthDeg - sunAzimuthDeg + 540) % 360) - 180) + named.azimuthSlackDeg;
  const [a, b] = [named.altitudeDeg * RAD, sunAltitudeDeg * RAD];
  const mostDeg =
    Math.acos(
      Math.max(
        -1,
        Math.min(1, Math.sin(a) * Math.sin(b) + Math.cos(a) * Math.cos(b) * Math.cos(Math.min(180, awayDeg) * RAD)),
      ),
    ) /
      RAD +
    0.7;
  if (mostDeg < 15 && !warned(['danger']))
    return { text: named.text, why: `${at}: ${reply.level}, within ${mostDeg.toFixed(0)}°` };
  if (mostDeg < 45 && !warned(['caution', 'danger']))
    return { text: named.text, why: `${at}: ${reply.level}, within ${mostDeg.toFixed(0)}°` };
  const words = [...reply.cautions, ...reply.notes, reply.summary].join(' ');
  return /\bSun\b/u.test(words) ? null : { text: named.text, why: `${at}: no word that the Sun is up` };
};
