/** A constellation asked about as a whole: where it stands is told by the best known in it. */
import { constellationMeant, constellationName, resolveTarget } from '../../catalogue/index.js';
import { isProblem } from '../../ground/problem.js';
import type { Deps } from '../core/command.js';

export interface Chief {
  readonly name: string;
  /** "Orion by its Rigel", and what else there is in it. */
  readonly note: string;
}

const MORE = 3;

/** Null where the text names no constellation alone. */
export const chiefOf = (deps: Pick<Deps, 'catalogue'>, text: string): Chief | null => {
  const meant = constellationMeant(text);
  const found = meant === undefined ? null : resolveTarget(deps.catalogue, text);
  if (meant === undefined || found === null || !isProblem(found) || found.problem !== 'ambiguous-target') return null;
  const [chief, ...others] = found.candidates.map(({ name }) => name);
  if (chief === undefined) return null;
  const more = others.length === 0 ? '' : ` In it too: ${others.slice(0, MORE).join(', ')}.`;
  return { name: chief, note: `${constellationName(meant)} by its ${chief}.${more}` };
};
