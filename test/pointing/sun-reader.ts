/**
 * An independent reader of printed replies for the Sun's property test: finds the hours a reply names, and judges each by a
 * Sun and a sky of its own. It shares no code with bot/: the Sun is the Astronomical Almanac's low-precision one (page C5;
 * 0.01° from 1950 to 2050), sidereal time and precession are first order (the same almanac, pages B6 and B18).
 */
import { DateTime } from 'luxon';
import type { Reply } from '../../bot/reply/reply.js';

const RAD = Math.PI / 180;
const daysSince2000 = (utcMs: number): number => (utcMs - Date.UTC(2000, 0, 1, 12)) / 86_400_000;

export interface Where {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly zone: string;
}
/** Right ascension and declination in degrees. */
type Direction = readonly [number, number];

export const sunAt = (utcMs: number): Direction => {
  const n = daysSince2000(utcMs);
  const g = (357.528 + 0.9856003 * n) * RAD;
  const lambda = (280.46 + 0.9856474 * n + 1.915 * Math.sin(g) + 0.02 * Math.sin(2 * g)) * RAD;
  const tilt = (23.439 - 0.0000004 * n) * RAD;
  return [
    Math.atan2(Math.cos(tilt) * Math.sin(lambda), Math.cos(lambda)) / RAD,
    Math.asin(Math.sin(tilt) * Math.sin(lambda)) / RAD,
  ];
};

const ofDate = ([ra, dec]: Direction, utcMs: number): Direction => {
  const years = daysSince2000(utcMs) / 365.25;
  const m = 0.012812 * years;
  const n = 0.005567 * years;
  return [ra + m + n * Math.sin(ra * RAD) * Math.tan(dec * RAD), dec + n * Math.cos(ra * RAD)];
};

export const altitudeOf = ([ra, dec]: Direction, { latitudeDeg, longitudeDeg }: Where, utcMs: number): number => {
  const hourAngle = (280.4606 + 360.9856474 * daysSince2000(utcMs) + longitudeDeg - ra) * RAD;
  const [d, p] = [dec * RAD, latitudeDeg * RAD];
  return Math.asin(Math.sin(d) * Math.sin(p) + Math.cos(d) * Math.cos(hourAngle) * Math.cos(p)) / RAD;
};

export const apartDeg = ([a, b]: Direction, [c, d]: Direction): number => {
  const dot = Math.sin(b * RAD) * Math.sin(d * RAD) + Math.cos(b * RAD) * Math.cos(d * RAD) * Math.cos((a - c) * RAD);
  return Math.acos(Math.max(-1, Math.min(1, dot))) / RAD;
};

/** Lines about these are of the Sun, the Moon or the dark, and send nobody to the target. */
const NOT_OF_TARGET = /^(?:Sun|Sunset|Sunrise|Moon|Dark|Darkness|On the way|Sidereal time)$/u;

/** Every hour a reply names for its target, as instants within a day and a half after `fromUtcMs`. */
export const hoursNamed = (reply: Reply, where: Where, fromUtcMs: number): number[] => {
  const texts = [
    reply.summary.replace(/dark[^.;]*/giu, ''),
    ...reply.facts.filter(({ label }) => !NOT_OF_TARGET.test(label)).map(({ value }) => value),
  ];
  const hours = texts.flatMap((text) => [...text.matchAll(/\b([01]\d|2[0-3]):([0-5]\d)\b/gu)]);
  const start = DateTime.fromMillis(fromUtcMs, { zone: where.zone });
  return hours.map(([, hour, minute]) => {
    const sameDay = start.set({ hour: Number(hour), minute: Number(minute), second: 0, millisecond: 0 });
    return (sameDay.toMillis() < fromUtcMs - 60_000 ? sameDay.plus({ days: 1 }) : sameDay).toMillis();
  });
};

export interface Wanting {
  readonly utcMs: number;
  readonly separationDeg: number;
  readonly why: string;
}

/** What a reply should have said of the Sun at an instant and did not; null when nothing is wanting. */
export const wanting = (reply: Reply, target: Direction, where: Where, utcMs: number): Wanting | null => {
  // By a quarter of a degree and a minute or two, no reader of minutes can tell.
  if (altitudeOf(sunAt(utcMs), where, utcMs) < 0 || altitudeOf(ofDate(target, utcMs), where, utcMs) < -1) return null;
  const separationDeg = apartDeg(ofDate(target, utcMs), sunAt(utcMs));
  const words = [...reply.cautions, ...reply.notes, reply.summary].join(' ');
  // A night's hours may be read a day off, and the Sun goes a degree a day.
  const slackDeg = reply.title.includes('night of') ? 1.2 : 0.2;
  const saysSun = /\bSun\b/u.test(words);
  const why = (): string | null => {
    if (separationDeg < 15 - slackDeg && !(reply.level === 'danger' && /Sun/u.test(reply.cautions.join(' '))))
      return `level ${reply.level} within 15°`;
    if (
      separationDeg < 45 - slackDeg &&
      !(['danger', 'caution'].includes(reply.level) && /Sun/u.test(reply.cautions.join(' ')))
    )
      return `level ${reply.level} within 45°`;
    // Rising and setting by day far from the Sun need no word in an answer about the night.
    return saysSun || reply.title.includes('night of') ? null : 'no word that the Sun is up';
  };
  const found = why();
  return found === null ? null : { utcMs, separationDeg, why: found };
};
