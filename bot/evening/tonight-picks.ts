/** Which targets are well placed in the dark hours, ranked, with a reason each; pure but for the catalogue it is given. */
import { TARGET_KINDS, type Catalogue, type Target, type TargetKind } from '../catalogue/index.js';
import { horizonAltitudeDegAt } from '../pointing/horizon/horizon-profile.js';
import { compassWord, degrees, listed } from '../reply/wording.js';
import {
  apparentMagnitude,
  bestTime,
  horizontalOf,
  moonAt,
  moonSeparationDeg,
  nightFrame,
  type TimeSpan,
} from '../sky/index.js';
import type { Observer, SkyBody, UtcMs } from '../sky/types.js';
import type { HorizonPoint } from '../store/store.js';
import { wholeSecond } from '../commands/asking/question-parts.js';

export const PICK_KINDS = [
  'any',
  'galaxy',
  'cluster',
  'open-cluster',
  'globular-cluster',
  'nebula',
  'planetary-nebula',
  'planet',
  'double-star',
  'star',
] as const;
export type PickKind = (typeof PICK_KINDS)[number];

export interface PickQuestion {
  readonly observer: Observer;
  readonly night: TimeSpan;
  /** The hours to look in: astronomical darkness, or the darkest there is. */
  readonly window: TimeSpan;
  /** The Sun at least 6° down: good enough for planets. */
  readonly brightWindow: TimeSpan;
  readonly kind: PickKind;
  /** Faintest magnitude wanted. */
  readonly brighter: number;
  readonly minimumAltitudeDeg: number;
  readonly horizon: readonly HorizonPoint[] | null;
}

export interface Pick {
  readonly target: Target;
  readonly bestUtcMs: UtcMs;
  readonly bestAltitudeDeg: number;
  readonly azimuthDeg: number;
  readonly moonSeparationDeg: number;
  readonly why: string;
}

export const PICK_LIMIT = 10;
/** Of one kind, when all kinds are asked for, so that ten galaxies do not crowd out all else. */
const SAME_KIND_LIMIT = 3;
const SHORTLIST = 120;
const KINDS_OF: Readonly<Record<PickKind, readonly TargetKind[]>> = {
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
  ],
  galaxy: ['galaxy'],
  cluster: ['open-cluster', 'globular-cluster'],
  'open-cluster': ['open-cluster'],
  'globular-cluster': ['globular-cluster'],
  nebula: ['nebula', 'supernova-remnant'],
  'planetary-nebula': ['planetary-nebula'],
  planet: ['planet'],
  'double-star': ['double-star'],
  star: ['star', 'double-star'],
};
/** How much a bright Moon spoils each kind, 0..1; common practice, no source. */
const MOON_HARM: Partial<Record<TargetKind, number>> = {
  galaxy: 1,
  nebula: 0.9,
  'supernova-remnant': 0.9,
  'planetary-nebula': 0.4,
  'globular-cluster': 0.45,
  'open-cluster': 0.3,
};

const clamp = (value: number): number => Math.max(0, Math.min(1, value));

/** 0..1.6: bright, of a good size, and known by name. Weights are common practice, no source. */
const prominence = (kind: TargetKind, magnitude: number, sizeArcmin: number, wellKnown: boolean): number => {
  if (kind === 'planet') return magnitude > 5 ? 0.7 : 1.5;
  if (kind === 'moon') return 1.2;
  const bright = clamp((12 - magnitude) / 7);
  const size = Number.isNaN(sizeArcmin) ? 0.3 : clamp(Math.log2(1 + sizeArcmin) / 5) * (sizeArcmin > 240 ? 0.5 : 1);
  return bright + 0.25 * size + (wellKnown ? 0.35 : 0);
};
const heightWorth = (altitudeDeg: number): number => 0.4 + 0.6 * clamp((altitudeDeg - 15) / 50);

interface Candidate {
  readonly target: Target;
  readonly bestUtcMs: UtcMs;
  readonly altitudeDeg: number;
  readonly score: number;
}

const fixedCandidates = (catalogue: Catalogue, question: PickQuestion, kinds: ReadonlySet<number>): Candidate[] => {
  const { sweep } = catalogue;
  const { observer, night, window, brighter, minimumAltitudeDeg } = question;
  const frame = nightFrame(observer, night.startUtcMs, night.endUtcMs);
  // The culmination altitude 90° − |φ − δ| settles most at the price of a comparison; precession moves δ by under half a degree here.
  const reachDeg = 90.6 - minimumAltitudeDeg;
  const sinNorth =
    observer.latitudeDeg + reachDeg >= 90 ? 1 : Math.sin(((observer.latitudeDeg + reachDeg) * Math.PI) / 180);
  const sinSouth =
    observer.latitudeDeg - reachDeg <= -90 ? -1 : Math.sin(((observer.latitudeDeg - reachDeg) * Math.PI) / 180);
  const scored: { index: number; bestUtcMs: UtcMs; altitudeDeg: number; score: number }[] = [];
  for (let index = 0; index < sweep.length; index++) {
    const magnitude = sweep.magnitude[index] as number;
    if (!(magnitude <= brighter) || !kinds.has(sweep.kindIndex[index] as number)) continue;
    const z = sweep.unitZ[index] as number;
    if (z > sinNorth || z < sinSouth) continue;
    const kind = TARGET_KINDS[sweep.kindIndex[index] as number] ?? 'other';
    const worth = prominence(kind, magnitude, sweep.sizeArcmin[index] as number, sweep.wellKnown[index] === 1);
    const { utcMs, altitudeDeg } = frame.highestIn(
      frame.directionOf([sweep.unitX[index] as number, sweep.unitY[index] as number, z]),
      window,
    );
    if (altitudeDeg < minimumAltitudeDeg) continue;
    scored.push({ index, bestUtcMs: utcMs, altitudeDeg, score: worth * heightWorth(altitudeDeg) });
  }
  scored.sort((a, b) => b.score - a.score || a.index - b.index);
  return scored.slice(0, SHORTLIST).map(({ index, ...rest }) => ({ target: catalogue.targetAt(index), ...rest }));
};

const movingCandidates = (
  catalogue: Catalogue,
  { observer, brightWindow, kind, brighter, minimumAltitudeDeg }: PickQuestion,
): Candidate[] =>
  catalogue.solarSystem
    .filter((target) => KINDS_OF[kind].includes(target.kind))
    .map((target) => ({ target, ...bestTime(target.body, observer, brightWindow) }))
    .map(({ target, utcMs, altitudeDeg }) => ({
      target:
        target.body.kind === 'solarSystem'
          ? { ...target, magnitude: apparentMagnitude(target.body.body, utcMs) }
          : target,
      utcMs,
      altitudeDeg,
    }))
    .filter(({ target, altitudeDeg }) => altitudeDeg >= minimumAltitudeDeg && (target.magnitude ?? 0) <= brighter)
    .map(({ target, utcMs, altitudeDeg }) => ({
      target,
      bestUtcMs: utcMs,
      altitudeDeg,
      score: prominence(target.kind, target.magnitude ?? 0, Number.NaN, true) * heightWorth(altitudeDeg),
    }));

/** The highest moment in the window at which the target clears a horizon profile, or null. */
const clearOf = (
  body: SkyBody,
  { observer, window, horizon, minimumAltitudeDeg }: PickQuestion,
  candidate: Candidate,
): Candidate | null => {
  if (horizon === null) return candidate;
  const clearAt = (utcMs: UtcMs): number | null => {
    const { altitudeDeg, azimuthDeg } = horizontalOf(body, observer, utcMs);
    return altitudeDeg > horizonAltitudeDegAt(horizon, azimuthDeg) && altitudeDeg >= minimumAltitudeDeg
      ? altitudeDeg
      : null;
  };
  if (clearAt(candidate.bestUtcMs) !== null) return candidate;
  let best: Candidate | null = null;
  for (let utcMs = window.startUtcMs; utcMs <= window.endUtcMs; utcMs += 600_000) {
    const altitudeDeg = clearAt(utcMs);
    if (altitudeDeg !== null && (best === null || altitudeDeg > best.altitudeDeg))
      best = { ...candidate, bestUtcMs: utcMs, altitudeDeg };
  }
  return best;
};

interface MoonAtBest {
  readonly separationDeg: number;
  readonly up: boolean;
  readonly litFraction: number;
}

const moonFactor = (kind: TargetKind, { separationDeg, up, litFraction }: MoonAtBest): number =>
  1 - (up ? (MOON_HARM[kind] ?? 0) * litFraction * (0.35 + 0.65 * clamp((70 - separationDeg) / 60)) : 0);

const whyOf = ({ target, altitudeDeg }: Candidate, moon: MoonAtBest, azimuthDeg: number): string => {
  const reasons = [
    altitudeDeg >= 60
      ? 'high up'
      : altitudeDeg >= 35
        ? `well up in the ${compassWord(azimuthDeg)}`
        : `best there is of it, in the ${compassWord(azimuthDeg)}`,
    ...(target.magnitude === null || target.magnitude > 6.5 ? [] : ['bright']),
    ...(target.sizeArcmin !== null && target.sizeArcmin > 60 && target.kind !== 'moon'
      ? ['large, wants a wide field']
      : []),
    ...(target.kind === 'moon' || target.kind === 'planet'
      ? []
      : !moon.up
        ? ['no Moon then']
        : moon.litFraction < 0.25
          ? ['only a thin Moon']
          : (MOON_HARM[target.kind] ?? 0) < 0.5
            ? ['stands moonlight']
            : [`Moon ${degrees(moon.separationDeg)} off`]),
  ];
  return listed(reasons);
};

/** At most ten, best first. Deterministic for the same question. */
export const tonightPicks = (catalogue: Catalogue, question: PickQuestion): readonly Pick[] => {
  const kinds = new Set(KINDS_OF[question.kind].map((kind) => TARGET_KINDS.indexOf(kind)));
  const ranked = [...fixedCandidates(catalogue, question, kinds), ...movingCandidates(catalogue, question)]
    .flatMap((candidate) => clearOf(candidate.target.body, question, candidate) ?? [])
    .map((candidate) => {
      const moon = moonAt(question.observer, candidate.bestUtcMs);
      const atBest: MoonAtBest = {
        separationDeg: moonSeparationDeg(candidate.target.body, question.observer, candidate.bestUtcMs),
        up: moon.place.altitudeDeg > 0,
        litFraction: moon.illuminatedFraction,
      };
      return { candidate, atBest, score: candidate.score * moonFactor(candidate.target.kind, atBest) };
    })
    .sort((a, b) => b.score - a.score || a.candidate.target.name.localeCompare(b.candidate.target.name));
  const perKind = new Map<TargetKind, number>();
  return ranked
    .filter(({ candidate: { target } }) => {
      const count = perKind.get(target.kind) ?? 0;
      perKind.set(target.kind, count + 1);
      return question.kind !== 'any' || count < SAME_KIND_LIMIT;
    })
    .slice(0, PICK_LIMIT)
    .map(({ candidate, atBest }) => {
      const bestUtcMs = wholeSecond(candidate.bestUtcMs);
      const { azimuthDeg, altitudeDeg } = horizontalOf(candidate.target.body, question.observer, bestUtcMs);
      return {
        target: candidate.target,
        bestUtcMs,
        bestAltitudeDeg: altitudeDeg,
        azimuthDeg,
        moonSeparationDeg: atBest.separationDeg,
        why: whyOf(candidate, atBest, azimuthDeg),
      };
    });
};
