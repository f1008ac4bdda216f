/** Makes misses with a known cause, lets `astray` explain them, and counts how often it is right; results depend on the seed alone. */
import { DateTime } from 'luxon';
import { timeZoneAt } from '../../bot/places/time-zone-at.js';
import {
  CAUSE_IDS,
  LST_SIGMA_S,
  POSITION_SIGMA_DEG,
  type AlignmentStar,
  type CauseId,
  type Circumstances,
  type Observation,
  type PointedTarget,
} from '../../bot/pointing/miss/astray-types.js';
import { lstErrorS, rightBelief, shownHorizontal, type Belief } from '../../bot/pointing/miss/controller-belief.js';
import { landedVector } from '../../bot/pointing/miss/landing.js';
import { causeKey, explainMiss } from '../../bot/pointing/miss/explain-miss.js';
import { possibleMistakes } from '../../bot/pointing/miss/possible-mistakes.js';
import { tangents } from '../../bot/pointing/miss/observation-misfit.js';
import type { MountKind } from '../../bot/pointing/mount/mount.js';
import {
  add,
  angleBetween,
  equatorialFromVector,
  horizontalFromVector,
  normalized,
  scale,
  unitFromEquatorial,
  unitFromHorizontal,
  type Vector3,
} from '../../bot/sky/angles.js';
import {
  equatorialJ2000FromOfDate,
  equatorialOfDateFromJ2000,
  horizontalOf,
  ofDateFromHorizontal,
} from '../../bot/sky/place.js';

export interface BrightStar {
  readonly name: string;
  readonly magnitude: number;
  readonly raHoursJ2000: number;
  readonly decDegJ2000: number;
}

export interface SimulatedMiss {
  readonly cause: CauseId;
  readonly circumstances: Circumstances;
  /** The first one pointed at. */
  readonly target: PointedTarget;
  readonly observations: readonly Observation[];
  /** The largest effect the mistake has without noise, in degrees, on the landing, the display or (15° an hour) the sidereal time. */
  readonly effectDeg: number;
}

export type Random = () => number;

/** Uniform 0..1 from a seed (mulberry32, T. Ettinger, public domain algorithm). */
export const seededRandom = (seed: number): Random => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
};

const gaussian = (random: Random): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
const pick = <T>(random: Random, items: readonly T[], weight: (item: T) => number): T => {
  let left = random() * items.reduce((sum, item) => sum + weight(item), 0);
  for (const item of items) {
    left -= weight(item);
    if (left <= 0) return item;
  }
  return items.at(-1)!;
};

const blurred = (random: Random, v: Vector3): Vector3 => {
  const [a, b] = tangents(v);
  const perDegree = (POSITION_SIGMA_DEG * Math.PI) / 180;
  return normalized(add(v, add(scale(a, gaussian(random) * perDegree), scale(b, gaussian(random) * perDegree))));
};

/** A site on land, a dark instant, a mount. */
const randomCircumstances = (random: Random, brightStars: readonly BrightStar[]): Circumstances => {
  for (;;) {
    const latitudeDeg = (Math.asin(-0.85 + 1.75 * random()) * 180) / Math.PI;
    const longitudeDeg = -180 + 360 * random();
    const zone = timeZoneAt(latitudeDeg, longitudeDeg);
    const utcMs = Math.round(Date.UTC(2024, 0, 1) + random() * 5 * 365.25 * 86_400_000);
    const observer = {
      latitudeDeg: Math.round(latitudeDeg * 100) / 100,
      longitudeDeg: Math.round(longitudeDeg * 100) / 100,
      elevationM: 100,
    };
    if (zone.startsWith('Etc/') || Math.abs(latitudeDeg) > 66) continue;
    if (horizontalOf({ kind: 'solarSystem', body: 'Sun' }, observer, utcMs).altitudeDeg > -10) continue;
    const local = DateTime.fromMillis(utcMs, { zone });
    const offsets = [1, 7].map((month) => DateTime.fromObject({ year: local.year, month }, { zone }).offset);
    const stars: AlignmentStar[] = brightStars.map(({ name, magnitude, raHoursJ2000, decDegJ2000 }) => ({
      name,
      magnitude,
      ofDate: equatorialOfDateFromJ2000({ raHours: raHoursJ2000, decDeg: decDegJ2000 }, utcMs),
    }));
    return {
      observer,
      utcMs,
      stars,
      alignedOn: null,
      places: [],
      mount: pick(random, ['german', 'fork', 'altaz'] as readonly MountKind[], (kind) => (kind === 'german' ? 3 : 1)),
      clock: {
        utcOffsetMinutes: local.offset,
        daylightSavingMinutes: local.offset - Math.min(...offsets),
        zoneHasDaylightSaving: offsets[0] !== offsets[1],
      },
    };
  }
};

const randomTarget = (random: Random, { observer, utcMs }: Circumstances): PointedTarget => {
  const ofDate = ofDateFromHorizontal(
    { altitudeDeg: (Math.asin(0.35 + 0.64 * random()) * 180) / Math.PI, azimuthDeg: random() * 360 },
    observer,
    utcMs,
  );
  return { name: 'the target', ofDate, j2000: equatorialJ2000FromOfDate(ofDate, utcMs) };
};

const observe = (
  random: Random,
  circumstances: Circumstances,
  belief: Belief,
  target: PointedTarget,
  kinds: readonly Observation['kind'][],
): Observation[] =>
  kinds.map((kind): Observation => {
    switch (kind) {
      case 'lst':
        return {
          kind,
          lstHours: (belief.lstHours + (gaussian(random) * LST_SIGMA_S) / 3600 + 24) % 24,
          sigmaS: LST_SIGMA_S,
        };
      case 'shown':
        return {
          kind,
          target,
          at: horizontalFromVector(blurred(random, unitFromHorizontal(shownHorizontal(belief, target)))),
          sigmaDeg: POSITION_SIGMA_DEG,
        };
      case 'landed':
        return {
          kind,
          target,
          ofDate: equatorialFromVector(blurred(random, landedVector(circumstances, belief, target))),
          sigmaDeg: POSITION_SIGMA_DEG,
        };
    }
  });

export interface SimulationOptions {
  readonly kinds: readonly Observation['kind'][];
  /** How many targets each miss is seen on; the sidereal time is read once. */
  readonly targets: number;
}

/** One miss of a given cause. */
export const simulatedMiss = (
  random: Random,
  cause: CauseId,
  brightStars: readonly BrightStar[],
  options: SimulationOptions,
): SimulatedMiss => {
  for (;;) {
    const circumstances = randomCircumstances(random, brightStars);
    const mistake = possibleMistakes(circumstances).find(({ id }) => id === cause);
    if (mistake === undefined) continue;
    const right = rightBelief(circumstances);
    const form = pick(random, [...mistake.forms, ...mistake.sizes], ({ share }) => share);
    const belief =
      'slip' in form
        ? form.change(right)
        : form.change(
            form.isFlat.map((isFlat) => (isFlat ? (random() - 0.5) * Math.sqrt(2 * Math.PI) : gaussian(random))),
          )(right);
    const observations: Observation[] = [];
    const targets = Array.from({ length: options.targets }, () => randomTarget(random, circumstances));
    let effectDeg = Math.abs(lstErrorS(belief)) / 240;
    for (const target of targets) {
      observations.push(
        ...observe(
          random,
          circumstances,
          belief,
          target,
          options.kinds.filter((kind) => target === targets[0] || kind !== 'lst'),
        ),
      );
      effectDeg = Math.max(
        effectDeg,
        angleBetween(unitFromEquatorial(target.ofDate), landedVector(circumstances, belief, target)),
        angleBetween(
          unitFromHorizontal(shownHorizontal(right, target)),
          unitFromHorizontal(shownHorizontal(belief, target)),
        ),
      );
    }
    return { cause, circumstances, target: targets[0]!, observations, effectDeg };
  }
};

export interface SimulationResult {
  readonly count: number;
  readonly first: number;
  readonly firstThree: number;
  /** `${true cause} → ${cause named first}` with how often, where they differ. */
  readonly confusions: ReadonlyMap<string, number>;
  readonly byCause: ReadonlyMap<
    CauseId,
    { readonly count: number; readonly first: number; readonly firstThree: number }
  >;
}

/** A miss with an effect of so many degrees; null when the cause seems unable to have one. */
const missOfEffect = (
  random: Random,
  cause: CauseId,
  brightStars: readonly BrightStar[],
  options: SimulationOptions,
  leastEffectDeg: number,
): SimulatedMiss | null => {
  for (let attempt = 0; attempt < 60; attempt++) {
    const miss = simulatedMiss(random, cause, brightStars, options);
    if (miss.effectDeg >= leastEffectDeg) return miss;
  }
  return null;
};

/** Causes take turns, so that each is as frequent as any other; misses whose effect is under `leastEffectDeg` are drawn again, causes that never have it left out. */
export const simulate = (
  seed: number,
  count: number,
  brightStars: readonly BrightStar[],
  options: SimulationOptions,
  leastEffectDeg = 0,
): SimulationResult => {
  const random = seededRandom(seed);
  const confusions = new Map<string, number>();
  const byCause = new Map<CauseId, { count: number; first: number; firstThree: number }>();
  let total = 0;
  let causes: readonly CauseId[] = CAUSE_IDS;
  for (let turn = 0; total < count && causes.length > 0; turn++) {
    const cause = causes[turn % causes.length]!;
    const miss = missOfEffect(random, cause, brightStars, options, leastEffectDeg);
    if (miss === null) {
      causes = causes.filter((id) => id !== cause);
      continue;
    }
    total++;
    const { causes: ranked } = explainMiss(miss.circumstances, miss.target, miss.observations);
    const row = byCause.get(cause) ?? { count: 0, first: 0, firstThree: 0 };
    const ids = ranked.map(causeKey);
    const place = ids.indexOf(cause);
    row.count++;
    if (place === 0) row.first++;
    else confusions.set(`${cause} → ${ids[0]!}`, (confusions.get(`${cause} → ${ids[0]!}`) ?? 0) + 1);
    if (place >= 0 && place < 3) row.firstThree++;
    byCause.set(cause, row);
  }
  const sum = (key: 'first' | 'firstThree'): number =>
    [...byCause.values()].reduce((soFar, row) => soFar + row[key], 0);
  return { count: total, first: sum('first'), firstThree: sum('firstThree'), confusions, byCause };
};
