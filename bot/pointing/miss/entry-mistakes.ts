/** Mistakes made at the keypad: clock, date, offset, place and the epoch of coordinates. */
import { MS_PER_DAY, MS_PER_MINUTE } from '../../ground/durations.js';
import { wrapHours12 } from '../../sky/angles.js';
import { lastHours } from '../../sky/sidereal-time.js';
import type { UtcMs } from '../../sky/types.js';
import type { Circumstances } from './astray-types.js';
import { withClockMoved, withSite, type Belief } from './controller-belief.js';
import { flatUnit, shared, type Form, type Mistake, type Sized } from './mistake-types.js';
import { offsetWeight, typedOffsets } from './utc-offsets.js';

/** How far apart in latitude the places are that one owner observes from. Common practice, no source. */
const LATITUDE_SIGMA_DEG = 5;
/** Nearer to the meridian of Greenwich its sign moves nothing that is seen. */
const UNSEEN_LONGITUDE_DEG = 0.15;
/** Minima of a landing's misfit are some hours wide; half an hour finds each. */
const AMOUNT_HOURS = Array.from({ length: 48 }, (_, i) => -12 + i / 2);

type Weighted = Parameters<typeof shared>[0][number];

/** 52.71 read as degrees and minutes and typed with a point: 52.43. */
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

const clockSlip = (minutes: number, weight = 1, enteredOffsetMinutes?: number): Weighted => ({
  weight,
  change: (belief) => withClockMoved(belief, minutes * MS_PER_MINUTE),
  slip: { kind: 'clock', minutes, ...(enteredOffsetMinutes === undefined ? {} : { enteredOffsetMinutes }) },
});

const daySlip = (days: number): Weighted => ({
  weight: 1,
  change: (belief) => withClockMoved(belief, days * MS_PER_DAY),
  slip: { kind: 'days', days },
});

const entered = (id: Mistake['id'], kind: Mistake['kind'], prior: number, weighted: readonly Weighted[]): Mistake => ({
  id,
  kind,
  prior,
  forms: shared(weighted),
  sizes: [],
});

const clockMistakes = ({ utcMs, clock }: Circumstances): Mistake[] => {
  const local = wallClock(utcMs, clock.utcOffsetMinutes);
  const standardMinutes = clock.utcOffsetMinutes - clock.daylightSavingMinutes;
  // Daylight saving left off while it is in force, or left on while it is not.
  const summerMinutes = clock.daylightSavingMinutes !== 0 ? clock.daylightSavingMinutes : -60;
  const signShifts = standardMinutes === 0 ? [] : [2 * standardMinutes];
  if (clock.daylightSavingMinutes !== 0 && clock.utcOffsetMinutes !== 0) signShifts.push(2 * clock.utcOffsetMinutes);
  const halfDay = local.getUTCHours() >= 12 ? -720 : 720;
  // Offsets that come to the same shift as one of the mistakes above are theirs: the same wrong entry under its usual name.
  const taken = [summerMinutes, ...signShifts, -clock.utcOffsetMinutes, halfDay, -halfDay, 0];
  return [
    entered('daylight-saving', 'clock', clock.zoneHasDaylightSaving ? 14 : 4, [clockSlip(summerMinutes)]),
    entered(
      'utc-offset-sign',
      'clock',
      6,
      signShifts.map((minutes, i) => clockSlip(minutes, i === 0 ? 2 : 1)),
    ),
    entered('utc-as-local', 'clock', 4, clock.utcOffsetMinutes === 0 ? [] : [clockSlip(-clock.utcOffsetMinutes)]),
    // 20:00 typed as 8 AM is half a day early; half a day late needs the date wrong as well.
    entered('twelve-hours', 'clock', 5, [clockSlip(halfDay, 9), clockSlip(-halfDay)]),
    entered(
      'utc-offset',
      'clock',
      8,
      typedOffsets(clock.utcOffsetMinutes)
        .map((typed) => ({ typed, minutes: clock.utcOffsetMinutes - typed }))
        .filter(({ minutes }) => !taken.includes(minutes))
        .map(({ typed, minutes }) => clockSlip(minutes, offsetWeight(typed, clock.utcOffsetMinutes), typed)),
    ),
    ...dateMistakes(local),
  ];
};

/** Local wall clock at an instant, as a Date whose UTC fields are the local ones. */
const wallClock = (utcMs: UtcMs, offsetMinutes: number): Date => new Date(utcMs + offsetMinutes * MS_PER_MINUTE);

const dateMistakes = (local: Date): Mistake[] => {
  const day = local.getUTCDate();
  const month = local.getUTCMonth() + 1;
  const year = local.getUTCFullYear();
  const swappedDays = Math.round((Date.UTC(year, day - 1, month) - Date.UTC(year, month - 1, day)) / MS_PER_DAY);
  return [
    entered('date-off-by-one', 'clock', 5, [daySlip(-1), daySlip(1)]),
    entered('day-month-swapped', 'clock', 8, day > 12 || day === month ? [] : [daySlip(swappedDays)]),
  ];
};

/** Of an amount that may be any, and of one that is small: spread in hours, flat or one sigma. */
interface Range {
  readonly unitHours: number;
  readonly isFlat: boolean;
}
const ANY_AMOUNT: Range = { unitHours: flatUnit(24), isFlat: true };
/** A clock set from memory, a date some days old. Common practice, no source. */
const SMALL_AMOUNT: Range = { unitHours: 1.3, isFlat: false };
/** Another place that one drives or flies to. Common practice, no source. */
const NEXT_PLACE: Range = { unitHours: 2.5, isFlat: false };
/** Beyond so many sigmas no search for a small amount begins. */
const FAR_SIGMAS = 3.5;

const seedsIn = ({ unitHours, isFlat }: Range, hours: readonly number[]): number[] => {
  const seeds = hours.map((hour) => hour / unitHours);
  return isFlat || seeds.length === 1 ? seeds : seeds.filter((z) => Math.abs(z) < FAR_SIGMAS);
};

/** Clock, date or longitude off by an amount: the controller's sidereal time ahead by so much. */
const amountIn = (range: Range, hours: readonly number[], share: number): Sized => ({
  share,
  dimensions: 1,
  isFlat: [range.isFlat],
  seeds: seedsIn(range, hours).map((z) => [z]),
  sizeAt: (z) => [z[0]! * range.unitHours * 60],
  change: (z) => (belief) => ({ ...belief, lstHours: belief.lstHours + z[0]! * range.unitHours }),
});

/** Another place, so that the latitude is off as well. */
const anotherPlace = (hours: readonly number[], share: number): Sized => ({
  share,
  dimensions: 2,
  isFlat: [NEXT_PLACE.isFlat, false],
  seeds: seedsIn(NEXT_PLACE, hours).map((z) => [z, 0]),
  sizeAt: (z) => [z[0]! * NEXT_PLACE.unitHours * 60, z[1]! * LATITUDE_SIGMA_DEG],
  change: (z) => (belief) => ({
    ...belief,
    lstHours: belief.lstHours + z[0]! * NEXT_PLACE.unitHours,
    latitudeDeg: Math.max(-90, Math.min(90, belief.latitudeDeg + z[1]! * LATITUDE_SIGMA_DEG)),
  }),
});

/** How often an amount is one that is known beforehand: 1 January after a dead battery, or another of the owner's places. Common practice, no source. */
const DEFAULT_DATE_SHARE = 0.1;
const STORED_PLACE_SHARE = 0.25;
/** Nearer, nobody would see it; and a clock that has forgotten the date stands some days off. */
const FELT_PLACE_DEG = 0.3;
const FELT_DAYS = 2;

/** The definite ones among the amounts. */
const knownAmounts = ({ utcMs, clock, observer, places }: Circumstances): Form[] => {
  const local = wallClock(utcMs, clock.utcOffsetMinutes);
  const day = Date.UTC(local.getUTCFullYear(), local.getUTCMonth(), local.getUTCDate());
  const sinceNewYear = (day - Date.UTC(local.getUTCFullYear(), 0, 1)) / MS_PER_DAY;
  const others = places.filter(
    ({ latitudeDeg, longitudeDeg }) =>
      Math.max(Math.abs(longitudeDeg - observer.longitudeDeg), Math.abs(latitudeDeg - observer.latitudeDeg)) >
      FELT_PLACE_DEG,
  );
  return [
    ...(sinceNewYear > FELT_DAYS
      ? [
          {
            share: DEFAULT_DATE_SHARE,
            change: (belief: Belief) => withClockMoved(belief, -sinceNewYear * MS_PER_DAY),
            slip: { kind: 'default-date' } as const,
          },
        ]
      : []),
    ...others.map(({ name, latitudeDeg, longitudeDeg }) => ({
      share: STORED_PLACE_SHARE / others.length,
      change: (belief: Belief) => withSite(belief, latitudeDeg, longitudeDeg),
      slip: { kind: 'place', name } as const,
    })),
  ];
};

const amountMistake = (circumstances: Circumstances, hours: readonly number[]): Mistake => {
  const forms = knownAmounts(circumstances);
  const open = 1 - forms.reduce((sum, { share }) => sum + share, 0);
  return {
    id: 'sidereal-amount',
    kind: 'clock',
    prior: 16,
    forms,
    sizes: [
      amountIn(ANY_AMOUNT, hours, 0.3 * open),
      amountIn(SMALL_AMOUNT, hours, 0.4 * open),
      anotherPlace(hours, 0.3 * open),
    ],
  };
};

const siteMistakes = ({ observer, mount }: Circumstances): Mistake[] => {
  const { latitudeDeg, longitudeDeg } = observer;
  const site = (to: (belief: Belief) => readonly [number, number], weight = 1, keepsHemisphere = false): Weighted => ({
    weight,
    change: (belief) => {
      const moved = withSite(belief, ...to(belief));
      return keepsHemisphere ? { ...moved, southern: belief.southern } : moved;
    },
  });
  // Most controllers take the hemisphere from the latitude; some have a switch of its own, and then drive rightly all the same.
  const acrossEquator = (to: (belief: Belief) => readonly [number, number]): Weighted[] => {
    const [latitude] = to({ latitudeDeg, longitudeDeg } as Belief);
    return mount === 'altaz' || latitude < 0 === latitudeDeg < 0 ? [site(to)] : [site(to, 2), site(to, 1, true)];
  };
  const asMinutes = [decimalsAsMinutes(latitudeDeg), decimalsAsMinutes(longitudeDeg)];
  return [
    entered(
      'longitude-sign',
      'site',
      9,
      Math.abs(longitudeDeg) < UNSEEN_LONGITUDE_DEG ? [] : [site((b) => [b.latitudeDeg, -b.longitudeDeg])],
    ),
    entered(
      'latitude-sign',
      'site',
      4,
      Math.abs(latitudeDeg) < 0.01 ? [] : acrossEquator((b) => [-b.latitudeDeg, b.longitudeDeg]),
    ),
    entered(
      'latitude-longitude-swapped',
      'site',
      2,
      Math.abs(longitudeDeg) > 90 ? [] : acrossEquator((b) => [b.longitudeDeg, b.latitudeDeg]),
    ),
    entered('minutes-as-decimals', 'site', 5, [
      site((b) => [minutesAsDecimals(b.latitudeDeg), minutesAsDecimals(b.longitudeDeg)], 3),
      ...(asMinutes.includes(null)
        ? []
        : [
            site((b) => [
              decimalsAsMinutes(b.latitudeDeg) ?? b.latitudeDeg,
              decimalsAsMinutes(b.longitudeDeg) ?? b.longitudeDeg,
            ]),
          ]),
    ]),
  ];
};

const epochForms = (): Form[] =>
  shared([
    {
      weight: 4,
      change: (belief) => ({ ...belief, epochSlip: 'j2000-as-date' }),
      slip: { kind: 'epoch', slip: 'j2000-as-date' },
    },
    { weight: 1, change: (belief) => ({ ...belief, epochSlip: 'twice' }), slip: { kind: 'epoch', slip: 'twice' } },
  ]);

/**
 * Everything that can be entered wrongly under the circumstances.
 * @param lstHoursSeen the sidereal time on the controller, from which an amount is read at once
 */
export const entryMistakes = (circumstances: Circumstances, lstHoursSeen: number | null): Mistake[] => {
  const { utcMs, observer } = circumstances;
  const hours =
    lstHoursSeen === null ? AMOUNT_HOURS : [wrapHours12(lstHoursSeen - lastHours(utcMs, observer.longitudeDeg))];
  return [
    ...clockMistakes(circumstances),
    ...siteMistakes(circumstances),
    { id: 'epoch', kind: 'coordinates', prior: 6, forms: epochForms(), sizes: [] } as const,
    amountMistake(circumstances, hours),
  ].filter(({ forms, sizes }) => forms.length + sizes.length > 0);
};
