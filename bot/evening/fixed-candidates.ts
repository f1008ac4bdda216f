/** The stars, clusters, nebulae and galaxies that show in the hours asked about, each at its best moment. */
import { onceOf } from '../ground/once.js';
import { TARGET_KINDS, type Catalogue, type TargetKind } from '../catalogue/index.js';
import { createKept } from '../ground/kept.js';
import { horizonAltitudeDegAt } from '../pointing/horizon/horizon-profile.js';
import type { Vector3 } from '../sky/angles.js';
import { nightFrame } from '../sky/night-frame.js';
import type { Observer, UtcMs } from '../sky/types.js';
import { kindsOf } from './kinds.js';
import { LEAST_USEFUL_ALTITUDE_DEG, type Candidate, type PickQuestion } from './pick.js';
import { skyMagAt, type SkySample } from './sky-samples.js';
import { isEyes, isHandHeld } from './equipment.js';
import { isOfVariables, isVariable, safeMagnitude, variableWorth } from './variable-candidates.js';
import { lookOf, marginOfLook, type Look, type Seen } from './visibility.js';
import { finestOf, heightWorth, seenWorth, showpieceWorth, type Worth } from './worth.js';

type NightFrame = ReturnType<typeof nightFrame>;
type NightDirection = ReturnType<NightFrame['directionOf']>;

/** So many are looked at hour by hour; the rest cannot come into a list of ten. */
const SHORTLIST = 140;
/** In a list of all kinds an object has to show; asked for by its kind it may be at the threshold, or drowned by the night's moonlight. */
const LEAST_MARGIN_MAG = { any: 1, oneKind: 0.2, moonlit: -4 } as const;
const FROM_ALTITUDE_DEG = 15;
const ZENITH_DEG = 90;
/** A difference in worth that nobody sees at the eyepiece. */
const AS_GOOD = 0.12;

/** {@link finestOf} by place in the sweep. */
const finestIn = onceOf((catalogue: Catalogue): Float32Array => {
  const { sweep } = catalogue;
  const found = new Float32Array(sweep.length);
  for (let i = 0; i < sweep.length; i++)
    if (sweep.showpieceRank[i] === 1) found[i] = finestOf(catalogue.targetAt(i).id);
  return found;
});

interface Short {
  readonly index: number;
  readonly look: Look | null;
  readonly unit: Vector3;
  readonly direction: NightDirection;
  readonly showpiece: number;
  readonly score: number;
}

/** Declinations (as sines) that ever reach the altitude: 90° − |φ − δ| settles most at the price of a comparison. */
const reach = ({ latitudeDeg }: Observer, minimumAltitudeDeg: number): readonly [number, number] => {
  const reachDeg = 90.6 - minimumAltitudeDeg;
  const sine = (deg: number): number => Math.sin((Math.max(-90, Math.min(90, deg)) * Math.PI) / 180);
  return [sine(latitudeDeg - reachDeg), sine(latitudeDeg + reachDeg)];
};

const kindAt = (sweep: Catalogue['sweep'], index: number): TargetKind =>
  TARGET_KINDS[sweep.kindIndex[index] as number] ?? 'other';

/** What one constellation has is few: what asks for an effort is worth it there. */
const leastMargin = ({ kind, constellations }: PickQuestion): number =>
  kind === 'any' && constellations === null ? LEAST_MARGIN_MAG.any : LEAST_MARGIN_MAG.oneKind;

/** A nebula whose brightness nobody gives is taken where it is known to show. */
const isKnownGlow = (kind: TargetKind, rank: number): boolean =>
  (kind === 'nebula' || kind === 'supernova-remnant') && (rank === 1 || rank === 2);

/** Without a rank of its own no double is worth splitting, and of the single stars only the bright and well known are shown. */
const isStarToShow = (kind: TargetKind, magnitude: number, isWellKnown: boolean): boolean =>
  kind !== 'double-star' && (kind !== 'star' || (isWellKnown && magnitude < 2.5));

type Fitting = Pick<PickQuestion, 'kind' | 'also' | 'brighter' | 'equipment'>;

/** Takes what the question allows at all: its kind, bright enough, and a double only where it is known to be one worth splitting. */
const isFitting = (catalogue: Catalogue, question: Fitting): ((index: number) => boolean) => {
  if (isOfVariables(question)) return isVariable(catalogue, question.brighter, question.kind);
  const { sweep } = catalogue;
  const wanted = new Set(kindsOf(question).map((kind) => TARGET_KINDS.indexOf(kind)));
  return (index) => {
    const kindIndex = sweep.kindIndex[index] as number;
    if (!wanted.has(kindIndex) && !(question.kind !== 'any' && wanted.has(sweep.alsoKindIndex[index] as number)))
      return false;
    const kind = kindAt(sweep, index);
    const magnitude = sweep.magnitude[index] as number;
    const rank = sweep.showpieceRank[index] as number;
    const isSeen = Number.isNaN(magnitude) ? isKnownGlow(kind, rank) : magnitude <= question.brighter;
    return isSeen && (rank !== 0 || isStarToShow(kind, magnitude, sweep.wellKnown[index] === 1));
  };
};

/** What is fitting, by its place in the sweep, and of each what it is worth as a showpiece; what is worth less than nothing is left out. */
interface Fit {
  readonly indices: Int32Array;
  readonly showpieces: Float64Array;
}

const seenAt = (sweep: Catalogue['sweep'], index: number): Seen => ({
  kind: kindAt(sweep, index),
  magnitude: sweep.magnitude[index] as number,
  sizeArcmin: sweep.sizeArcmin[index] as number,
  minorSizeArcmin: sweep.minorSizeArcmin[index] as number,
  showpieceRank: sweep.showpieceRank[index] as number,
});

const fitOf = (catalogue: Catalogue, question: Fitting): Fit => {
  const { sweep } = catalogue;
  const finest = finestIn(catalogue);
  const fits = isFitting(catalogue, question);
  const isOfChange = isOfVariables(question);
  const indices: number[] = [];
  const showpieces: number[] = [];
  for (let index = 0; index < sweep.length; index++) {
    if (!fits(index)) continue;
    const showpiece = isOfChange
      ? variableWorth(catalogue.targetAt(index), sweep.wellKnown[index] === 1)
      : showpieceWorth(
          {
            ...seenAt(sweep, index),
            finest: finest[index] as number,
            wellKnown: sweep.wellKnown[index] === 1,
            separationArcsec: sweep.separationArcsec[index] as number,
          },
          question.equipment,
        );
    if (showpiece < 0) continue;
    indices.push(index);
    showpieces.push(showpiece);
  }
  return { indices: Int32Array.from(indices), showpieces: Float64Array.from(showpieces) };
};

/** Nearly all questions of a night are of the same few kinds, limits and equipments. */
const KEPT_FITS = 16;
const fitsKept = onceOf((_: Catalogue) => createKept<string, Fit>(KEPT_FITS));
/** Of the equipment only whether it is eyes, or held in the hand, makes a difference to what is a showpiece. */
const fitIn = (catalogue: Catalogue, question: Fitting): Fit => {
  const { kind, also, brighter, equipment } = question;
  return fitsKept(catalogue)(`${kind} ${also ?? ''} ${brighter} ${isEyes(equipment)} ${isHandHeld(equipment)}`, () =>
    fitOf(catalogue, question),
  );
};

const MESSIER = /^M \d+$/u;

/** The limits that an object keeps or not whatever the hour. */
const isWithin = (catalogue: Catalogue, index: number, { constellations, limits = {} }: PickQuestion): boolean => {
  const { sweep } = catalogue;
  const { isMessierOnly = false, largerArcmin, mostArcmin, widerArcsec } = limits;
  if (mostArcmin !== undefined && (sweep.sizeArcmin[index] as number) > mostArcmin) return false;
  if (largerArcmin !== undefined && !((sweep.sizeArcmin[index] as number) > largerArcmin)) return false;
  if (widerArcsec !== undefined && !((sweep.separationArcsec[index] as number) > widerArcsec)) return false;
  if (constellations === null && !isMessierOnly) return true;
  const { constellation, name } = catalogue.targetAt(index);
  return (
    (constellations === null || (constellation !== null && constellations.includes(constellation))) &&
    (!isMessierOnly || MESSIER.test(name))
  );
};

const seenThen = (catalogue: Catalogue, index: number, question: PickQuestion): Seen => {
  const seen = seenAt(catalogue.sweep, index);
  if (!isOfVariables(question)) return seen;
  const magnitude = safeMagnitude(catalogue.targetAt(index), question.window.startUtcMs);
  return magnitude === null ? seen : { ...seen, magnitude };
};

const shortlist = (catalogue: Catalogue, question: PickQuestion, frame: NightFrame): readonly Short[] => {
  const { sweep } = catalogue;
  const minimumAltitudeDeg = question.minimumAltitudeDeg ?? LEAST_USEFUL_ALTITUDE_DEG;
  const [south, north] = reach(question.observer, minimumAltitudeDeg);
  const least = leastMargin(question);
  const { indices, showpieces } = fitIn(catalogue, question);
  const found: Short[] = [];
  for (let i = 0; i < indices.length; i++) {
    const index = indices[i] as number;
    const z = sweep.unitZ[index] as number;
    if (z < south || z > north) continue;
    if (!isWithin(catalogue, index, question)) continue;
    const unit: Vector3 = [sweep.unitX[index] as number, sweep.unitY[index] as number, z];
    const direction = frame.directionOf(unit);
    const { altitudeDeg } = frame.highestIn(direction, question.window);
    if (altitudeDeg < minimumAltitudeDeg) continue;
    const look = lookOf(seenThen(catalogue, index, question));
    const margin = marginOfLook(look, question.zenithMagPerArcsec2, altitudeDeg, question.equipment);
    if (margin < least) continue;
    const showpiece = showpieces[i] as number;
    const score = showpiece + seenWorth(margin) + heightWorth(altitudeDeg, FROM_ALTITUDE_DEG);
    found.push({ index, look, unit, direction, showpiece, score });
  }
  return found.sort((a, b) => b.score - a.score || a.index - b.index).slice(0, SHORTLIST);
};

/** Azimuth from hour angle and declination: Meeus, Astronomical Algorithms (2nd ed.), formula 13.5, turned to count from north. */
export const azimuthDegAt = (frame: NightFrame, direction: NightDirection, utcMs: UtcMs): number => {
  const hourAngle = (frame.hourAngleDegAt(direction, utcMs) * Math.PI) / 180;
  const latitude = (frame.observer.latitudeDeg * Math.PI) / 180;
  const east = -direction.cosDec * Math.sin(hourAngle);
  const north = direction.sinDec * Math.cos(latitude) - direction.cosDec * Math.cos(hourAngle) * Math.sin(latitude);
  return ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360;
};

interface Moment {
  readonly utcMs: UtcMs;
  readonly altitudeDeg: number;
  readonly margin: number;
  readonly score: number;
}

const isHeightWanted = ({ minimumAltitudeDeg, limits }: PickQuestion, altitudeDeg: number): boolean =>
  altitudeDeg >= (minimumAltitudeDeg ?? LEAST_USEFUL_ALTITUDE_DEG) && altitudeDeg <= (limits?.highestDeg ?? ZENITH_DEG);

/** How an object does at a sample: null where it is low or behind the site's own horizon. */
const momentAt = (short: Short, sample: SkySample, frame: NightFrame, question: PickQuestion): Moment | null => {
  const altitudeDeg = frame.altitudeDegAt(short.direction, sample.utcMs);
  if (!isHeightWanted(question, altitudeDeg)) return null;
  const { horizon } = question;
  if (
    horizon !== null &&
    altitudeDeg <= horizonAltitudeDegAt(horizon, azimuthDegAt(frame, short.direction, sample.utcMs))
  )
    return null;
  const sky = skyMagAt(sample, short.unit, altitudeDeg, question.zenithMagPerArcsec2);
  const margin = marginOfLook(short.look, sky, altitudeDeg, question.equipment);
  // The last term settles ties among hours that are as good: the higher.
  const score = seenWorth(margin) + heightWorth(altitudeDeg, FROM_ALTITUDE_DEG) + altitudeDeg / 500;
  return { utcMs: sample.utcMs, altitudeDeg, margin, score };
};

const momentsOf = (
  short: Short,
  samples: readonly SkySample[],
  frame: NightFrame,
  question: PickQuestion,
): readonly Moment[] => {
  const moments: Moment[] = [];
  for (const sample of samples) {
    const moment = momentAt(short, sample, frame, question);
    if (moment !== null) moments.push(moment);
  }
  return moments;
};

/** Nothing keeps it from being looked at where it is highest. */
const isOpen = ({ horizon, limits }: PickQuestion): boolean => horizon === null && limits?.highestDeg === undefined;

const bestMoment = (
  short: Short,
  samples: readonly SkySample[],
  frame: NightFrame,
  question: PickQuestion,
): Moment | null => {
  const moments = momentsOf(short, samples, frame, question);
  const best = moments.reduce<Moment | null>(
    (top, next) => (top === null || next.score > top.score ? next : top),
    null,
  );
  if (best === null) return null;
  // What only gets higher, and stood high enough before, need not wait for the evening's last minute.
  if (best === moments.at(-1) && best.utcMs === samples.at(-1)?.utcMs)
    return moments.find(({ score }) => score >= best.score - AS_GOOD) ?? best;
  // The very culmination, where it falls beside the best sample.
  const stepMs = samples.length < 2 ? 0 : (samples[1]?.utcMs ?? 0) - (samples[0]?.utcMs ?? 0);
  const peak = frame.highestIn(short.direction, question.window);
  const isBeside = isOpen(question) && Math.abs(peak.utcMs - best.utcMs) < stepMs;
  return isBeside && peak.altitudeDeg > best.altitudeDeg ? { ...best, ...peak } : best;
};

export const fixedCandidates = (
  catalogue: Catalogue,
  question: PickQuestion,
  samples: readonly SkySample[],
): readonly Candidate[] => {
  const frame = nightFrame(question.observer, question.night.startUtcMs, question.night.endUtcMs);
  return shortlist(catalogue, question, frame).flatMap((short): Candidate[] => {
    const moment = bestMoment(short, samples, frame, question);
    const least = question.kind === 'any' ? LEAST_MARGIN_MAG.any : LEAST_MARGIN_MAG.moonlit;
    if (moment === null || moment.margin < least) return [];
    const worth: Worth = {
      showpiece: short.showpiece,
      seen: seenWorth(moment.margin),
      height: heightWorth(moment.altitudeDeg, FROM_ALTITUDE_DEG),
    };
    return [
      {
        target: catalogue.targetAt(short.index),
        bestUtcMs: moment.utcMs,
        worth,
        marginMag: moment.margin,
        group: catalogue.sweep.group[short.index] as number,
      },
    ];
  });
};
