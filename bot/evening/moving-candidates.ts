/** The Moon and the planets that are fine in the hours asked about, each at its best moment. */
import type { Catalogue, Target } from '../catalogue/index.js';
import { horizonAltitudeDegAt } from '../pointing/horizon/horizon-profile.js';
import { separationDeg, unitFromEquatorial, type Vector3 } from '../sky/angles.js';
import { apparentMagnitude } from '../sky/brightness.js';
import { constellationAt } from '../sky/constellation.js';
import { nightFrame, type NightFrame } from '../sky/night-frame.js';
import { horizontalOf, placeOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { SolarSystemBody } from '../sky/types.js';
import { isEyes } from './equipment.js';
import { kindsOf } from './kinds.js';
import { azimuthDegAt } from './fixed-candidates.js';
import { leastAltitudeDegOf, type Candidate, type PickQuestion } from './pick.js';
import { skyMagAt, type SkySample } from './sky-samples.js';
import { marginMag } from './visibility.js';
import { heightWorth, planetWorth, seenWorth, total, type Worth } from './worth.js';

/** Under this a planet is lost in the Sun's glare whatever its height. Common practice, no source. */
const LOST_IN_SUN_DEG = 10;
const FROM_ALTITUDE_DEG = 8;
const ZENITH_DEG = 90;
const LEAST_MARGIN_MAG = 0.5;
/** Without an instrument nobody finds what is at the edge of sight (Uranus); common practice, no source. */
const LEAST_EYES_MARGIN_MAG = 1;

interface Moment {
  readonly utcMs: number;
  readonly margin: number;
  readonly worth: Worth;
}

/** Where it stands at a sample; the azimuth costs, and is asked for behind a horizon alone. */
interface Course {
  readonly altitudeDegAt: (sample: SkySample) => number;
  readonly azimuthDegAt: (sample: SkySample) => number;
  readonly direction: Vector3;
}

/** A planet moves so little in an evening that its place of the middle will do to find its best quarter of an hour. */
const courseOf = (body: SolarSystemBody, { observer }: PickQuestion, middle: SkySample, frame: NightFrame): Course => {
  const moving = { kind: 'solarSystem', body } as const;
  const direction = unitFromEquatorial(placeOf(moving, observer, middle.utcMs).j2000);
  if (body === 'Moon')
    return {
      altitudeDegAt: ({ moonAltitudeDeg }) => moonAltitudeDeg,
      azimuthDegAt: ({ utcMs }) => horizontalOf(moving, observer, utcMs).azimuthDeg,
      direction,
    };
  const there = frame.directionOf(direction);
  return {
    altitudeDegAt: ({ utcMs }) => frame.altitudeDegAt(there, utcMs),
    azimuthDegAt: ({ utcMs }) => azimuthDegAt(frame, there, utcMs),
    direction,
  };
};

interface Appearance {
  readonly body: SolarSystemBody;
  readonly magnitude: number;
  readonly elongationDeg: number;
}

const bestMoment = (
  { body, magnitude, elongationDeg }: Appearance,
  course: Course,
  question: PickQuestion,
  samples: readonly SkySample[],
): Moment | null => {
  const { horizon, equipment, zenithMagPerArcsec2 } = question;
  const least = question.minimumAltitudeDeg ?? leastAltitudeDegOf({ kind: 'solarSystem', body });
  const leastMarginMag = isEyes(equipment) ? LEAST_EYES_MARGIN_MAG : LEAST_MARGIN_MAG;
  let best: Moment | null = null;
  for (const sample of samples) {
    const altitudeDeg = course.altitudeDegAt(sample);
    if (altitudeDeg < least || altitudeDeg > (question.limits?.highestDeg ?? ZENITH_DEG)) continue;
    if (horizon !== null && altitudeDeg <= horizonAltitudeDegAt(horizon, course.azimuthDegAt(sample))) continue;
    const sky =
      body === 'Moon' ? zenithMagPerArcsec2 : skyMagAt(sample, course.direction, altitudeDeg, zenithMagPerArcsec2);
    const seen = { kind: 'planet' as const, magnitude, sizeArcmin: NaN, minorSizeArcmin: NaN, showpieceRank: 0 };
    const margin = marginMag(seen, sky, altitudeDeg, equipment);
    const worth: Worth = {
      showpiece: planetWorth({ body, magnitude, litFraction: sample.moonLitFraction, elongationDeg }),
      seen: seenWorth(margin),
      height: heightWorth(altitudeDeg, FROM_ALTITUDE_DEG),
    };
    if (margin >= leastMarginMag && (best === null || total(worth) > total(best.worth) + 1e-9))
      best = { utcMs: sample.utcMs, margin, worth };
  }
  return best;
};

const isInConstellation = ({ body }: Target, { constellations, observer }: PickQuestion, utcMs: number): boolean =>
  constellations === null || constellations.includes(constellationAt(placeOf(body, observer, utcMs).j2000));

/** Limits that no body of the solar system keeps. */
const isFixedOnly = ({ limits }: PickQuestion): boolean =>
  limits?.isMessierOnly === true || limits?.largerArcmin !== undefined || limits?.widerArcsec !== undefined;

export const movingCandidates = (
  catalogue: Catalogue,
  question: PickQuestion,
  samples: readonly SkySample[],
): readonly Candidate[] => {
  const middle = samples[Math.floor(samples.length / 2)];
  if (middle === undefined) return [];
  const sun = placeOf(SUN, question.observer, middle.utcMs).ofDate;
  const frame = nightFrame(question.observer, question.night.startUtcMs, question.night.endUtcMs);
  return catalogue.solarSystem.flatMap((target): Candidate[] => {
    if (target.body.kind !== 'solarSystem' || !kindsOf(question).includes(target.kind)) return [];
    if (isFixedOnly(question)) return [];
    const { body } = target.body;
    if (body === 'Pluto' && question.kind === 'any') return [];
    if (body === 'Moon' && isEyes(question.equipment) && question.kind === 'any') return [];
    const magnitude = apparentMagnitude(body, middle.utcMs);
    const elongationDeg = separationDeg(sun, placeOf(target.body, question.observer, middle.utcMs).ofDate);
    if (magnitude > question.brighter || elongationDeg < LOST_IN_SUN_DEG) return [];
    if (!isInConstellation(target, question, middle.utcMs)) return [];
    const course = courseOf(body, question, middle, frame);
    const moment = bestMoment({ body, magnitude, elongationDeg }, course, question, samples);
    if (moment === null) return [];
    const shown: Target = { ...target, magnitude };
    return [{ target: shown, bestUtcMs: moment.utcMs, worth: moment.worth, marginMag: moment.margin, group: 0 }];
  });
};
