/** The right entries, pressed in a walk that has a helper: the member's own for the member; a helper is told whose they are. */
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { wordsIn } from '../../triage/index.js';
import { entries } from '../entries.js';
import type { Asking } from '../asking/resolve-site.js';
import type { Deps } from '../core/command.js';
import { spotNamed } from './place-in-walk.js';
import type { Walk } from './walk-keeper.js';
import { memberName } from './walk-words.js';

/** Where the mount stands is the member's to show, unless the walk's words name it. */
const THEIRS = (name: string): string =>
  `They are those of where the mount stands, and ${name} alone may show a saved site: let ${name} press the same. Or name the place: entries "Ely, England"`;

export const entriesInWalk = async (
  deps: Deps,
  request: Asking & { readonly nowUtcMs: number },
  walk: Walk,
  by: 'member' | 'helper',
): Promise<Outcome> => {
  const spot = by === 'helper' ? spotNamed(deps, wordsIn(walk.state)) : null;
  if (by === 'helper' && spot === null)
    return reply({ title: 'The right entries', summary: THEIRS(memberName(walk)), pointsAt: NOWHERE, data: {} });
  const site = spot === null ? undefined : `${spot.observer.latitudeDeg},${spot.observer.longitudeDeg}`;
  return entries.run(deps, { ...request, options: { site, at: undefined } });
};
