/** Which questions may be followed by a few words, and after which there is nothing to follow any more. */
import { readEquipment } from '../../../evening/equipment.js';
import { isProblem } from '../../../ground/problem.js';
import type { Store } from '../../../store/store.js';
import type { Command, Request } from '../../core/command.js';
import { keepLastAsked, keepLastPlace } from './last-asked.js';
import { lineOf } from './told-line.js';

const OF_THE_SKY =
  /^(?:up|altitude|compare|bright|tonight|dark|moon|ahead|moons|sun|meridian|alignment|sidereal|pole|epoch|entries)$/u;
/** After these "it" and "and now?" are the mount's. */
const OF_THE_MOUNT = /^(?:triage|astray|drift)$/u;

/** Keeps the line of a question of the sky, as it was meant. */
export const keepFollowable = (
  store: Store,
  { asker, nowUtcMs }: Pick<Request<unknown>, 'asker' | 'nowUtcMs'>,
  { command, values }: { readonly command: Command; readonly values: ReadonlyMap<string, unknown> },
): void => {
  if (OF_THE_MOUNT.test(command.name)) keepLastAsked(store, asker, null, nowUtcMs);
  // What one is to be reminded of is spoken of next.
  const event = command.name === 'remind' ? values.get('event') : undefined;
  if (typeof event === 'string') keepLastAsked(store, asker, `ahead showers about:"${event}"`, nowUtcMs);
  if (!OF_THE_SKY.test(command.name)) return;
  const kit = values.get('with');
  // What no telescope is would be refused in every question after it.
  const isKept = typeof kit === 'string' && /\d/u.test(kit) && !isProblem(readEquipment(kit));
  if (isKept) keepLastAsked(store, asker, kit, nowUtcMs, 'kit');
  const typed = Object.fromEntries([...values].map(([name, value]) => [name, String(value)]));
  keepLastAsked(store, asker, lineOf({ command, values: typed }), nowUtcMs);
  const site = typed['site'];
  if (site !== undefined) keepLastPlace(store, asker, site, nowUtcMs);
};
