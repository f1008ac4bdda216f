/** A country where a place stands. */
import { countryNamed, foldPlace } from '../../../places/index.js';
import type { PlaceKnowledge } from './place-knowledge.js';
import type { Run } from './words.js';

/** "In Spain", "from nz": a country as a whole; '' where the asker stands in it. */
export const countryIn = (run: Run, before: string, { isHome, isTarget }: PlaceKnowledge): string | null => {
  if (!/^(?:from|in)$/u.test(before)) return null;
  const name = run.plain.replace(/^the /u, '');
  const code = countryNamed(foldPlace(name));
  if (code === null || isTarget(name)) return null;
  return isHome(code) ? '' : name;
};
