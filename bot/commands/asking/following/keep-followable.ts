/** Which questions may be followed by a few words, and after which there is nothing to follow any more. */
import { readEquipment } from '../../../evening/equipment.js';
import { isProblem } from '../../../ground/problem.js';
import type { Command, Deps, Request } from '../../core/command.js';
import { keepLastAsked, keepLastPlace, lastAsked } from './last-asked.js';
import { lineOf, toldLine } from './told-line.js';

const OF_THE_SKY =
  /^(?:up|altitude|compare|bright|tonight|dark|moon|ahead|moons|sun|meridian|alignment|sidereal|pole|epoch|entries)$/u;
/** After these "it" and "and now?" are the mount's. */
const OF_THE_MOUNT = /^(?:triage|astray|drift)$/u;

/** "Which is higher" is of the last two that were named: the line before, where it was of another target. */
const keepEarlier = (
  { store, commands }: Pick<Deps, 'store' | 'commands'>,
  { asker, nowUtcMs }: Pick<Request<unknown>, 'asker' | 'nowUtcMs'>,
  target: string | undefined,
): void => {
  const line = target === undefined ? null : lastAsked(store, asker, nowUtcMs);
  const before = line === null ? undefined : toldLine(line, commands)?.values['target'];
  if (target === undefined || before === undefined || before === target) return;
  keepLastAsked(store, asker, line, nowUtcMs, 'earlier');
};

/** Keeps the line of a question of the sky, as it was meant. */
export const keepFollowable = (
  deps: Pick<Deps, 'store' | 'commands'>,
  { asker, nowUtcMs }: Pick<Request<unknown>, 'asker' | 'nowUtcMs'>,
  { command, values }: { readonly command: Command; readonly values: ReadonlyMap<string, unknown> },
): void => {
  const { store } = deps;
  if (OF_THE_MOUNT.test(command.name)) keepLastAsked(store, asker, null, nowUtcMs);
  // What one is to be reminded of is spoken of next.
  const event = command.name === 'remind' ? values.get('event') : undefined;
  if (typeof event === 'string') keepLastAsked(store, asker, `ahead showers about:"${event}"`, nowUtcMs);
  if (!OF_THE_SKY.test(command.name)) return;
  keepLastAsked(store, asker, null, nowUtcMs, 'reminder');
  const kit = values.get('with');
  // What no telescope is would be refused in every question after it.
  const isKept = typeof kit === 'string' && /\d/u.test(kit) && !isProblem(readEquipment(kit));
  if (isKept) keepLastAsked(store, asker, kit, nowUtcMs, 'kit');
  const typed = Object.fromEntries([...values].map(([name, value]) => [name, String(value)]));
  keepEarlier(deps, { asker, nowUtcMs }, typed['target']);
  keepLastAsked(store, asker, lineOf({ command, values: typed }), nowUtcMs);
  const site = typed['site'];
  if (site !== undefined) keepLastPlace(store, asker, site, nowUtcMs);
};
