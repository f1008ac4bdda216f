/** The kinds that `tonight` can be asked for, and which objects each takes in. */
import type { TargetKind } from '../catalogue/index.js';

const KINDS = {
  any: [
    'galaxy',
    'open-cluster',
    'globular-cluster',
    'planetary-nebula',
    'nebula',
    'supernova-remnant',
    'planet',
    'double-star',
    'moon',
    'asterism',
  ],
  galaxy: ['galaxy'],
  cluster: ['open-cluster', 'globular-cluster'],
  'open-cluster': ['open-cluster'],
  'globular-cluster': ['globular-cluster'],
  nebula: ['nebula', 'supernova-remnant', 'planetary-nebula'],
  'planetary-nebula': ['planetary-nebula'],
  'emission-nebula': ['nebula', 'supernova-remnant'],
  planet: ['planet'],
  'double-star': ['double-star'],
  star: ['star', 'double-star'],
  'variable-star': ['star', 'double-star'],
  'carbon-star': ['star', 'double-star'],
} as const satisfies Readonly<Record<string, readonly TargetKind[]>>;
export type PickKind = keyof typeof KINDS;
const KINDS_OF: Readonly<Record<PickKind, readonly TargetKind[]>> = KINDS;
/** What a question's kind, and the one beside it, take in. */
export const kindsOf = ({ kind, also }: { readonly kind: PickKind; readonly also?: PickKind | undefined }) => [
  ...KINDS_OF[kind],
  ...(also === undefined ? [] : KINDS_OF[also]),
];
export const PICK_KINDS = Object.keys(KINDS) as readonly PickKind[];

/** Other words people use for them. */
export const PICK_KIND_NAMES = {
  all: 'any',
  everything: 'any',
  galaxie: 'galaxy',
  gal: 'galaxy',
  glob: 'globular-cluster',
  open: 'open-cluster',
  nebulosity: 'nebula',
  'diffuse-nebula': 'emission-nebula',
  narrowband: 'emission-nebula',
  pn: 'planetary-nebula',
  planetary: 'planetary-nebula',
  double: 'double-star',
  binary: 'double-star',
  'binary-star': 'double-star',
  variable: 'variable-star',
  carbon: 'carbon-star',
} as const satisfies Readonly<Record<string, PickKind>>;

/** At most so many of a kind when any kind is asked for, so that the list is an evening and not a collection. */
export const MOST_OF_A_KIND: Readonly<Partial<Record<TargetKind, number>>> = {
  galaxy: 2,
  'open-cluster': 2,
  'globular-cluster': 2,
  'planetary-nebula': 2,
  nebula: 3,
  'supernova-remnant': 1,
  'double-star': 2,
  asterism: 1,
};
