/** "Ely", after a question that could not be answered without a site: it is where they are, and the question is answered for there. */
import { isProblem } from '../../ground/problem.js';
import { resolveTarget } from '../../catalogue/index.js';
import { lastAsked } from '../asking/following/last-asked.js';
import { knownFor } from '../asking/plain-reader.js';
import { commandLine } from '../asking/question-parts.js';
import { OF_A_PLACE } from '../asking/several-requests.js';
import { toldPlace } from '../asking/sentence/told-place.js';
import type { Deps, WordsReader } from '../core/command.js';
import { keepWhereTold } from './place-told.js';

/** A name and, behind a comma, its region or country. */
const MAY_BE_TOWN = /^\W*\p{L}[\p{L}'’.-]+(?:,? \p{L}[\p{L}'’.-]*){0,4}\W*$/u;
const SITE = / site:/u;
const LEADS = /^\W*(?:(?:ok|okay|oh|well|sorry|it'?s|its|it is|that'?s|in|at|from|near)\s+)*/iu;

/** Called as it is written: "York" is no slip of a nebula's name. */
const isTarget = (name: string, { catalogue }: Pick<Deps, 'catalogue'>): boolean => {
  const found = resolveTarget(catalogue, name);
  return !isProblem(found) && found.isSlip !== true;
};

export const townTold: WordsReader = {
  name: 'the town asked for',
  read: async (deps, said) => {
    const { text, asker, nowUtcMs } = said;
    const line = MAY_BE_TOWN.test(text) ? lastAsked(deps.store, asker, nowUtcMs) : null;
    if (line === null || SITE.test(line) || !OF_A_PLACE.test(line)) return null;
    const known = await knownFor(deps, said);
    const name = text.replace(LEADS, '').replace(/\W+$/u, '');
    if ((known.usual ?? null) !== null || isTarget(name, deps)) return null;
    const told = toldPlace(text, known) ?? toldPlace(`i am in ${name}`, known);
    if (told === null || told.rest !== '') return null;
    return {
      line: `${line} ${commandLine('', '', { site: told.place }).trim()}`,
      note: await keepWhereTold(deps, said, told, known),
    };
  },
};
