/** Sentences about the moons of another planet than Jupiter, whose own have a command: which of them show at all. Pure. */
import { nightLine, says, type Rule } from './asked.js';

const PLANET = /\b(mercury|venus|mars|jupiter|saturn|uranus|neptune)(?:'?s)?\b/u;

/** In lower case; null: none is named. */
export const planetOfMoons = (words: string): string | null => PLANET.exec(words.toLowerCase())?.[1] ?? null;

const MOONS = /\bmoons\b|\bsatellites\b/u;
/** "How many moons does Mars have" is answered by the same; these ask for something else. */
const OTHERS =
  /\b(?:sun|solar|remind\w*|slew\w*|go ?to|point|align\w*|occult\w*|eclips\w*|conjunctions?|(?:full|new|blue) moons?)\b/u;

/** The answer of the planet begins with them. */
export const planetMoons: Rule = (asked) => {
  if (!says(asked, MOONS) || says(asked, OTHERS)) return null;
  const planet = planetOfMoons(asked.plain);
  const isAlone = asked.targets.every((name) => name === planet || name === 'moon');
  if (planet === null || planet === 'jupiter' || !isAlone) return null;
  return { ...nightLine('up', planet, asked, { first: 'moons' }), usesAll: true };
};
