/** Ten things worth pointing at in the hours asked about, of several kinds, the finest first; pure but for the catalogue it is given. */
import type { Catalogue, Target, TargetKind } from '../catalogue/index.js';
import { dot, unitFromEquatorial, type Vector3 } from '../sky/angles.js';
import { moonSeparationDeg } from '../sky/moon.js';
import { horizontalOf } from '../sky/place.js';
import type { UtcMs } from '../sky/types.js';
import { fixedCandidates } from './fixed-candidates.js';
import { MOST_OF_A_KIND } from './kinds.js';
import { movingCandidates } from './moving-candidates.js';
import type { Candidate, PickQuestion } from './pick.js';
import { skySample, skySamples, type SkySample } from './sky-samples.js';
import { standsTowards } from './towards.js';
import { total, type Worth } from './worth.js';

export interface Pick {
  readonly target: Target;
  readonly bestUtcMs: UtcMs;
  readonly bestAltitudeDeg: number;
  readonly azimuthDeg: number;
  readonly moonSeparationDeg: number;
  readonly moonAltitudeDeg: number;
  readonly moonLitFraction: number;
  readonly marginMag: number;
  readonly worth: Worth;
  /** Others of the list's kinds that stand in the same field. */
  readonly beside: readonly Target[];
}

export const PICK_LIMIT = 10;
/** What is nearer together than this is one stop at the eyepiece. */
const ONE_STOP_COS = Math.cos((0.7 * Math.PI) / 180);

const unitOf = ({ body }: Target): Vector3 | null =>
  body.kind === 'fixed' ? unitFromEquatorial({ raHours: body.raHoursJ2000, decDeg: body.decDegJ2000 }) : null;

const nearTogether = (a: Vector3 | null, b: Vector3 | null): boolean =>
  a !== null && b !== null && dot(a, b) > ONE_STOP_COS;

interface Stop {
  readonly first: Candidate;
  readonly beside: Target[];
}

/** One entry a stop at the eyepiece, the best of each first. */
const stopsOf = (ranked: readonly Candidate[]): readonly Stop[] => {
  const stops: (Stop & { readonly unit: Vector3 | null })[] = [];
  for (const candidate of ranked) {
    const unit = unitOf(candidate.target);
    const same = stops.find(
      (stop) => (candidate.group !== 0 && candidate.group === stop.first.group) || nearTogether(unit, stop.unit),
    );
    if (same === undefined) stops.push({ first: candidate, beside: [], unit });
    else same.beside.push(candidate.target);
  }
  return stops;
};

/** Ten of them, so many of a kind; what room is left goes to the next best whatever their kind. */
const varied = (stops: readonly Stop[], { kind, constellations }: PickQuestion): readonly Stop[] => {
  if (kind !== 'any') return stops.slice(0, PICK_LIMIT);
  const counts = new Map<TargetKind, number>();
  const within = (extra: number) => (stop: Stop) => {
    const { kind } = stop.first.target;
    const count = counts.get(kind) ?? 0;
    if (count >= (MOST_OF_A_KIND[kind] ?? PICK_LIMIT) + extra) return false;
    counts.set(kind, count + 1);
    return true;
  };
  const chosen = stops.filter(within(0)).slice(0, PICK_LIMIT);
  const left = stops.filter((stop) => !chosen.includes(stop));
  const more = left.filter(within(1)).slice(0, PICK_LIMIT - chosen.length);
  // Of one constellation the rest as well: a list cut short would seem to be all there is.
  const rest = constellations === null ? [] : left.filter((stop) => !more.includes(stop));
  return [...chosen, ...more, ...rest].slice(0, PICK_LIMIT).sort(byWorth);
};

const byWorth = (a: Stop, b: Stop): number =>
  total(b.first.worth) - total(a.first.worth) || a.first.target.name.localeCompare(b.first.target.name);

/** Shorter than this a stretch of twilight is none. */
const LEAST_TWILIGHT_MS = 60_000;

interface Samples {
  /** Of the hours for faint things. */
  readonly dark: readonly SkySample[];
  /** With the twilight before and after. */
  readonly all: readonly SkySample[];
}

const samplesFor = ({ observer, window, brightWindow }: PickQuestion): Samples => {
  const between = (startUtcMs: UtcMs, endUtcMs: UtcMs): readonly SkySample[] =>
    endUtcMs - startUtcMs < LEAST_TWILIGHT_MS ? [] : skySamples(observer, { startUtcMs, endUtcMs });
  const dark = skySamples(observer, window);
  const dusk = between(brightWindow.startUtcMs, window.startUtcMs).slice(0, -1);
  const dawn = between(window.endUtcMs, brightWindow.endUtcMs).slice(1);
  return { dark, all: [...dusk, ...dark, ...dawn] };
};

const pickOf = ({ first, beside }: Stop, { observer }: PickQuestion): Pick => {
  const bestUtcMs = Math.round(first.bestUtcMs / 1000) * 1000;
  const { azimuthDeg, altitudeDeg } = horizontalOf(first.target.body, observer, bestUtcMs);
  const { moonAltitudeDeg, moonLitFraction } = skySample(observer, bestUtcMs);
  return {
    target: first.target,
    bestUtcMs,
    bestAltitudeDeg: altitudeDeg,
    azimuthDeg,
    moonSeparationDeg: moonSeparationDeg(first.target.body, observer, bestUtcMs),
    moonAltitudeDeg,
    moonLitFraction,
    marginMag: first.marginMag,
    worth: first.worth,
    beside,
  };
};

/** At most ten, the finest first. Deterministic for the same question. */
export const tonightPicks = (catalogue: Catalogue, question: PickQuestion): readonly Pick[] => {
  const samples = samplesFor(question);
  const ranked = [
    ...fixedCandidates(catalogue, question, samples.dark),
    ...movingCandidates(catalogue, question, samples.all),
  ]
    .filter(standsTowards(question.towards, question.observer))
    .sort((a, b) => total(b.worth) - total(a.worth) || a.target.name.localeCompare(b.target.name));
  return varied(stopsOf(ranked), question).map((stop) => pickOf(stop, question));
};
