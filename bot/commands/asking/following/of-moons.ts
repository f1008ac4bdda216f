/** "And its moons?": of the planet that was asked about, and never the Moon of the Earth. Pure. */
import { isProblem } from '../../../ground/problem.js';
import { resolveTarget } from '../../../catalogue/index.js';
import { planetOfMoons } from '../sentence/about-planet-moons.js';
import type { Known } from '../sentence/asked.js';
import { inherited, lineOf, timesOf, toldLine, withTimes, type ToldLine } from './told-line.js';

/** One Moon alone is the Earth's, but where it is said to be the planet's. */
const ITS_MOONS = /\b(?:its|his|her|their) (?:\w+ ){0,2}moons?\b|\bmoons\b|\bsatellites\b/u;
/** "Any full moons this month", "the moons of Mars". */
const OTHER_MOONS =
  /\b(?:full|new|blue|blood|super|dark) ?moons?\b|\b(?:moons|satellites) (?:of|round|around)\b|\b(?:starlink|iss|geostationary)\b/u;
const MOST_WORDS = 10;

/** @returns null where no planet's moons are asked about, or another one is named */
export const moonsOfIt = (before: ToldLine, plain: string, known: Known, name: string | null): string | null => {
  if (name === null || !ITS_MOONS.test(plain) || OTHER_MOONS.test(plain)) return null;
  const found = resolveTarget(known.catalogue, name);
  const planet = isProblem(found) ? null : planetOfMoons(found.target.name);
  const named = planetOfMoons(plain);
  if (planet === null || (named !== null && named !== planet) || plain.split(' ').length > MOST_WORDS) return null;
  const told = toldLine(planet === 'jupiter' ? 'moons' : `up ${planet} first:moons`, known.allCommands ?? []);
  if (told === null) return null;
  const after = inherited(before, told);
  return lineOf(withTimes(after, timesOf(before, known.nowUtcMs), known.nowUtcMs) ?? after);
};
