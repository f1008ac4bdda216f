/** What a planet shows in a telescope at its best hour: rings, moons, bands, phase, size. */
import { degrees } from '../reply/wording.js';
import { jupiterMoons } from '../sky/jupiter-moons.js';
import { type PlanetLook, planetLook } from '../sky/planet-look.js';
import type { SolarSystemBody, UtcMs } from '../sky/types.js';
import { isHandHeld, type Equipment } from './equipment.js';

/** Rings less open than this are a line; common practice, no source. */
const EDGE_ON_DEG = 3;
const WIDE_OPEN_DEG = 18;
/** A disc on which a small telescope shows markings; common practice, no source. */
const MARKINGS_ARCSEC = 8;
const HALF_LIT = [0.45, 0.55] as const;

const ringWords = (tiltDeg: number): string => {
  if (tiltDeg < EDGE_ON_DEG) return 'rings nearly edge on, a thin line';
  return tiltDeg < WIDE_OPEN_DEG ? `rings, tilted ${degrees(tiltDeg)}` : `rings wide open, ${degrees(tiltDeg)}`;
};

const phaseWords = ({ litFraction }: PlanetLook): string => {
  if (litFraction > HALF_LIT[0] && litFraction < HALF_LIT[1]) return 'half lit, like a small Moon';
  return litFraction <= HALF_LIT[0]
    ? `a crescent, ${Math.round(litFraction * 100)} % lit`
    : `${Math.round(litFraction * 100)} % lit`;
};

const jupiterWords = (utcMs: UtcMs, isSmall: boolean): string => {
  const beside = jupiterMoons(utcMs).filter(({ state }) => state === 'beside').length;
  const moons = `${beside === 4 ? 'all four moons' : `${beside} moons`} beside it`;
  return isSmall ? moons : `cloud bands, ${moons}`;
};

/** Null where there is nothing to expect but a point of light. */
export const planetWords = (body: SolarSystemBody, utcMs: UtcMs, equipment: Equipment): string | null => {
  const look = planetLook(body, utcMs);
  if (look === null) return null;
  const isSmall = isHandHeld(equipment);
  if (body === 'Jupiter') return jupiterWords(utcMs, isSmall);
  if (isSmall) return null;
  if (look.ringTiltDeg !== null) return `${ringWords(look.ringTiltDeg)}; Titan`;
  if (body === 'Mercury' || body === 'Venus') return phaseWords(look);
  if (body === 'Mars')
    return `a disc of ${look.diameterArcsec.toFixed(0)}″${look.diameterArcsec < MARKINGS_ARCSEC ? ', small' : ', dark markings'}`;
  return `a tiny ${body === 'Uranus' ? 'green' : 'blue'} disc at high power`;
};
