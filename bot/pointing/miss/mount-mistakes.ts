/** Mistakes of the mount and its setting up, which the display does not show: home, axis, base, star, tracking, motors. */
import { DEGREES_PER_RADIAN, cosDeg, dot, unitFromEquatorial, type Vector3 } from '../../sky/angles.js';
import type { AlignmentStar, Circumstances } from './astray-types.js';
import { STANDS_TRUE, rightBelief, type Belief } from './controller-belief.js';
import { flatUnit, shared, type Form, type Mistake, type Sized } from './mistake-types.js';
import { magneticNorth } from '../pole/magnetic-north.js';

/** Spread (one sigma) of the mistakes that have a size. Common practice, no source. */
const HOME_SIGMA_DEG = { primary: 25, secondary: 18, altitude: 10 } as const;
const LEAN_SIGMA_DEG = 3;
const TILT_SIGMA_DEG = 2;
const STOPPED_MEDIAN_MINUTES = 20;
const STOPPED_LOG_SIGMA = 0.8;
const TURN_UNIT_DEG = flatUnit(360);
/** Under this a compass errs less than hands do. */
const FELT_DECLINATION_DEG = 2;

const spread = (seeds: readonly number[]): readonly (readonly number[])[] => [
  [0, 0],
  ...seeds.flatMap((x) => seeds.map((y) => [x, y])),
];
const FAR_SEEDS = [-2.5, -1.2, 0, 1.2, 2.5];
const HOME_SEEDS = [-1.8, 0, 1.8];
const NEAR_SEEDS_3 = [
  [0, 0, 0],
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
];

interface PlacedStar {
  readonly star: AlignmentStar;
  readonly unit: Vector3;
}

/** How often a controller keeps a wrong zero in the other of the two ways (see `zeroKeptOn`). Common practice, no source. */
const OTHER_WAY_SHARE = 0.3;

/**
 * Stars over 12° high are centred for those brighter than so much, from 2° to 40° away; where it is known which one was meant, farther
 * away as well. Common practice, no source.
 */
const SIN_LOWEST_STAR = 0.2;
const BRIGHT_MAGNITUDE = 1.8;
const COS_NEXT_STAR = cosDeg(2);
const COS_FARTHEST_STAR = cosDeg(40);
const COS_FARTHEST_FROM_KNOWN = cosDeg(90);

const starForms = (circumstances: Circumstances): Form[] => {
  const { stars, alignedOn, observer, mount } = circumstances;
  const { trueLstHours } = rightBelief(circumstances);
  const placed = (star: AlignmentStar): PlacedStar => ({ star, unit: unitFromEquatorial(star.ofDate) });
  const zenith = unitFromEquatorial({ raHours: trueLstHours, decDeg: observer.latitudeDeg });
  const seen = stars.map(placed).filter(({ unit }) => dot(unit, zenith) > SIN_LOWEST_STAR);
  const expectedStars =
    alignedOn === null ? seen.filter(({ star }) => star.magnitude < BRIGHT_MAGNITUDE) : [placed(alignedOn)];
  const cosFarthest = alignedOn === null ? COS_FARTHEST_STAR : COS_FARTHEST_FROM_KNOWN;
  // Told apart only where the star is known: unknown, it is open enough by itself.
  const ways: readonly (readonly [Belief['zeroKeptOn'], number])[] =
    mount === 'german' && alignedOn !== null
      ? [
          ['sky', 1 - OTHER_WAY_SHARE],
          ['axes', OTHER_WAY_SHARE],
        ]
      : [['sky', 1]];
  return shared(
    expectedStars.flatMap((expected) =>
      seen
        .map(({ star, unit }) => ({ centred: star, cosApart: dot(expected.unit, unit) }))
        .filter(({ cosApart }) => cosApart < COS_NEXT_STAR && cosApart > cosFarthest)
        .flatMap(({ centred, cosApart }) =>
          ways.map(([zeroKeptOn, share]) => ({
            weight: share * Math.exp((-Math.acos(cosApart) * DEGREES_PER_RADIAN) / 20 - centred.magnitude / 2),
            change: (belief: Belief): Belief => ({
              ...belief,
              alignment: { expected: expected.star, centred },
              zeroKeptOn,
            }),
            slip: { kind: 'star' as const, expected: expected.star.name, centred: centred.name },
          })),
        ),
    ),
  );
};

/** A German mount whose tube is on the other side of the pier than it takes it to be moves in declination as if that axis ran backwards. */
const axisForms = (isGerman: boolean): Form[] =>
  shared([
    {
      weight: 2,
      change: (belief) => ({ ...belief, axisSigns: { primary: -1, secondary: 1 } }),
      slip: { kind: 'axis', axis: 'primary' },
    },
    {
      weight: isGerman ? 3 : 2,
      change: (belief) => ({ ...belief, axisSigns: { primary: 1, secondary: -1 } }),
      slip: { kind: 'axis', axis: 'secondary' },
    },
    {
      weight: 1,
      change: (belief) => ({ ...belief, axisSigns: { primary: -1, secondary: -1 } }),
      slip: { kind: 'axis', axis: 'both' },
    },
  ]);

/** The whole drive mirrored; or the pole alone, where the axis keeps its sense by a setting of its own. */
const hemisphereForms = (): Form[] =>
  shared([
    { weight: 3, change: (belief) => ({ ...belief, southern: !belief.southern }) },
    { weight: 1, change: (belief) => ({ ...belief, southern: !belief.southern, poleAlone: true }) },
  ]);

const notAtHome = (isAltaz: boolean, zeroKeptOn: Belief['zeroKeptOn'], share: number): Sized => {
  const sizeAt = (z: readonly number[]): [number, number] => [
    z[0]! * HOME_SIGMA_DEG.primary,
    z[1]! * (isAltaz ? HOME_SIGMA_DEG.altitude : HOME_SIGMA_DEG.secondary),
  ];
  return {
    share,
    dimensions: 2,
    isFlat: [false, false],
    seeds: spread(HOME_SEEDS),
    sizeAt,
    change: (z) => {
      const [primaryDeg, secondaryDeg] = sizeAt(z);
      return (belief) => ({ ...belief, axisOffsets: { primaryDeg, secondaryDeg }, zeroKeptOn });
    },
  };
};

const narrower = (sized: Sized): Sized => ({ ...sized, isNarrower: true });

/** An equatorial base off the pole: raised, turned about the vertical (which turns the zero of hour angle too), tilted. */
const axisOff = (
  share: number,
  turn: { readonly meanDeg: number; readonly sigmaDeg: number },
  raisedSigmaDeg = LEAN_SIGMA_DEG,
  tiltSigmaDeg = TILT_SIGMA_DEG,
): Sized => {
  const sizeAt = (z: readonly number[]): [number, number, number] => [
    z[0]! * raisedSigmaDeg,
    turn.meanDeg + z[1]! * turn.sigmaDeg,
    z[2]! * tiltSigmaDeg,
  ];
  return {
    share,
    dimensions: 3,
    isFlat: [false, false, false],
    seeds: NEAR_SEEDS_3,
    sizeAt,
    change: (z) => {
      const [raisedDeg, turnDeg, tiltDeg] = sizeAt(z);
      return (belief) => ({ ...belief, stance: { raisedDeg, turnDeg, tiltDeg } });
    },
  };
};

/** An alt-azimuth base that is not level. */
const notLevel: Sized = {
  share: 1,
  dimensions: 2,
  isFlat: [false, false],
  seeds: spread([-1, 0, 1]),
  sizeAt: (z) => [z[0]! * LEAN_SIGMA_DEG, 0, z[1]! * LEAN_SIGMA_DEG],
  change: (z) => (belief) => ({
    ...belief,
    stance: { ...STANDS_TRUE, raisedDeg: z[0]! * LEAN_SIGMA_DEG, tiltDeg: z[1]! * LEAN_SIGMA_DEG },
  }),
};

/** An alt-azimuth base turned: by any angle, or by about so much. */
const faced = (share: number, about: { readonly meanDeg: number; readonly sigmaDeg: number } | null): Sized => {
  const turnAt = (z: readonly number[]): number =>
    about === null ? z[0]! * TURN_UNIT_DEG : about.meanDeg + z[0]! * about.sigmaDeg;
  return {
    share,
    dimensions: 1,
    isFlat: [about === null],
    seeds:
      about === null ? Array.from({ length: 24 }, (_, i) => [(-180 + 15 * i) / TURN_UNIT_DEG]) : [[0], [1.5], [-1.5]],
    sizeAt: (z) => [turnAt(z)],
    change: (z) => {
      const turnDeg = turnAt(z);
      return (belief) => ({ ...belief, stance: { ...STANDS_TRUE, turnDeg } });
    },
  };
};

const stopped: Sized = {
  share: 1,
  dimensions: 1,
  isFlat: [false],
  seeds: FAR_SEEDS.map((x) => [x]),
  sizeAt: (z) => [STOPPED_MEDIAN_MINUTES * Math.exp(z[0]! * STOPPED_LOG_SIGMA)],
  change: (z) => {
    const stoppedMinutes = STOPPED_MEDIAN_MINUTES * Math.exp(z[0]! * STOPPED_LOG_SIGMA);
    return (belief) => ({ ...belief, stoppedMinutes });
  },
};

const baseMistakes = (isAltaz: boolean, declinationDeg: number): Mistake[] => {
  const byCompass = Math.abs(declinationDeg) > FELT_DECLINATION_DEG;
  if (!isAltaz) {
    const level = byCompass ? 0.2 : 0.4;
    const sizes = [
      axisOff(0.25, { meanDeg: 0, sigmaDeg: 12 }),
      narrower(axisOff(0.35, { meanDeg: 0, sigmaDeg: 4 })),
      // By the latitude scale and a level, but turned.
      narrower(axisOff(level, { meanDeg: 0, sigmaDeg: 8 }, 0.5, 0.4)),
      ...(byCompass ? [narrower(axisOff(0.2, { meanDeg: declinationDeg, sigmaDeg: 1.5 }, 1, 0.4))] : []),
    ];
    return [{ id: 'polar-axis', kind: 'mount', prior: 16, forms: [], sizes }];
  }
  const facings = [
    faced(0.4, null),
    narrower(faced(byCompass ? 0.2 : 0.3, { meanDeg: 0, sigmaDeg: 12 })),
    narrower(faced(byCompass ? 0.15 : 0.3, { meanDeg: 180, sigmaDeg: 4 })),
    ...(byCompass ? [narrower(faced(0.25, { meanDeg: declinationDeg, sigmaDeg: 1.5 }))] : []),
  ];
  return [
    { id: 'polar-axis', kind: 'mount', prior: 10, forms: [], sizes: [notLevel] },
    { id: 'facing', kind: 'mount', prior: 16, forms: [], sizes: facings },
  ];
};

/** Everything that can be wrong with the mount under the circumstances. */
export const mountMistakes = (circumstances: Circumstances): Mistake[] => {
  const { mount, alignedOn, observer, utcMs } = circumstances;
  const isAltaz = mount === 'altaz';
  const form = (id: Mistake['id'], prior: number, forms: readonly Form[]): Mistake => ({
    id,
    kind: 'mount',
    prior,
    forms,
    sizes: [],
  });
  const homeSizes =
    mount === 'german'
      ? [notAtHome(isAltaz, 'axes', 1 - OTHER_WAY_SHARE), notAtHome(isAltaz, 'sky', OTHER_WAY_SHARE)]
      : [notAtHome(isAltaz, 'axes', 1)];
  return [
    ...(isAltaz ? [] : [form('hemisphere-mode', 3, hemisphereForms())]),
    form('mirrored-axis', mount === 'german' ? 3 : 2, axisForms(mount === 'german')),
    form('wrong-star', alignedOn === null ? 5 : 9, starForms(circumstances)),
    ...(alignedOn === null
      ? [{ id: 'not-at-home', kind: 'mount', prior: 14, forms: [], sizes: homeSizes } as const]
      : []),
    ...baseMistakes(isAltaz, magneticNorth(observer, utcMs)?.declinationDeg ?? 0),
    { id: 'not-tracking', kind: 'mount', prior: 5, forms: [], sizes: [stopped] } as const,
  ].filter(({ forms, sizes }) => forms.length + sizes.length > 0);
};
