/** `epoch`: a target's coordinates for J2000 and of date, and how far apart the numbers are. */
import { isProblem } from '../ground/problem.js';
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { degrees, degreesMinutesSeconds, hoursMinutesSeconds, rounded } from '../reply/wording.js';
import { cautionText } from '../cautions/cautions.js';
import { separationDeg } from '../sky/angles.js';
import { equatorialOfDateFromJ2000, placeOf } from '../sky/place.js';
import { sunLevel } from '../sky/sun-safety.js';
import { SUN } from '../sky/twilight.js';
import type { Equatorial, Observer } from '../sky/types.js';
import { formatLocalDateTime } from '../times/index.js';
import { defineCommand, optional, text } from './core/command.js';
import { commandLine, targetFor, timeFor } from './asking/question-parts.js';

/** Parallax of the Moon aside, coordinates do not depend on where one stands; the Earth's north pole stands in for all sites. */
const ANYWHERE: Observer = { latitudeDeg: 90, longitudeDeg: 0, elevationM: 0 };

/** As if the Sun stood in the sky. */
const BY_DAY = { sunAltitudeDeg: 90, isSun: false, secondsToSunrise: null } as const;

const written = ({ raHours, decDeg }: Equatorial): string =>
  `${hoursMinutesSeconds(raHours)}, ${degreesMinutesSeconds(decDeg)}`;
const inData = ({ raHours, decDeg }: Equatorial) => ({ raHours: rounded(raHours, 8), decDeg: rounded(decDeg, 7) });

export const epoch = defineCommand({
  name: 'epoch',
  summary: "A target's coordinates for J2000 and for today, and how far apart they are",
  options: {
    target: text('What to point at: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    at: optional(text('Which date: now, 2026-12-13', { complete: 'time', maxLength: 80 })),
  },
  examples: ['epoch Mizar', 'epoch NGC 2362 at:2030-01-01'],
  run: async (deps, { options, nowUtcMs }): Promise<Outcome> => {
    const found = targetFor(deps, options.target, (name) => commandLine('epoch', name, { at: options.at }));
    if (isProblem(found)) return found;
    const { target } = found;
    const time = timeFor(options.at, 'UTC', nowUtcMs);
    if (isProblem(time)) return time;
    const j2000 = placeOf(target.body, ANYWHERE, time.utcMs).j2000;
    const ofDate = equatorialOfDateFromJ2000(j2000, time.utcMs);
    const separationArcmin = separationDeg(j2000, ofDate) * 60;
    const isSun = target.id === 'sun';
    const fromSunDeg = separationDeg(placeOf(SUN, ANYWHERE, time.utcMs).ofDate, ofDate);
    const near = isSun ? 'clear' : sunLevel({ ...BY_DAY, separationDeg: fromSunDeg, limits: deps.sunLimits });
    return reply({
      title: `${target.name}, J2000 and of date`,
      summary: `The two differ by ${separationArcmin.toFixed(1)}′ at ${formatLocalDateTime(time.utcMs, 'UTC')}; a mix-up makes the mount miss by that much.`,
      facts: [
        { label: 'J2000', value: written(j2000) },
        { label: 'Of date', value: written(ofDate) },
      ],
      notes: [
        'Of date: true equator and equinox; aberration (at most 0.35′) is left out.',
        ...(target.id === 'moon'
          ? ['For the Moon: as seen from the pole; from elsewhere it stands up to a degree away.']
          : []),
        ...found.notes,
        ...time.notes,
      ],
      // Coordinates are for any hour; the Sun itself is judged wherever one stands.
      pointsAt: isSun
        ? [{ what: target.name, when: { utcMs: time.utcMs }, observer: ANYWHERE, zone: 'UTC', direction: target.body }]
        : NOWHERE,
      level: near === 'clear' ? 'info' : near,
      cautions:
        near === 'clear'
          ? []
          : [`${target.name} is ${degrees(fromSunDeg)} from the Sun: not with the Sun up. ${cautionText('sun')}`],
      data: { j2000: inData(j2000), ofDate: inData(ofDate), separationArcmin: rounded(separationArcmin, 4) },
    });
  },
});
