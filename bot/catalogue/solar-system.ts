/** The Sun, the Moon and the planets as targets, with the other names and signs that members use. */
import type { SolarSystemBody } from '../sky/types.js';
import { editDistance } from '../ground/edit-distance.js';
import { foldKey } from '../ground/fold-text.js';
import { NO_CATALOGUE_DATA, type Target, type TargetKind } from './target.js';

const BODIES: readonly (readonly [body: SolarSystemBody, kind: TargetKind, kindText: string, others: string])[] = [
  ['Sun', 'sun', 'star', 'Sol Sonne Soleil Sole ☉ ☼'],
  ['Moon', 'moon', 'natural satellite', 'Luna Mond Lune ☽ ☾'],
  ['Mercury', 'planet', 'planet', 'Merc Merkur Mercure Mercurio ☿'],
  ['Venus', 'planet', 'planet', 'Vénus Venere ♀'],
  ['Mars', 'planet', 'planet', 'Marte ♂'],
  ['Jupiter', 'planet', 'planet', 'Jup Giove Júpiter ♃'],
  ['Saturn', 'planet', 'planet', 'Saturne Saturno ♄'],
  ['Uranus', 'planet', 'planet', '♅ ⛢'],
  ['Neptune', 'planet', 'planet', 'Neptun Neptuno Nettuno ♆'],
  ['Pluto', 'planet', 'dwarf planet', '♇'],
];

export const SOLAR_SYSTEM: readonly Target[] = BODIES.map(([body, kind, kindText]) => ({
  id: body.toLowerCase(),
  name: body,
  aliases: [],
  kind,
  kindText,
  ...NO_CATALOGUE_DATA,
  body: { kind: 'solarSystem', body },
}));

const BY_NAME = new Map(
  BODIES.flatMap(([body, , , others], i) =>
    [body, ...others.split(' ')].map((name) => [foldKey(name) || name, SOLAR_SYSTEM[i]] as const),
  ),
);

/** All of them that have letters. */
export const SOLAR_SYSTEM_NAMES: readonly string[] = BODIES.flatMap(([body, , , others]) => [
  body,
  ...others.split(' '),
]).filter((name) => foldKey(name) !== '');

/** The body a text names ("the Moon", "planet Mars", "♃"), or undefined. */
export const solarSystemTarget = (text: string): Target | undefined => {
  const key = foldKey(text).replace(/^(the|planet)/, '');
  return BY_NAME.get(key) ?? BY_NAME.get(text.replace(/[\ufe0e\ufe0f]/g, '').trim());
};

/** A planet's name with a slip of the finger ("jupitr"); short names have too many neighbours to be guessed at. */
export const solarSystemSlip = (text: string): Target | undefined => {
  const key = foldKey(text).replace(/^(the|planet)/, '');
  if (key.length < 5) return undefined;
  return SOLAR_SYSTEM.find(({ id }) => id.length >= 5 && editDistance(key, id, 1) <= 1);
};

/** Those of so many letters that two slips leave them near ("venice" is no place on the way to Venus). */
export const solarSystemNear = (text: string): readonly Target[] => {
  const key = foldKey(text);
  return SOLAR_SYSTEM.filter(({ id }) => id.length >= 5 && editDistance(key, id, 2) <= 2);
};

const MOONS: ReadonlyMap<string, SolarSystemBody> = new Map(
  (
    [
      ['Mars', 'phobos deimos'],
      ['Jupiter', 'io europa ganymede callisto'],
      ['Saturn', 'mimas enceladus tethys dione rhea titan iapetus hyperion phoebe'],
      ['Uranus', 'miranda ariel umbriel titania oberon'],
      ['Neptune', 'triton nereid'],
      ['Pluto', 'charon'],
    ] as const
  ).flatMap(([planet, moons]) => moons.split(' ').map((moon) => [moon, planet] as const)),
);

const MINOR_PLANETS =
  'ceres pallas juno vesta astraea hebe iris flora hygiea eris haumea makemake eros halley encke'.split(' ');
const MINOR_PLANET = new RegExp(`^(?:${MINOR_PLANETS.join('|')})$`);

/** The names, as keys, of what moves beside the planets. */
export const MOVING_NAMES: readonly string[] = [...MOONS.keys(), ...MINOR_PLANETS];

/** The planet that a moon goes with ("Titan" → Saturn), or undefined. */
export const planetOfMoon = (text: string): Target | undefined => {
  const planet = MOONS.get(foldKey(text));
  return SOLAR_SYSTEM.find(({ name }) => name === planet);
};

/** Whether a text names a satellite of Earth. */
export const isSatellite = (text: string): boolean => {
  return (
    /\b(?:satellites?|iss|tiangong|starlink)\b/i.test(text) || /^(?:the)?(?:hubble|spacestation)$/.test(foldKey(text))
  );
};

/** Whether a text names a comet or a minor planet. */
export const movesUnlisted = (text: string): boolean => {
  return (
    /\b(?:comets?|asteroids?|minor planets?)\b|^[cpdx]\/\s?-?\d|^\d+[pi](?:\/|$)/i.test(text) ||
    MINOR_PLANET.test(foldKey(text))
  );
};
