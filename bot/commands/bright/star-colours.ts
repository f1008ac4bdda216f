/** Which of the bright stars and planets the eye sees orange or yellow; all others look white or bluish. */
import type { Target } from '../../catalogue/index.js';
import { tableOf } from '../../ground/table-of.js';

export const COLOURS = ['orange', 'yellow', 'white'] as const;
export type Colour = (typeof COLOURS)[number];

/** Other words for them. */
export const COLOUR_NAMES = {
  red: 'orange',
  reddish: 'orange',
  golden: 'yellow',
  blue: 'white',
  bluish: 'white',
} as const satisfies Readonly<Record<string, Colour>>;

/** B−V of 1.0 and more is called orange, of 0.45 and more yellow: Bright Star Catalogue (Hoffleit and Warren 1991), values from memory. */
const ORANGE =
  'Aldebaran,Alphard,Almach,Antares,Arcturus,Atria,Avior,Betelgeuse,Dubhe,Eltanin,Enif,Gacrux,Hamal,Kochab,Mars,Menkent,Mirach,Pollux,Schedar,Suhail';
const YELLOW = 'Capella,Diphda,Jupiter,Mirfak,Polaris,Rigil Kentaurus,Sadr,Saturn,Wezen';

const OF = tableOf<Colour>(
  Object.fromEntries([
    ...ORANGE.split(',').map((name) => [name, 'orange'] as const),
    ...YELLOW.split(',').map((name) => [name, 'yellow'] as const),
  ]),
);

export const colourOf = ({ name, aliases }: Pick<Target, 'name' | 'aliases'>): Colour =>
  [name, ...aliases].map((each) => OF.get(each)).find((colour) => colour !== undefined) ?? 'white';
