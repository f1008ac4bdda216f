/**
 * What people look for on the Moon: names after the IAU's list, places and sizes as the usual atlases round them (from memory, to about
 * half a degree; the letters X and V by their observers' own figures, from memory too).
 */
import { foldWords } from '../ground/fold-text.js';
import { tableOf } from '../ground/table-of.js';

export type MoonFeatureKind =
  'crater' | 'mountains' | 'valley' | 'scarp' | 'rille' | 'sea' | 'bay' | 'peak' | 'letter' | 'dome';

export interface MoonFeature {
  readonly name: string;
  readonly kind: MoonFeatureKind;
  /** Selenographic: north and east (Mare Crisium's side) positive. */
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** Across, or along what is long. */
  readonly sizeKm: number;
}

const ROWS: readonly (readonly [MoonFeatureKind, string, number, number, number])[] = [
  ['crater', 'Copernicus', 9.6, -20.1, 96],
  ['crater', 'Tycho', -43.3, -11.4, 86],
  ['crater', 'Plato', 51.6, -9.4, 101],
  ['crater', 'Clavius', -58.8, -14.1, 231],
  ['crater', 'Ptolemaeus', -9.3, -1.9, 154],
  ['crater', 'Alphonsus', -13.7, -3.2, 111],
  ['crater', 'Arzachel', -18.3, -1.9, 97],
  ['crater', 'Theophilus', -11.5, 26.3, 99],
  ['crater', 'Cyrillus', -13.3, 24.1, 98],
  ['crater', 'Catharina', -18.1, 23.6, 99],
  ['crater', 'Aristarchus', 23.7, -47.5, 40],
  ['crater', 'Herodotus', 23.2, -49.7, 35],
  ['crater', 'Kepler', 8.1, -38.0, 30],
  ['crater', 'Eratosthenes', 14.5, -11.3, 59],
  ['crater', 'Archimedes', 29.7, -4.0, 81],
  ['crater', 'Aristillus', 33.9, 1.2, 54],
  ['crater', 'Autolycus', 30.7, 1.5, 39],
  ['crater', 'Cassini', 40.2, 4.6, 57],
  ['crater', 'Aristoteles', 50.2, 17.4, 88],
  ['crater', 'Eudoxus', 44.3, 16.3, 70],
  ['crater', 'Hercules', 46.7, 39.1, 68],
  ['crater', 'Atlas', 46.7, 44.4, 88],
  ['crater', 'Endymion', 53.9, 57.0, 122],
  ['crater', 'Posidonius', 31.9, 30.0, 95],
  ['crater', 'Cleomedes', 27.7, 55.5, 131],
  ['crater', 'Proclus', 16.1, 46.8, 27],
  ['crater', 'Langrenus', -8.9, 61.1, 132],
  ['crater', 'Vendelinus', -16.4, 61.6, 141],
  ['crater', 'Petavius', -25.1, 60.4, 184],
  ['crater', 'Furnerius', -36.0, 60.6, 135],
  ['crater', 'Messier', -1.9, 47.6, 11],
  ['crater', 'Fracastorius', -21.5, 33.2, 121],
  ['crater', 'Piccolomini', -29.7, 32.2, 87],
  ['crater', 'Janssen', -45.4, 40.3, 200],
  ['crater', 'Plinius', 15.4, 23.7, 41],
  ['crater', 'Linné', 27.7, 11.8, 2],
  ['crater', 'Manilius', 14.5, 9.1, 38],
  ['crater', 'Julius Caesar', 9.2, 15.2, 85],
  ['crater', 'Albategnius', -11.7, 4.3, 131],
  ['crater', 'Hipparchus', -5.1, 5.2, 144],
  ['crater', 'Werner', -28.0, 3.3, 70],
  ['crater', 'Walther', -33.1, 1.0, 128],
  ['crater', 'Maurolycus', -42.0, 14.0, 114],
  ['crater', 'Stöfler', -41.1, 6.0, 126],
  ['crater', 'Purbach', -25.5, -2.3, 115],
  ['crater', 'Regiomontanus', -28.3, -1.0, 108],
  ['crater', 'Deslandres', -33.1, -4.8, 227],
  ['crater', 'Maginus', -50.5, -6.3, 155],
  ['crater', 'Moretus', -70.6, -5.8, 111],
  ['crater', 'Longomontanus', -49.6, -21.8, 157],
  ['crater', 'Pitatus', -29.9, -13.5, 106],
  ['crater', 'Bullialdus', -20.7, -22.2, 61],
  ['crater', 'Gassendi', -17.6, -40.1, 101],
  ['crater', 'Schiller', -51.9, -39.0, 180],
  ['crater', 'Schickard', -44.3, -55.3, 206],
  ['crater', 'Wargentin', -49.6, -60.2, 84],
  ['crater', 'Bailly', -66.5, -69.1, 287],
  ['crater', 'Grimaldi', -5.5, -68.3, 172],
  ['crater', 'Riccioli', -3.3, -74.6, 139],
  ['crater', 'Hevelius', 2.2, -67.6, 115],
  ['crater', 'Reiner Gamma', 7.5, -59.0, 70],
  ['crater', 'Pythagoras', 63.5, -63.0, 142],
  ['crater', 'Fra Mauro', -6.1, -17.0, 101],
  ['crater', 'Timocharis', 26.7, -13.1, 34],
  ['crater', 'Santbech', -20.9, 44.0, 64],
  ['crater', 'Metius', -40.3, 43.3, 88],
  ['crater', 'Fabricius', -42.9, 42.0, 78],
  ['crater', 'Macrobius', 21.3, 46.0, 64],
  ['crater', 'Taruntius', 5.6, 46.5, 56],
  ['crater', 'Franklin', 38.8, 47.7, 56],
  ['crater', 'Geminus', 34.5, 56.7, 86],
  ['crater', 'Snellius', -29.3, 55.7, 83],
  ['crater', 'Stevinus', -32.5, 54.2, 75],
  ['crater', 'Le Monnier', 26.6, 30.6, 61],
  ['crater', 'Bürg', 45.0, 28.2, 40],
  ['mountains', 'Montes Apenninus', 18.9, -3.7, 600],
  ['mountains', 'Montes Alpes', 46.4, -0.8, 281],
  ['mountains', 'Montes Caucasus', 38.4, 10.0, 445],
  ['mountains', 'Montes Jura', 47.1, -34.0, 420],
  ['peak', 'Mons Piton', 40.6, -1.1, 25],
  ['peak', 'Mons Pico', 45.7, -8.9, 25],
  ['peak', 'Mons Hadley', 26.5, 4.7, 25],
  ['dome', 'Mons Rümker', 40.8, -58.1, 70],
  ['dome', 'Hortensius domes', 7.6, -27.9, 40],
  ['valley', 'Vallis Alpes', 48.5, 3.2, 166],
  ['valley', 'Vallis Schröteri', 26.2, -50.8, 168],
  ['valley', 'Vallis Rheita', -42.5, 51.5, 445],
  ['scarp', 'Straight Wall', -22.1, -7.8, 134],
  ['scarp', 'Rupes Altai', -24.3, 22.6, 427],
  ['rille', 'Rima Hyginus', 7.4, 7.8, 219],
  ['rille', 'Rima Ariadaeus', 6.4, 14.0, 250],
  ['rille', 'Rima Hadley', 25.0, 3.0, 80],
  ['bay', 'Sinus Iridum', 44.1, -31.5, 236],
  ['sea', 'Mare Crisium', 17.0, 59.1, 418],
  ['sea', 'Mare Orientale', -19.4, -92.8, 327],
  ['sea', 'Mare Humorum', -24.4, -38.6, 389],
  ['sea', 'Mare Nectaris', -15.2, 35.5, 333],
  ['letter', 'Lunar X', -25.5, 1.1, 40],
  ['letter', 'Lunar V', 7.7, 0.9, 40],
];

export const MOON_FEATURES: readonly MoonFeature[] = ROWS.map(([kind, name, latitudeDeg, longitudeDeg, sizeKm]) => ({
  kind,
  name,
  latitudeDeg,
  longitudeDeg,
  sizeKm,
}));

/** What they are called beside their names. */
const ALSO: ReadonlyMap<string, string> = tableOf({
  'rupes recta': 'Straight Wall',
  'alpine valley': 'Vallis Alpes',
  'alps valley': 'Vallis Alpes',
  'valley of the alps': 'Vallis Alpes',
  'lunar alps': 'Montes Alpes',
  apennines: 'Montes Apenninus',
  apenninus: 'Montes Apenninus',
  'caucasus mountains': 'Montes Caucasus',
  'jura mountains': 'Montes Jura',
  'bay of rainbows': 'Sinus Iridum',
  'schroters valley': 'Vallis Schröteri',
  "schroter's valley": 'Vallis Schröteri',
  'rheita valley': 'Vallis Rheita',
  'altai scarp': 'Rupes Altai',
  'hyginus rille': 'Rima Hyginus',
  hyginus: 'Rima Hyginus',
  'ariadaeus rille': 'Rima Ariadaeus',
  'hadley rille': 'Rima Hadley',
  piton: 'Mons Piton',
  pico: 'Mons Pico',
  'reiner gamma': 'Reiner Gamma',
  'sea of crises': 'Mare Crisium',
  'x on the moon': 'Lunar X',
  'moon x': 'Lunar X',
  'werner x': 'Lunar X',
  'v on the moon': 'Lunar V',
  'moon v': 'Lunar V',
  'jewelled handle': 'Montes Jura',
  'golden handle': 'Montes Jura',
});

const BY_NAME = new Map<string, MoonFeature>([
  ...MOON_FEATURES.map((feature) => [foldWords(feature.name), feature] as const),
  ...[...ALSO].flatMap(([also, name]) => {
    const feature = MOON_FEATURES.find((each) => each.name === name);
    return feature === undefined ? [] : [[foldWords(also), feature] as const];
  }),
]);
const NAMES = [...BY_NAME.keys()].sort((a, b) => b.length - a.length);

/** The one that words name, or its longest name where several do; null where none is. */
export const moonFeatureIn = (text: string): MoonFeature | null => {
  const words = ` ${foldWords(text)} `;
  const name = NAMES.find((each) => words.includes(` ${each} `) || words.includes(` ${each}s `));
  return name === undefined ? null : (BY_NAME.get(name) ?? null);
};
