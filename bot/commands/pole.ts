/** `pole`: where to point the polar axis, where the pole star stands beside the pole, and how good it needs to be. */
import { isProblem, problem } from '../ground/problem.js';
import { UNRELIABLE_COMPASS_NT, magneticNorth, type MagneticNorth } from '../pointing/pole/magnetic-north.js';
import { allowedPolarErrorArcmin, HARDLY_SHOWS_ARCSEC } from '../pointing/pole/polar-drift.js';
import { clockFaceText, poleClockHours } from '../pointing/pole/pole-clock.js';
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { degrees, hoursMinutesSeconds, isoUtc, magnitudeText, rounded } from '../reply/wording.js';
import { wrapDeg360, wrapHours24 } from '../sky/angles.js';
import { placeOf } from '../sky/place.js';
import { refractionDeg } from '../sky/refraction.js';
import { formatLocalTime } from '../times/index.js';
import { choice, defineCommand, number, optional } from './core/command.js';
import { atOption, siteAtTime, siteOption } from './asking/site-at-time.js';

/** By the names observers use for them. */
const POLE_STARS = {
  north: { id: 'hip11767', name: 'Polaris' },
  south: { id: 'hip104382', name: 'σ Octantis' },
} as const;
const USUAL_EXPOSURES_MINUTES = [1, 5, 15] as const;

const arcminText = (arcmin: number): string => {
  if (arcmin >= 10) return `${Math.round(arcmin)}′`;
  return arcmin >= 1 ? `${arcmin.toFixed(1)}′` : `${Math.round(arcmin * 60)}″`;
};

const compassText = (magnetic: MagneticNorth | null, azimuthDeg: number): string => {
  if (magnetic === null) return 'no magnetic model for that year (2025 to 2029)';
  const size = Math.abs(magnetic.declinationDeg);
  const bearing = `on the compass ${Math.round(wrapDeg360(azimuthDeg - magnetic.declinationDeg)) % 360}° (magnetic north is ${degrees(size, 1)} ${magnetic.declinationDeg < 0 ? 'west' : 'east'} of true)`;
  return magnetic.horizontalNt < UNRELIABLE_COMPASS_NT ? `${bearing}; but a compass is unreliable here` : bearing;
};

/** Asked for the pole that never comes up: "The north celestial pole is 43.5° below your horizon, due north: …". */
const otherPole = (asked: string | undefined, here: 'north' | 'south', altitudeDeg: number): string =>
  asked === undefined || asked === here
    ? ''
    : `The ${asked} celestial pole is ${degrees(altitudeDeg, 1)} below the horizon, due ${asked}, and never rises there; the ${here} one stands in for it. `;

export const pole = defineCommand({
  name: 'pole',
  summary: 'Where is the pole, and where does the pole star stand beside it?',
  options: {
    site: siteOption,
    at: atOption,
    first: optional(choice('Say first where the other pole is: the north one from the south', ['north', 'south'])),
    exposure: optional(
      number('Longest single exposure in minutes, to say how good the alignment must be', { min: 0.1, max: 240 }),
    ),
    drift: optional(
      number('Drift you can bear in that exposure, in arcseconds (2 when not said)', { min: 0.1, max: 60 }),
    ),
  },
  bare: 'site',
  examples: ['pole 52.71,0.12', 'pole "Dunedin, New Zealand" at:"tonight 21:30" exposure:5', 'pole first:north'],
  run: async (deps, request): Promise<Outcome> => {
    const asked = await siteAtTime(deps, request);
    if (isProblem(asked)) return asked;
    const { where, utcMs } = asked;
    const { options } = request;
    const { observer, zone } = where.site;
    const isSouthern = observer.latitudeDeg < 0;
    const { id, name } = POLE_STARS[isSouthern ? 'south' : 'north'];
    const star = deps.catalogue.targetById(id);
    if (star === undefined)
      return problem(
        'no-pole-star',
        'The pole star is missing from the catalogue; ask the operator to build it again.',
      );
    const place = placeOf(star.body, observer, utcMs);
    const separationArcmin = (90 - Math.abs(place.ofDate.decDeg)) * 60;
    const erectHours = poleClockHours(place.hourAngleHours, isSouthern, false);
    const clockErect = clockFaceText(erectHours);
    const clockInverted = clockFaceText(poleClockHours(place.hourAngleHours, isSouthern, true));
    const altitudeDeg = Math.abs(observer.latitudeDeg);
    const azimuthDeg = isSouthern ? 180 : 0;
    const magnetic = magneticNorth(observer, utcMs);
    const driftArcsec = options.drift ?? HARDLY_SHOWS_ARCSEC;
    const exposures = options.exposure === undefined ? USUAL_EXPOSURES_MINUTES : [options.exposure];
    const direction = isSouthern ? 'south' : 'north';
    const needed = exposures
      .map((minutes) => `${minutes} min: within ${arcminText(allowedPolarErrorArcmin(driftArcsec, minutes))}`)
      .join(', ');
    return reply({
      title: `The ${direction} celestial pole`,
      summary: `${otherPole(options.first, direction, altitudeDeg)}Polar axis: ${degrees(altitudeDeg, 1)} high, true ${direction}. ${name} stands at ${clockErect} on the clock, ${Math.round(separationArcmin)}′ from the pole, at ${formatLocalTime(utcMs, zone)}.`,
      facts: [
        { label: `True ${direction}`, value: compassText(magnetic, azimuthDeg) },
        {
          label: name,
          value: `${clockErect} as the eye sees it, ${clockInverted} in a polar telescope that shows all upside down; hour angle ${hoursMinutesSeconds(wrapHours24(place.hourAngleHours)).slice(0, 7)}`,
        },
        { label: 'Good enough', value: `${needed} (for ${driftArcsec}″ of drift)` },
      ],
      notes: [
        'The clock face is the one you see when you face the pole, 12 at the top. The drift is the worst case, in declination, unguided.',
        ...(isSouthern
          ? [
              `${name} is faint (magnitude ${magnitudeText(star.magnitude ?? 5.4)}): you need the polar telescope or binoculars.`,
            ]
          : []),
        ...(altitudeDeg < 10
          ? [
              `So low, the air lifts the pole's image by ${Math.round(refractionDeg(altitudeDeg) * 60)}′; many mounts do not go so low.`,
            ]
          : []),
        ...asked.notes,
      ],
      pointsAt: NOWHERE,
      data: {
        utc: isoUtc(utcMs),
        poleAltitudeDeg: rounded(altitudeDeg, 6),
        poleAzimuthTrueDeg: azimuthDeg,
        magneticDeclinationDeg: magnetic === null ? null : magnetic.declinationDeg,
        compassBearingDeg: magnetic === null ? null : rounded(wrapDeg360(azimuthDeg - magnetic.declinationDeg), 2),
        poleStar: {
          name,
          separationArcmin: rounded(separationArcmin, 3),
          hourAngleHours: rounded(place.hourAngleHours, 5),
          clockErect,
          clockInverted,
          clockErectHours: rounded(erectHours, 4),
        },
        tolerance: exposures.map((minutes) => ({
          exposureMinutes: minutes,
          driftArcsec,
          polarErrorArcmin: rounded(allowedPolarErrorArcmin(driftArcsec, minutes), 3),
        })),
      },
    });
  },
});
