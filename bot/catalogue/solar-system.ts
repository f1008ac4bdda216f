/** The Sun, the Moon and the planets as targets, with the other names and signs that members use. */
import type { SolarSystemBody } from '../sky/types.js';
import { foldKey } from './fold-text.js';
import type { Target, TargetKind } from './target.js';

const BODIES: readonly (readonly [body: SolarSystemBody, kind: TargetKind, kindText: string, others: string])[] = [
  ['Sun', 'sun', 'star', 'Sol ☉ ☼'], ['Moon', 'moon', 'natural satellite', 'Luna ☽ ☾'],
  ['Mercury', 'planet', 'planet', '☿'], ['Venus', 'planet', 'planet', '♀'], ['Mars', 'planet', 'planet', '♂'],
  ['Jupiter', 'planet', 'planet', '♃'], ['Saturn', 'planet', 'planet', '♄'], ['Uranus', 'planet', 'planet', '♅ ⛢'],
  ['Neptune', 'planet', 'planet', '♆'], ['Pluto', 'planet', 'dwarf planet', '♇'],
];

export const SOLAR_SYSTEM: readonly Target[] = BODIES.map(([body, kind, kindText]) => ({
  id: body.toLowerCase(), name: body, aliases: [], kind, kindText, constellation: null, magnitude: null, sizeArcmin: null,
  body: { kind: 'solarSystem', body },
}));

const BY_NAME = new Map(BODIES.flatMap(([body, , , others], i) =>
  [body, ...others.split(' ')].map((name) => [foldKey(name) || name, SOLAR_SYSTEM[i]] as const)));

/** The body a text names ("the Moon", "planet Mars", "♃"), or undefined. */
export function solarSystemTarget(text: string): Target | undefined {
  const key = foldKey(text).replace(/^(the|planet)/, '');
  return BY_NAME.get(key) ?? BY_NAME.get(text.replace(/[\ufe0e\ufe0f]/g, '').trim());
}
