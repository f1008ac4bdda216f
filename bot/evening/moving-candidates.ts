/** The Moon and the planets that are fine in the hours asked about, each at its best moment. */
import type { Catalogue, Target } from '../catalogue/index.js';
import { horizonAltitudeDegAt } from '../pointing/horizon/horizon-profile.js';
import { separationDeg, unitFromEquatorial } from '../sky/angles.js';
import { apparentMagnitude } from '../sky/brightness.js';
import { horizontalOf, placeOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { SolarSystemBody } from '../sky/types.js';
import { isEyes } from './equipment.js';
import { KINDS_OF } from './kinds.js';
import { LEAST_PLANET_ALTITUDE_DEG, type Candidate, type PickQuestion } from './pick.js';
import { skyMagAt, type SkySample } from './sky-samples.js';
import { marginMag } from './visibility.js';
import { heightWorth, planetWorth, seenWorth, total, type Worth } from './worth.js';

/** Under this a planet is lost in the Sun's glare whatever its height. Common practice, no source. */
const LOST_IN_SUN_DEG = 10;
const FROM_ALTITUDE_DEG = 8;
const LEAST_MARGIN_MAG = 0.5;

interface Moment {
  readonly utcMs: number;
  readonly margin: number;
  readonly worth: Worth;
}

const bestMoment = (
  body: SolarSystemBody,
  magnitude: number,
  elongationDeg: number,
  question: PickQuestion,
  samples: readonly SkySample[],
): Moment | null => {
  const { observer, horizon, equipment, zenithMagPerArcsec2 } = question;
  const least = question.minimumAltitudeDeg ?? LEAST_PLANET_ALTITUDE_DEG;
  let best: Moment | null = null;
  for (const sample of samples) {
    const place = horizontalOf({ kind: 'solarSystem', body }, observer, sample.utcMs);
    const { altitudeDeg } = place;
    if (altitudeDeg < least) continue;
    if (horizon !== null && altitudeDeg <= horizonAltitudeDegAt(horizon, place.azimuthDeg)) continue;
    const direction = unitFromEquatorial(placeOf({ kind: 'solarSystem', body }, observer, sample.utcMs).j2000);
    const sky = body === 'Moon' ? zenithMagPerArcsec2 : skyMagAt(sample, direction, altitudeDeg, zenithMagPerArcsec2);
    const seen = { kind: 'planet' as const, magnitude, sizeArcmin: NaN, minorSizeArcmin: NaN, showpieceRank: 0 };
    const margin = marginMag(seen, sky, altitudeDeg, equipment);
    const worth: Worth = {
      showpiece: planetWorth({ body, magnitude, litFraction: sample.moonLitFraction, elongationDeg }),
      seen: seenWorth(margin),
      height: heightWorth(altitudeDeg, FROM_ALTITUDE_DEG),
    };
    if (margin >= LEAST_MARGIN_MAG && (best === null || total(worth) > total(best.worth) + 1e-9))
      best = { utcMs: sample.utcMs, margin, worth };
  }
  return best;
};

/** Every second sample is enough for what moves slowly and keeps the answer quick. */
const halfOf = (samples: readonly SkySample[]): readonly SkySample[] =>
  samples.filter((_, i) => i % 2 === 0 || i === samples.length - 1);

export const movingCandidates = (
  catalogue: Catalogue,
  question: PickQuestion,
  samples: readonly SkySample[],
): readonly Candidate[] => {
  const middle = samples[Math.floor(samples.length / 2)];
  if (middle === undefined) return [];
  const sun = placeOf(SUN, question.observer, middle.utcMs).ofDate;
  const few = halfOf(samples);
  return catalogue.solarSystem.flatMap((target): Candidate[] => {
    if (target.body.kind !== 'solarSystem' || !KINDS_OF[question.kind].includes(target.kind)) return [];
    const { body } = target.body;
    if (body === 'Pluto' && question.kind === 'any') return [];
    if (body === 'Moon' && isEyes(question.equipment) && question.kind === 'any') return [];
    const magnitude = apparentMagnitude(body, middle.utcMs);
    const elongationDeg = separationDeg(sun, placeOf(target.body, question.observer, middle.utcMs).ofDate);
    if (magnitude > question.brighter || elongationDeg < LOST_IN_SUN_DEG) return [];
    const moment = bestMoment(body, magnitude, elongationDeg, question, few);
    if (moment === null) return [];
    const shown: Target = { ...target, magnitude };
    return [{ target: shown, bestUtcMs: moment.utcMs, worth: moment.worth, marginMag: moment.margin, group: 0 }];
  });
};
