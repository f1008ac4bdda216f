/** A town and nothing else: what is wanted of it is asked. */
import { isNamed, resolveTarget } from '../../../catalogue/index.js';
import { problem, type Problem } from '../../../ground/problem.js';
import { populationFound, resolvePlace } from '../../../places/index.js';
import { fittingChoices } from '../../../reply/reply.js';
import { capital } from '../../../reply/wording.js';
import { commandLine } from '../question-parts.js';
import { spellerFor } from '../spelling/known-words.js';
import type { Known } from './asked.js';
import { isOwnName } from './where.js';

/** A town so large is meant by its name; of smaller ones the name may be any word. */
const CITY_POPULATION = 50_000;

const isCity = (place: string, known: Known): boolean => {
  if (!/^\p{L}[\p{L}'’ .,-]{2,40}$/u.test(place)) return false;
  // The quickest first: most lines are ordinary words.
  if (place.split(/[\s,]+/u).every((word) => spellerFor(known).isKnown(word))) return false;
  if (
    !isOwnName(known.places(), place) ||
    (populationFound(resolvePlace(known.places(), place)) ?? 0) < CITY_POPULATION
  )
    return false;
  return !isNamed(resolveTarget(known.catalogue, place));
};

/** Null: more is said, or it may be another word. */
export const placeAlone = (typed: string, known: Known): Problem | null => {
  const place = typed
    .trim()
    .toLowerCase()
    .replace(/[.!?]+$/u, '')
    .replace(/^(?:in|at|from|near) /u, '');
  if (!isCity(place, known)) return null;
  const shown = capital(place.replace(/(?<=[ -])\p{L}{3,}/gu, capital));
  return problem(
    'missing-option',
    `${shown}: what of it? I can say what is up from there, or keep it as your site.`,
    fittingChoices([
      { label: 'What is up there tonight', run: commandLine('tonight', '', { site: place }) },
      { label: 'When it is dark there', run: commandLine('dark', '', { site: place }) },
      { label: 'Keep it as my site', run: commandLine('site', 'add', { name: 'my site', position: place }) },
    ]),
  );
};
