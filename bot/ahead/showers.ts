/** The meteor showers that people watch: when each is best here, how high its radiant stands then, and what the Moon does. */
import { MS_PER_DAY, MS_PER_YEAR } from '../ground/durations.js';
import { tableOf } from '../ground/table-of.js';
import { moonAt } from '../sky/moon.js';
import { localDateOfNight, nightOf, type TimeSpan } from '../sky/night.js';
import { horizontalOf } from '../sky/place.js';
import { sunAtLongitude } from '../sky/sun-longitude.js';
import { twilights } from '../sky/twilight.js';
import type { Horizontal, Observer, UtcMs } from '../sky/types.js';

export interface Shower {
  /** IAU Meteor Data Center's code and name. */
  readonly code: string;
  readonly name: string;
  /** Solar longitude of the maximum, degrees, J2000. */
  readonly maximumLongitudeDeg: number;
  readonly raDeg: number;
  readonly decDeg: number;
  /** Zenithal hourly rate at the maximum. */
  readonly zenithalHourlyRate: number;
  /** Kilometres a second into the air. */
  readonly speedKmS: number;
  /** How many days before its maximum the first are seen, and after it the last. */
  readonly activeDays: readonly [before: number, after: number];
  readonly profile: Profile;
}

/**
 * How a rate rises and falls with the Sun's longitude: by 10 to the power −B·|degrees from the maximum|, B before and after it; of some a part
 * (`share`) keeps to slopes of its own.
 */
interface Profile {
  readonly slopes: readonly [before: number, after: number];
  readonly share: number;
  readonly shareSlopes: readonly [before: number, after: number];
}

/**
 * B as Jenniskens has it, "Meteor stream activity I", Astronomy and Astrophysics 287, 990 (1994), table of the annual streams (from memory);
 * Geminids: slow up and fast down, by the counts of the International Meteor Organization (from memory). What is not there is
 * taken as broad as most: 0.19.
 */
const PROFILES = tableOf<readonly [before: number, after: number, share?: number, b?: number, a?: number]>({
  QUA: [2.5, 2.5, 0.2, 0.37, 0.45],
  LYR: [0.22, 0.22],
  ETA: [0.08, 0.08],
  CAP: [0.041, 0.041],
  SDA: [0.091, 0.091],
  PER: [0.35, 0.35, 0.25, 0.05, 0.092],
  ORI: [0.12, 0.12],
  STA: [0.026, 0.026],
  NTA: [0.026, 0.026],
  LEO: [0.55, 0.55, 0.17, 0.025, 0.15],
  PUP: [0.034, 0.034],
  GEM: [0.39, 0.72],
  URS: [0.61, 0.61],
});
const USUAL_SLOPE = 0.19;

const profileOf = (code: string): Profile => {
  const [before, after, share = 0, shareBefore = 0, shareAfter = 0] = PROFILES.get(code) ?? [USUAL_SLOPE, USUAL_SLOPE];
  return { slopes: [before, after], share, shareSlopes: [shareBefore, shareAfter] };
};

/**
 * Source: working list of visual meteor showers of the International Meteor Organization, with the codes and names of the IAU
 * Meteor Data Center (from memory); rates are of an ordinary year; the last two columns are days of activity before and after the maximum.
 */
const TABLE = `QUA Quadrantids 283.15 230 49 80 41 6 8|LYR April Lyrids 32.32 271 34 18 49 8 8|ETA eta Aquariids 45.5 338 -1 50 66 17 22|
CAP alpha Capricornids 128 307 -10 5 23 27 16|SDA Southern delta Aquariids 128 340 -16 25 41 18 24|PER Perseids 140 48 58 100 59 26 12|
AUR Aurigids 158.6 91 39 6 66 4 5|SPE September epsilon Perseids 166.7 48 40 5 64 4 12|DRA October Draconids 195.4 262 54 5 20 3 2|
ORI Orionids 208 95 16 20 66 19 17|STA Southern Taurids 223 52 15 7 27 45 15|NTA Northern Taurids 230 58 22 5 29 23 28|
LEO Leonids 235.27 152 22 12 71 11 13|PUP Puppid-Velids 255 123 -45 10 40 6 8|GEM Geminids 262.2 112 33 150 35 10 6|
URS Ursids 270.7 217 76 10 33 5 4`;

export const SHOWERS: readonly Shower[] = TABLE.split('|').map((row) => {
  const words = row.trim().split(' ');
  const [maximum = 0, raDeg = 0, decDeg = 0, rate = 0, speed = 0, before = 0, after = 0] = words.slice(-7).map(Number);
  return {
    code: words[0] ?? '',
    name: words.slice(1, -7).join(' '),
    maximumLongitudeDeg: maximum,
    raDeg,
    decDeg,
    zenithalHourlyRate: rate,
    speedKmS: speed,
    activeDays: [before, after],
    profile: profileOf(words[0] ?? ''),
  };
});

export interface ShowerHere {
  readonly shower: Shower;
  readonly maximumUtcMs: UtcMs;
  /**
   * The hour of the nights about the maximum at which most are counted: radiant high, maximum near, Sun at least 12° down (6° where it
   * gets no lower).
   */
  readonly bestUtcMs: UtcMs;
  /** Meteors an hour then, under a dark sky. */
  readonly hourlyRate: number;
  readonly radiantAltitudeDeg: number;
  readonly radiantAzimuthDeg: number;
  readonly moonAltitudeDeg: number;
  readonly moonLitFraction: number;
}

const DEG_PER_DAY = 360 / 365.2422;
const STEP_MS = 1_200_000;

const darkSpan = (observer: Observer, night: TimeSpan): TimeSpan | null => {
  const { nautical, civil } = twilights(observer, night.startUtcMs, night.endUtcMs);
  const times = nautical ?? civil;
  return times === null
    ? null
    : { startUtcMs: times.duskUtcMs ?? night.startUtcMs, endUtcMs: times.dawnUtcMs ?? night.endUtcMs };
};

const sinceMaximum = (slopes: readonly [before: number, after: number], deg: number): number =>
  10 ** (-(deg < 0 ? slopes[0] : slopes[1]) * Math.abs(deg));

/** The zenithal hourly rate at an instant. */
export const zenithalRateAt = (
  { zenithalHourlyRate, profile: { slopes, share, shareSlopes } }: Shower,
  maximumUtcMs: UtcMs,
  utcMs: UtcMs,
): number => {
  const deg = ((utcMs - maximumUtcMs) / MS_PER_DAY) * DEG_PER_DAY;
  return zenithalHourlyRate * ((1 - share) * sinceMaximum(slopes, deg) + share * sinceMaximum(shareSlopes, deg));
};

interface Hour {
  readonly utcMs: UtcMs;
  readonly radiant: Horizontal;
  /** The zenithal rate times the sine of the radiant's height (IMO, visual observing handbook). */
  readonly rate: number;
}

/** Nights before and after the one that holds the maximum. */
const NIGHTS_BESIDE = [0, -1, 1] as const;

const bestHourOf = (shower: Shower, observer: Observer, maximumUtcMs: UtcMs, night: TimeSpan): Hour | null => {
  const dark = darkSpan(observer, night);
  if (dark === null) return null;
  const body = { kind: 'fixed', raHoursJ2000: shower.raDeg / 15, decDegJ2000: shower.decDeg } as const;
  const hourAt = (utcMs: UtcMs): Hour => {
    const radiant = horizontalOf(body, observer, utcMs);
    const rate = zenithalRateAt(shower, maximumUtcMs, utcMs) * Math.sin((radiant.altitudeDeg * Math.PI) / 180);
    return { utcMs, radiant, rate };
  };
  let best = hourAt(dark.startUtcMs);
  for (let utcMs = dark.startUtcMs + STEP_MS; utcMs <= dark.endUtcMs; utcMs += STEP_MS) {
    const hour = hourAt(utcMs);
    if (hour.rate > best.rate) best = hour;
  }
  return best;
};

const showerHere = (shower: Shower, observer: Observer, maximumUtcMs: UtcMs, fromUtcMs: UtcMs): ShowerHere | null => {
  const nights = NIGHTS_BESIDE.map((days) =>
    nightOf(localDateOfNight(maximumUtcMs + days * MS_PER_DAY, observer.longitudeDeg), observer.longitudeDeg),
  );
  const hours = nights
    .filter(({ endUtcMs }, i) => i === 0 || endUtcMs > fromUtcMs)
    .flatMap((night) => bestHourOf(shower, observer, maximumUtcMs, night) ?? []);
  const [first, ...others] = hours;
  if (first === undefined) return null;
  const best = others.reduce((a, b) => (b.rate > a.rate ? b : a), first);
  const moon = moonAt(observer, best.utcMs);
  return {
    shower,
    maximumUtcMs,
    bestUtcMs: best.utcMs,
    hourlyRate: best.rate,
    radiantAltitudeDeg: best.radiant.altitudeDeg,
    radiantAzimuthDeg: best.radiant.azimuthDeg,
    moonAltitudeDeg: moon.place.altitudeDeg,
    moonLitFraction: moon.illuminatedFraction,
  };
};

const J2000_MS = Date.UTC(2000, 0, 1, 12);
/** The Sun's own course is uneven by 1.9°, and a maximum counts until a day after. */
const UNEVEN_DAYS = 5;

/** Days from an instant until the mean Sun is at a longitude, −5 to 360: enough to leave alone what is far off. Meeus, Astronomical Algorithms (2nd ed.), formula 25.2. */
const daysUntil = (longitudeDeg: number, utcMs: UtcMs): number => {
  const meanDeg = 280.466 + 0.98565 * ((utcMs - J2000_MS) / MS_PER_DAY);
  const ahead = (((longitudeDeg - meanDeg) % 360) + 360) % 360;
  return (ahead > 360 - UNEVEN_DAYS * DEG_PER_DAY ? ahead - 360 : ahead) / DEG_PER_DAY;
};

/** Showers whose maximum is within the span (up to a year) and whose radiant rises here in the dark, in order. */
export const showersHere = (observer: Observer, { startUtcMs, endUtcMs }: TimeSpan): readonly ShowerHere[] =>
  SHOWERS.flatMap((shower) => {
    if (daysUntil(shower.maximumLongitudeDeg, startUtcMs) > (endUtcMs - startUtcMs) / MS_PER_DAY + UNEVEN_DAYS)
      return [];
    let maximumUtcMs = sunAtLongitude(shower.maximumLongitudeDeg, startUtcMs);
    // The nearest may just be over; the night of the maximum itself still counts.
    if (maximumUtcMs < startUtcMs - MS_PER_DAY)
      maximumUtcMs = sunAtLongitude(shower.maximumLongitudeDeg, maximumUtcMs + MS_PER_YEAR);
    if (maximumUtcMs >= endUtcMs) return [];
    const here = showerHere(shower, observer, maximumUtcMs, startUtcMs);
    return here === null || here.radiantAltitudeDeg < 5 ? [] : [here];
  }).sort((a, b) => a.bestUtcMs - b.bestUtcMs);

export interface ShowerActive {
  readonly shower: Shower;
  /** The nearest, before the instant or after it. */
  readonly maximumUtcMs: UtcMs;
}

/** Lower than this at its highest a radiant gives next to nothing; common practice, no source. */
const LEAST_RADIANT_DEG = 10;

/** Showers that are seen here in the days about an instant, the richest first. */
export const showersActive = ({ latitudeDeg }: Observer, utcMs: UtcMs): readonly ShowerActive[] =>
  SHOWERS.filter(({ decDeg }) => 90 - Math.abs(latitudeDeg - decDeg) > LEAST_RADIANT_DEG)
    .map((shower) => ({ shower, maximumUtcMs: sunAtLongitude(shower.maximumLongitudeDeg, utcMs) }))
    .filter(({ shower: { activeDays }, maximumUtcMs }) => {
      const days = (utcMs - maximumUtcMs) / MS_PER_DAY;
      return days > -activeDays[0] && days < activeDays[1];
    })
    .sort((a, b) => b.shower.zenithalHourlyRate - a.shower.zenithalHourlyRate);
