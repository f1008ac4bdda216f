/** Every mistake that can be behind a miss, as the beliefs it would give a controller, each with its share of the cause's prior. */
import { MS_PER_DAY, MS_PER_MINUTE } from '../../ground/durations.js';
import { separationDeg } from '../../sky/angles.js';
import type { UtcMs } from '../../sky/types.js';
import type { AlignmentStar, CauseId, Circumstances } from './astray-types.js';
import { rightBelief, withClock, type Belief } from './controller-belief.js';
import { REAL_UTC_OFFSETS_MINUTES, offsetWeight } from './utc-offsets.js';

/** What exactly was wrong, for the correction's words. */
export type Slip =
  | { readonly kind: 'clock'; readonly minutes: number; readonly enteredOffsetMinutes?: number }
  | { readonly kind: 'days'; readonly days: number }
  | { readonly kind: 'site'; readonly latitudeDeg: number; readonly longitudeDeg: number }
  | { readonly kind: 'star'; readonly expected: string; readonly centred: string }
  | { readonly kind: 'axis'; readonly axis: 'primary' | 'secondary' | 'both' }
  | { readonly kind: 'epoch'; readonly slip: 'j2000-as-date' | 'twice' }
  | { readonly kind: 'plain' };

/** One definite form of a mistake. */
export interface Variant {
  /** Share of the cause, 0..1; all variants of a cause add up to 1. */
  readonly share: number;
  readonly belief: Belief;
  readonly slip: Slip;
}

/** A mistake of unknown size: standard normal parameters into a belief. */
export interface Continuum {
  readonly dimensions: 1 | 2;
  readonly beliefAt: (standardised: readonly number[]) => Belief;
  /** What the parameters are, in their own units. */
  readonly sizeAt: (standardised: readonly number[]) => readonly number[];
}

export interface Mistake {
  readonly id: CauseId;
  /** Relative frequency before anything is seen. Common practice, no source. */
  readonly prior: number;
  readonly variants: readonly Variant[];
  readonly continuum: Continuum | null;
}

/** Spread (one sigma) of the mistakes that have a size. Common practice, no source. */
export const HOME_SIGMA_DEG = 30;
export const HOME_ALTITUDE_SIGMA_DEG = 10;
export const LEAN_SIGMA_DEG = 3;
export const STOPPED_MEDIAN_MINUTES = 20;
export const STOPPED_LOG_SIGMA = 0.8;

/** 52.71 read as degrees and minutes and typed with a point: 52.43.. */
const minutesAsDecimals = (deg: number): number => {
  const whole = Math.trunc(deg);
  const minutes = Math.round(Math.abs(deg - whole) * 60);
  return minutes === 60 ? Math.round(deg) : whole + (Math.sign(deg) * minutes) / 100;
};

/** 52.34 typed as 52° 34′: null where the decimals are no minutes. */
const decimalsAsMinutes = (deg: number): number | null => {
  const whole = Math.trunc(deg);
  const decimals = Math.round(Math.abs(deg - whole) * 100);
  return decimals >= 60 ? null : whole + (Math.sign(deg) * decimals) / 60;
};

const starVariants = (circumstances: Circumstances, right: Belief): Variant[] => {
  const { stars, alignedOn, observer } = circumstances;
  const sinAltitude = ({ ofDate }: AlignmentStar): number => {
    const toRadians = Math.PI / 180;
    const hourAngle = (right.trueLstHours - ofDate.raHours) * 15 * toRadians;
    return (
      Math.sin(ofDate.decDeg * toRadians) * Math.sin(observer.latitudeDeg * toRadians) +
      Math.cos(ofDate.decDeg * toRadians) * Math.cos(hourAngle) * Math.cos(observer.latitudeDeg * toRadians)
    );
  };
  const seen = stars.filter((star) => sinAltitude(star) > 0.2);
  const expectedStars = alignedOn === null ? seen.filter(({ magnitude }) => magnitude < 1.8) : [alignedOn];
  const pairs = expectedStars.flatMap((expected) =>
    seen
      .filter(({ name }) => name !== expected.name)
      .map((centred) => ({ expected, centred, apartDeg: separationDeg(expected.ofDate, centred.ofDate) }))
      .filter(({ apartDeg }) => apartDeg > 2 && apartDeg < 40)
      .map((pair) => ({ ...pair, weight: Math.exp(-pair.apartDeg / 20 - pair.centred.magnitude / 2) })),
  );
  const total = pairs.reduce((sum, { weight }) => sum + weight, 0);
  return pairs.map(({ expected, centred, weight }) => ({
    share: weight / total,
    belief: { ...right, alignment: { expected, centred } },
    slip: { kind: 'star', expected: expected.name, centred: centred.name },
  }));
};

const shared = (
  weighted: readonly { readonly weight: number; readonly belief: Belief; readonly slip: Slip }[],
): Variant[] => {
  const total = weighted.reduce((sum, { weight }) => sum + weight, 0);
  return weighted.map(({ weight, belief, slip }) => ({ share: weight / total, belief, slip }));
};

/** Local wall clock at an instant, as a Date whose UTC fields are the local ones. */
const wallClock = (utcMs: UtcMs, offsetMinutes: number): Date => new Date(utcMs + offsetMinutes * MS_PER_MINUTE);

/** Every mistake that could be made under the circumstances, with the shares of its forms. */
export const possibleMistakes = (circumstances: Circumstances): Mistake[] => {
  const { observer, utcMs, mount, clock } = circumstances;
  const { latitudeDeg, longitudeDeg } = observer;
  const right = rightBelief(circumstances);
  const atClock = (minutes: number): Belief => withClock(right, utcMs + minutes * MS_PER_MINUTE);
  const atSite = (latitude: number, longitude: number): Belief => ({
    ...withClock(right, utcMs, longitude),
    latitudeDeg: latitude,
    southern: latitude < 0,
  });
  const local = wallClock(utcMs, clock.utcOffsetMinutes);
  const standardMinutes = clock.utcOffsetMinutes - clock.daylightSavingMinutes;

  const mistakes: Mistake[] = [];
  const say = (
    id: CauseId,
    prior: number,
    weighted: Parameters<typeof shared>[0],
    continuum: Continuum | null = null,
  ): void => {
    if (weighted.length > 0 || continuum !== null) mistakes.push({ id, prior, variants: shared(weighted), continuum });
  };
  const clockSlip = (minutes: number, weight = 1, enteredOffsetMinutes?: number) => ({
    weight,
    belief: atClock(minutes),
    slip: { kind: 'clock' as const, minutes, ...(enteredOffsetMinutes === undefined ? {} : { enteredOffsetMinutes }) },
  });

  // Daylight saving left off while it is in force, or left on while it is not.
  const summerMinutes = clock.daylightSavingMinutes !== 0 ? clock.daylightSavingMinutes : -60;
  say('daylight-saving', clock.zoneHasDaylightSaving ? 14 : 4, [clockSlip(summerMinutes)]);
  const signShifts = standardMinutes === 0 ? [] : [2 * standardMinutes];
  if (clock.daylightSavingMinutes !== 0 && clock.utcOffsetMinutes !== 0) signShifts.push(2 * clock.utcOffsetMinutes);
  say(
    'utc-offset-sign',
    6,
    signShifts.map((minutes, i) => clockSlip(minutes, i === 0 ? 2 : 1)),
  );
  say('utc-as-local', 4, clock.utcOffsetMinutes === 0 ? [] : [clockSlip(-clock.utcOffsetMinutes)]);
  const halfDay = local.getUTCHours() >= 12 ? -720 : 720;
  // 20:00 typed as 8 AM is half a day early; half a day late needs the date wrong as well.
  say('twelve-hours', 5, [clockSlip(halfDay, 9), clockSlip(-halfDay)]);
  // Offsets that come to the same shift as one of the mistakes above are theirs: the same wrong entry under its usual name.
  const taken = [summerMinutes, ...signShifts, -clock.utcOffsetMinutes, halfDay, -halfDay, 0];
  say(
    'utc-offset',
    8,
    REAL_UTC_OFFSETS_MINUTES.map((entered) => ({ entered, minutes: clock.utcOffsetMinutes - entered }))
      .filter(({ minutes }) => !taken.includes(minutes))
      .map(({ entered, minutes }) => clockSlip(minutes, offsetWeight(entered, clock.utcOffsetMinutes), entered)),
  );

  const daySlip = (days: number) => ({
    weight: 1,
    belief: withClock(right, utcMs + days * MS_PER_DAY),
    slip: { kind: 'days' as const, days },
  });
  say('date-off-by-one', 5, [daySlip(-1), daySlip(1)]);
  const day = local.getUTCDate();
  const month = local.getUTCMonth() + 1;
  say(
    'day-month-swapped',
    8,
    day > 12 || day === month
      ? []
      : [
          daySlip(
            Math.round(
              (Date.UTC(local.getUTCFullYear(), day - 1, month) - Date.UTC(local.getUTCFullYear(), month - 1, day)) /
                MS_PER_DAY,
            ),
          ),
        ],
  );

  const siteSlip = (latitude: number, longitude: number, weight = 1, southern = latitude < 0) => ({
    weight,
    belief: { ...atSite(latitude, longitude), southern },
    slip: { kind: 'site' as const, latitudeDeg: latitude, longitudeDeg: longitude },
  });
  // Most controllers take the hemisphere from the latitude; some have a switch of its own, and then drive rightly all the same.
  const acrossEquator = (latitude: number, longitude: number) =>
    mount === 'altaz' || latitude < 0 === right.southern
      ? [siteSlip(latitude, longitude)]
      : [siteSlip(latitude, longitude, 2), siteSlip(latitude, longitude, 1, right.southern)];
  say('longitude-sign', 9, Math.abs(longitudeDeg) < 0.01 ? [] : [siteSlip(latitudeDeg, -longitudeDeg)]);
  say('latitude-sign', 4, Math.abs(latitudeDeg) < 0.01 ? [] : acrossEquator(-latitudeDeg, longitudeDeg));
  say('latitude-longitude-swapped', 2, Math.abs(longitudeDeg) > 90 ? [] : acrossEquator(longitudeDeg, latitudeDeg));
  const asMinutes = { latitude: decimalsAsMinutes(latitudeDeg), longitude: decimalsAsMinutes(longitudeDeg) };
  say('minutes-as-decimals', 5, [
    siteSlip(minutesAsDecimals(latitudeDeg), minutesAsDecimals(longitudeDeg), 3),
    ...(asMinutes.latitude === null || asMinutes.longitude === null
      ? []
      : [siteSlip(asMinutes.latitude, asMinutes.longitude, 1)]),
  ]);

  const plain = (belief: Partial<Belief>, slip: Slip = { kind: 'plain' }, weight = 1) => ({
    weight,
    belief: { ...right, ...belief },
    slip,
  });
  // The whole drive mirrored; or the pole alone, where the axis keeps its sense by a setting of its own.
  say(
    'hemisphere-mode',
    3,
    mount === 'altaz'
      ? []
      : [
          plain({ southern: !right.southern }, { kind: 'plain' }, 3),
          plain({ southern: !right.southern, poleAlone: true }),
        ],
  );
  say('epoch', 6, [
    plain({ epochSlip: 'j2000-as-date' }, { kind: 'epoch', slip: 'j2000-as-date' }, 4),
    plain({ epochSlip: 'twice' }, { kind: 'epoch', slip: 'twice' }),
  ]);
  say('mirrored-axis', 2, [
    plain({ axisSigns: { primary: -1, secondary: 1 } }, { kind: 'axis', axis: 'primary' }, 2),
    plain({ axisSigns: { primary: 1, secondary: -1 } }, { kind: 'axis', axis: 'secondary' }, 2),
    plain({ axisSigns: { primary: -1, secondary: -1 } }, { kind: 'axis', axis: 'both' }),
  ]);
  const stars = starVariants(circumstances, right);
  if (stars.length > 0)
    mistakes.push({
      id: 'wrong-star',
      prior: circumstances.alignedOn === null ? 5 : 9,
      variants: stars,
      continuum: null,
    });

  const offsets = (z: readonly number[]): number[] => [
    z[0]! * HOME_SIGMA_DEG,
    z[1]! * (mount === 'altaz' ? HOME_ALTITUDE_SIGMA_DEG : HOME_SIGMA_DEG),
  ];
  if (circumstances.alignedOn === null) {
    say('not-at-home', 14, [], {
      dimensions: 2,
      sizeAt: offsets,
      beliefAt: (z) => {
        const [primaryDeg, secondaryDeg] = offsets(z) as [number, number];
        return { ...right, axisOffsets: { primaryDeg, secondaryDeg } };
      },
    });
  }
  const lean = (z: readonly number[]): number[] => [z[0]! * LEAN_SIGMA_DEG, z[1]! * LEAN_SIGMA_DEG];
  say('polar-axis', 10, [], {
    dimensions: 2,
    sizeAt: lean,
    beliefAt: (z) => {
      const [alongDeg, acrossDeg] = lean(z) as [number, number];
      return { ...right, lean: { alongDeg, acrossDeg } };
    },
  });
  const stopped = (z: readonly number[]): number[] => [STOPPED_MEDIAN_MINUTES * Math.exp(z[0]! * STOPPED_LOG_SIGMA)];
  say('not-tracking', 6, [], {
    dimensions: 1,
    sizeAt: stopped,
    beliefAt: (z) => ({ ...right, stoppedMinutes: stopped(z)[0]! }),
  });
  return mistakes;
};
