import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brightNamedStars } from '../../bot/catalogue/bright-stars.js';
import {
  CAUSE_IDS,
  type CauseId,
  type Circumstances,
  type Observation,
  type PointedTarget,
} from '../../bot/pointing/miss/astray-types.js';
import { lstErrorS, rightBelief, shownHorizontal, type Belief } from '../../bot/pointing/miss/controller-belief.js';
import { causeKey, explainMiss, type Explanation } from '../../bot/pointing/miss/explain-miss.js';
import { landedOfDate, landedVector } from '../../bot/pointing/miss/landing.js';
import type { Mistake } from '../../bot/pointing/miss/mistake-types.js';
import { possibleMistakes } from '../../bot/pointing/miss/possible-mistakes.js';
import type { MountKind } from '../../bot/pointing/mount/mount.js';
import { nextObservation } from '../../bot/pointing/miss/next-observation.js';
import { angleBetween, separationDeg, unitFromEquatorial, wrapHours12 } from '../../bot/sky/angles.js';
import { equatorialJ2000FromOfDate, horizontalFromOfDate, ofDateFromHorizontal } from '../../bot/sky/place.js';
import { simulate } from '../../scripts/astray/simulate-misses.js';
import { shippedCatalogue } from '../shipped.js';

const STARS = brightNamedStars(shippedCatalogue()).map(({ name, magnitude, body }) => ({
  name,
  magnitude,
  raHoursJ2000: body.raHoursJ2000,
  decDegJ2000: body.decDegJ2000,
}));
const UTC_MS = Date.UTC(2026, 6, 5, 22, 30);

/** Quarry Field in summer: an hour ahead of UTC by daylight saving alone. */
const at = (over: Partial<Circumstances> = {}): Circumstances => ({
  observer: { latitudeDeg: 52.71, longitudeDeg: -3.4, elevationM: 50 },
  utcMs: UTC_MS,
  mount: 'german',
  clock: { utcOffsetMinutes: 60, daylightSavingMinutes: 60, zoneHasDaylightSaving: true },
  alignedOn: null,
  places: [],
  stars: STARS.map(({ name, magnitude, raHoursJ2000, decDegJ2000 }) => ({
    name,
    magnitude,
    ofDate: { raHours: raHoursJ2000, decDeg: decDegJ2000 },
  })),
  ...over,
});
const targetAt = (
  circumstances: Circumstances,
  altitudeDeg: number,
  azimuthDeg: number,
  name = 'target',
): PointedTarget => {
  const ofDate = ofDateFromHorizontal({ altitudeDeg, azimuthDeg }, circumstances.observer, circumstances.utcMs);
  return { name, ofDate, j2000: equatorialJ2000FromOfDate(ofDate, circumstances.utcMs) };
};
const mistakeOf = (circumstances: Circumstances, id: CauseId): Mistake =>
  possibleMistakes(circumstances).find((mistake) => mistake.id === id)!;
const beliefsOf = (circumstances: Circumstances, id: CauseId): Belief[] =>
  mistakeOf(circumstances, id).forms.map(({ change }) => change(rightBelief(circumstances)));
const beliefOf = (circumstances: Circumstances, id: CauseId): Belief => beliefsOf(circumstances, id)[0]!;
const sizedBelief = (circumstances: Circumstances, id: CauseId, z: readonly number[]): Belief =>
  mistakeOf(circumstances, id).sizes[0]!.change(z)(rightBelief(circumstances));

describe('what a mistake does, worked by hand', () => {
  const circumstances = at();
  const target = targetAt(circumstances, 40, 120);

  it('daylight saving left off: sidereal time an hour (and ten seconds) ahead, the tube an hour of right ascension west of the target', () => {
    const belief = beliefOf(circumstances, 'daylight-saving');
    expect(lstErrorS(belief)).toBeCloseTo(3600 * 1.0027379, 0);
    const landed = landedOfDate(circumstances, belief, target);
    expect(landed.decDeg).toBeCloseTo(target.ofDate.decDeg, 6);
    expect(wrapHours12(landed.raHours - target.ofDate.raHours)).toBeCloseTo(-1.0027379, 4);
  });

  it("date off by a day: sidereal time off by 3 min 56.6 s (the mean Sun's daily motion, Explanatory Supplement)", () => {
    const [early, late] = beliefsOf(circumstances, 'date-off-by-one');
    expect(lstErrorS(early!)).toBeCloseTo(-236.56, 0);
    expect(lstErrorS(late!)).toBeCloseTo(236.56, 0);
  });

  it('longitude sign: sidereal time off by twice the longitude at 15° an hour', () => {
    expect(lstErrorS(beliefOf(circumstances, 'longitude-sign'))).toBeCloseTo(((2 * 3.4) / 15) * 3600, 3);
  });

  it('wrong hemisphere: the landing is at minus the declination and the mirrored hour angle', () => {
    const belief = beliefOf(circumstances, 'hemisphere-mode');
    const landed = landedOfDate(circumstances, belief, target);
    const hourAngle = (raHours: number): number => wrapHours12(belief.trueLstHours - raHours);
    expect(landed.decDeg).toBeCloseTo(-target.ofDate.decDeg, 6);
    expect(hourAngle(landed.raHours)).toBeCloseTo(-hourAngle(target.ofDate.raHours), 6);
  });

  it('epoch: the landing is off by 26 years of precession, up to 50.3″ a year (Lieske 1977)', () => {
    const missDeg = separationDeg(target.ofDate, landedOfDate(circumstances, beliefOf(circumstances, 'epoch'), target));
    expect(missDeg).toBeGreaterThan(0.05);
    expect(missDeg).toBeLessThan((26.6 * 50.3) / 3600 + 0.01);
  });

  it('not tracking: the tube stays while the sky goes west, so it ends east of the target by the time stood still', () => {
    const belief = sizedBelief(circumstances, 'not-tracking', [0]);
    const landed = landedOfDate(circumstances, belief, target);
    expect(wrapHours12(landed.raHours - target.ofDate.raHours) * 60).toBeCloseTo(belief.stoppedMinutes * 1.0027379, 3);
  });

  it('a polar axis too high by a degree moves the pole itself by that degree, towards the zenith', () => {
    const pole: PointedTarget = {
      name: 'the pole',
      ofDate: { raHours: 0, decDeg: 90 },
      j2000: { raHours: 0, decDeg: 90 },
    };
    const right = rightBelief(circumstances);
    const landed = landedOfDate(circumstances, { ...right, stance: { turnDeg: 0, raisedDeg: 1, tiltDeg: 0 } }, pole);
    const seen = horizontalFromOfDate(landed, circumstances.observer, circumstances.utcMs);
    expect(seen.altitudeDeg).toBeCloseTo(53.71, 1);
  });

  it('a base turned east by 5° turns every landing by just 5° of azimuth, on each kind of mount (a turn about the vertical)', () => {
    for (const mount of ['german', 'fork', 'altaz'] as const) {
      for (const latitudeDeg of [52.71, -33.9]) {
        const here = at({ mount, observer: { latitudeDeg, longitudeDeg: -3.4, elevationM: 0 } });
        const there = targetAt(here, 40, 120);
        const turned = { ...rightBelief(here), stance: { turnDeg: 5, raisedDeg: 0, tiltDeg: 0 } };
        const seen = horizontalFromOfDate(landedOfDate(here, turned, there), here.observer, here.utcMs);
        expect(seen.azimuthDeg, mount).toBeCloseTo(125, 2);
        expect(seen.altitudeDeg, mount).toBeCloseTo(40, 2);
      }
    }
  });

  it('an alt-azimuth mount started from home lands just where its display says', () => {
    const altaz = at({ mount: 'altaz' });
    for (const id of ['daylight-saving', 'longitude-sign', 'latitude-sign', 'latitude-longitude-swapped'] as const) {
      const belief = beliefOf(altaz, id);
      const shown = ofDateFromHorizontal(shownHorizontal(belief, target), altaz.observer, altaz.utcMs);
      // The sky core's geodetic frame and the display's plain formula agree to the diurnal aberration.
      expect(separationDeg(shown, landedOfDate(altaz, belief, target)), id).toBeLessThan(0.001);
    }
  });

  it('a clock error does no harm to an equatorial mount that was aligned on a star', () => {
    const star = { name: 'Altair', magnitude: 0.8, ofDate: { raHours: 19.87, decDeg: 8.94 } };
    const aligned = at({ alignedOn: star });
    expect(
      separationDeg(landedOfDate(aligned, beliefOf(aligned, 'daylight-saving'), target), target.ofDate),
    ).toBeLessThan(1e-6);
  });
});

const sites = fc.record({
  latitudeDeg: fc.double({ min: -65, max: 65, noNaN: true }).filter((lat) => Math.abs(lat) > 2),
  longitudeDeg: fc.double({ min: -179, max: 179, noNaN: true }),
  mount: fc.constantFrom<MountKind>('german', 'fork', 'altaz'),
  altitudeDeg: fc.double({ min: 20, max: 80, noNaN: true }),
  azimuthDeg: fc.double({ min: 1, max: 359, noNaN: true }),
});

describe('mistakes', () => {
  it('undone, give back the right pointing on every mount, at every site', () => {
    fc.assert(
      fc.property(sites, ({ latitudeDeg, longitudeDeg, mount, altitudeDeg, azimuthDeg }) => {
        const circumstances = at({ mount, observer: { latitudeDeg, longitudeDeg, elevationM: 0 } });
        const target = targetAt(circumstances, altitudeDeg, azimuthDeg);
        const right = rightBelief(circumstances);
        expect(
          angleBetween(landedVector(circumstances, right, target), unitFromEquatorial(target.ofDate)),
        ).toBeLessThan(1e-6);
        const shown = shownHorizontal(right, target);
        expect(shown.altitudeDeg).toBeCloseTo(altitudeDeg, 3);
        expect(lstErrorS(right)).toBe(0);
        // Each mistake at its size nought, or with its entry put right, is the right belief.
        for (const { sizes, id } of possibleMistakes(circumstances)) {
          const sized = sizes[0];
          if (sized === undefined || id === 'not-tracking') continue;
          const none = sized.change([0, 0, 0])(right);
          expect(
            angleBetween(landedVector(circumstances, none, target), unitFromEquatorial(target.ofDate)),
            id,
          ).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('at a southern site mirror those at its northern image', () => {
    const MIRRORED = CAUSE_IDS.filter(
      (id) => id !== 'latitude-longitude-swapped' && id !== 'epoch' && id !== 'wrong-star',
    );
    fc.assert(
      fc.property(sites, ({ latitudeDeg, longitudeDeg, mount, altitudeDeg, azimuthDeg }) => {
        const here = at({ mount, observer: { latitudeDeg, longitudeDeg, elevationM: 0 } });
        const there = at({ mount, observer: { latitudeDeg: -latitudeDeg, longitudeDeg, elevationM: 0 } });
        const target = targetAt(here, altitudeDeg, azimuthDeg);
        const image: PointedTarget = {
          ...target,
          ofDate: { raHours: target.ofDate.raHours, decDeg: -target.ofDate.decDeg },
        };
        for (const id of MIRRORED) {
          // An alt-azimuth mount's azimuths run from north in both hemispheres, so its own slips have no mirror image.
          if (mount === 'altaz' && ['mirrored-axis', 'not-at-home', 'polar-axis', 'facing'].includes(id)) continue;
          const [a, b] = [here, there].map((circumstances) =>
            possibleMistakes(circumstances).find((mistake) => mistake.id === id),
          );
          if (a === undefined || b === undefined) continue;
          const beliefs = (circumstances: Circumstances, { sizes, forms }: Mistake, flip: 1 | -1): Belief[] => {
            const sizeOf: Partial<Record<CauseId, number[]>> = {
              'not-at-home': [0.4 * flip, 0.7],
              'polar-axis': [0.5, 0.8 * flip, 0.6],
            };
            const right = rightBelief(circumstances);
            return sizes.length === 0
              ? forms.map(({ change }) => change(right))
              : [sizes[0]!.change(sizeOf[id] ?? [0.3])(right)];
          };
          const theirs = beliefs(there, b, -1);
          beliefs(here, a, 1).forEach((belief, i) => {
            if (id === 'not-at-home' && mount === 'german') return; // The side of the pier turns the sense of the declination axis.
            const landed = landedOfDate(here, belief, target);
            const mirrored = landedOfDate(there, theirs[i]!, image);
            expect(
              separationDeg({ raHours: landed.raHours, decDeg: -landed.decDeg }, mirrored),
              `${id} ${mount}`,
            ).toBeLessThan(1e-4);
          });
        }
      }),
      { numRuns: 60 },
    );
  });

  it('come with shares that add up, and never twice the same clock shift under two names', () => {
    for (const { id, forms, sizes } of possibleMistakes(at()))
      expect(
        [...forms, ...sizes].reduce((sum, { share }) => sum + share, 0),
        id,
      ).toBeCloseTo(1, 9);
    const shifts = possibleMistakes(
      at({ clock: { utcOffsetMinutes: -360, daylightSavingMinutes: 0, zoneHasDaylightSaving: true } }),
    )
      .find(({ id }) => id === 'utc-offset')!
      .forms.map(({ slip }) => (slip.kind === 'clock' ? slip.minutes : NaN));
    expect(shifts).not.toContain(-60);
    expect(shifts).not.toContain(360);
    expect(shifts).toContain(60);
  });

  it('that cannot be made are not accused: day and month on the 25th, hemisphere of an alt-azimuth mount, swapped beyond 90°', () => {
    const ids = (circumstances: Circumstances): CauseId[] => possibleMistakes(circumstances).map(({ id }) => id);
    expect(ids(at({ utcMs: Date.UTC(2026, 10, 25, 20) }))).not.toContain('day-month-swapped');
    expect(ids(at())).toContain('day-month-swapped');
    expect(ids(at({ mount: 'altaz' }))).not.toContain('hemisphere-mode');
    expect(ids(at({ observer: { latitudeDeg: 51, longitudeDeg: -114, elevationM: 0 } }))).not.toContain(
      'latitude-longitude-swapped',
    );
    expect(
      ids(at({ clock: { utcOffsetMinutes: 0, daylightSavingMinutes: 0, zoneHasDaylightSaving: true } })),
    ).not.toContain('utc-as-local');
  });
});

const causeNamed = (causes: readonly Explanation[], id: CauseId): Explanation =>
  causes.find((cause) => causeKey(cause) === id)!;

describe('explaining a miss', () => {
  const circumstances = at();
  const target = targetAt(circumstances, 40, 120);
  const landed = (ofDate: PointedTarget['ofDate'], sigmaDeg = 0.5): Observation => ({
    kind: 'landed',
    target,
    ofDate,
    sigmaDeg,
  });

  it('says there is none when the tube is where it should be', () => {
    const { isRight } = explainMiss(circumstances, target, [
      landed(target.ofDate),
      { kind: 'shown', target, at: { altitudeDeg: 40.1, azimuthDeg: 120.2 }, sigmaDeg: 0.5 },
      { kind: 'lst', lstHours: rightBelief(circumstances).lstHours, sigmaS: 20 },
    ]);
    expect(isRight).toBe(true);
  });

  it('accuses no mount where nothing was seen to land', () => {
    const hour = beliefOf(circumstances, 'daylight-saving').lstHours + 0.4;
    const { causes } = explainMiss(circumstances, target, [{ kind: 'lst', lstHours: hour, sigmaS: 20 }]);
    expect(causeKey(causes[0]!)).toBe('sidereal-amount');
    const accused = causes.flatMap(({ parts }) => (parts.length === 2 ? parts.map(({ id }) => id) : []));
    for (const id of ['polar-axis', 'not-at-home', 'not-tracking', 'mirrored-axis', 'wrong-star'] as const)
      expect(accused).not.toContain(id);
  });

  it('says that nothing explains readings that fit no mistake', () => {
    const { unexplainedProbability } = explainMiss(circumstances, target, [
      landed(target.ofDate),
      { kind: 'shown', target, at: { altitudeDeg: 5, azimuthDeg: 300 }, sigmaDeg: 0.5 },
      { kind: 'lst', lstHours: rightBelief(circumstances).lstHours, sigmaS: 20 },
    ]);
    expect(unexplainedProbability).toBeGreaterThan(0.5);
  });

  it('prefers what predicted just this to what could explain anything', () => {
    const belief = beliefOf(circumstances, 'daylight-saving');
    const { causes } = explainMiss(circumstances, target, [landed(landedOfDate(circumstances, belief, target))]);
    expect(causeKey(causes[0]!)).toBe('daylight-saving');
    expect(causes[0]!.residualDeg).toBeLessThan(1e-6);
    expect(causeNamed(causes, 'not-at-home').residualDeg).toBeLessThan(0.2);
  });

  it('fits how far the mount stood from home, and over two targets tells that from a leaning axis', () => {
    const belief = {
      ...rightBelief(circumstances),
      axisOffsets: { primaryDeg: 12, secondaryDeg: -15 },
    };
    const second = targetAt(circumstances, 55, 260, 'second');
    const { causes } = explainMiss(circumstances, target, [
      landed(landedOfDate(circumstances, belief, target)),
      { kind: 'landed', target: second, ofDate: landedOfDate(circumstances, belief, second), sigmaDeg: 0.5 },
    ]);
    expect(causeKey(causes[0]!)).toBe('not-at-home');
    expect(causes[0]!.parts[0].size![0]).toBeCloseTo(12, 0);
    expect(causes[0]!.parts[0].size![1]).toBeCloseTo(-15, 0);
  });

  it('asks next for what separates the first two: the display, where latitude sign and hemisphere land alike', () => {
    const belief = beliefOf(circumstances, 'latitude-sign');
    const made = [landed(landedOfDate(circumstances, belief, target))];
    const { causes } = explainMiss(circumstances, target, made);
    expect(causes.slice(0, 2).map(causeKey).sort()).toEqual(['hemisphere-mode', 'latitude-sign']);
    const next = nextObservation(circumstances, target, made, [causes[0]!, causes[1]!]);
    expect(next!.observation.kind).toBe('shown');
    const after = explainMiss(circumstances, target, [
      ...made,
      { kind: 'shown', target, at: shownHorizontal(belief, target), sigmaDeg: 0.5 },
    ]);
    expect(causeKey(after.causes[0]!)).toBe('latitude-sign');
    expect(after.causes[0]!.probability).toBeGreaterThan(0.9);
  });

  it('asks for a landing elsewhere between home and polar axis, and admits when nothing it can ask would tell', () => {
    const belief = { ...rightBelief(circumstances), stance: { turnDeg: 2, raisedDeg: 3, tiltDeg: 0 } };
    const made = [landed(landedOfDate(circumstances, belief, target))];
    const { causes } = explainMiss(circumstances, target, made);
    const [home, axis] = (['not-at-home', 'polar-axis'] as const).map((id) => causeNamed(causes, id));
    expect(nextObservation(circumstances, target, made, [axis!, home!])!.observation.kind).toBe('landed');
    expect(nextObservation(circumstances, target, made, [axis!, axis!])).toBeNull();
  });
});

describe('explaining simulated misses (seed fixed; sites on land, one mistake each, 0.5° and 20 s of noise)', () => {
  it('names the true cause first in at least 90 %, in the first three in at least 98 %', () => {
    const result = simulate(20261125, 540, STARS, { kinds: ['lst', 'shown', 'landed'], targets: 1 });
    console.info(
      `astray: first ${((100 * result.first) / result.count).toFixed(1)} %, first three ${((100 * result.firstThree) / result.count).toFixed(1)} % of ${result.count}`,
    );
    expect(result.count).toBe(540);
    expect(result.first / result.count).toBeGreaterThanOrEqual(0.9);
    expect(result.firstThree / result.count).toBeGreaterThanOrEqual(0.98);
    // No cause may be named everywhere: the ones with a signature of their own are near certain.
    for (const id of [
      'daylight-saving',
      'day-month-swapped',
      'longitude-sign',
      'latitude-longitude-swapped',
    ] as const) {
      expect(result.byCause.get(id)!.first / result.byCause.get(id)!.count, id).toBeGreaterThan(0.9);
    }
  }, 120_000);
});
