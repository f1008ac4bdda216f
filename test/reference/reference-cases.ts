/** The reference values of this folder, read and typed; each file says at its head what made it. */
import { readFileSync } from 'node:fs';
import type { Equatorial, Observer, SkyBody, SolarSystemBody } from '../../bot/sky/types.js';

interface BodyCase {
  readonly name: string;
  readonly body: SkyBody;
  readonly observer: Observer;
}

export interface HorizontalCase extends BodyCase {
  readonly utcMs: number;
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
}

interface PlaceCase extends HorizontalCase {
  readonly ofDate: Equatorial;
}

interface SolarSystemCase extends PlaceCase {
  readonly name: SolarSystemBody;
  readonly j2000: Equatorial;
}

interface SiderealCase {
  readonly utcMs: number;
  readonly longitudeDeg: number;
  readonly gmstHours: number;
  readonly gastHours: number;
  readonly lmstHours: number;
  readonly lastHours: number;
}

export interface Places {
  readonly stars: readonly PlaceCase[];
  readonly solarSystem: readonly SolarSystemCase[];
  readonly moonPhase: readonly {
    readonly utcMs: number;
    readonly illuminatedFraction: number;
    readonly elongationDeg: number;
  }[];
  readonly sidereal: readonly SiderealCase[];
  readonly rotations: readonly { readonly utcMs: number; readonly j2000: Equatorial; readonly ofDate: Equatorial }[];
  readonly angles: readonly {
    readonly a: Equatorial;
    readonly b: Equatorial;
    readonly separationDeg: number;
    readonly positionAngleDeg: number;
  }[];
  readonly refraction: readonly { readonly airlessAltitudeDeg: number; readonly refractionDeg: number }[];
  readonly starsCentury: readonly HorizontalCase[];
  readonly solarSystemCentury: readonly SolarSystemCase[];
  readonly sunTo2100: readonly HorizontalCase[];
  readonly magnitudes: readonly {
    readonly name: SolarSystemBody;
    readonly utcMs: number;
    readonly magnitude: number;
  }[];
}

export interface EventCase extends BodyCase {
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  readonly riseUtcMs: number | null;
  readonly setUtcMs: number | null;
  readonly transitUtcMs: number | null;
  readonly riseRateDegPerHour: number | null;
  readonly setRateDegPerHour: number | null;
  readonly crossings: number;
  readonly highestAboveHorizonDeg: number;
  readonly lowestAboveHorizonDeg: number;
  readonly alwaysUp: boolean;
  readonly neverUp: boolean;
}

interface SunBelow {
  readonly duskUtcMs: number | null;
  readonly dawnUtcMs: number | null;
  readonly darkAllNight: boolean;
  readonly rateDegPerHour: number | null;
}

export interface TwilightCase {
  readonly observer: Observer;
  readonly startUtcMs: number;
  readonly endUtcMs: number;
  readonly sun: SunBelow | null;
  readonly civil: SunBelow | null;
  readonly nautical: SunBelow | null;
  readonly astronomical: SunBelow | null;
}

export interface Events {
  readonly stars: readonly EventCase[];
  readonly solarSystem: readonly EventCase[];
  readonly grazing: readonly EventCase[];
  readonly twilights: readonly TwilightCase[];
}

const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'));

export const readPlaces = (): Places => read('places.json') as Places;
export const readEvents = (): Events => read('events.json') as Events;
