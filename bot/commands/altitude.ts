/** `altitude`: where a target stands at an hour: how high, which way, hour angle, airmass. */
import { MS_PER_DAY, MS_PER_MINUTE } from '../ground/durations.js';
import { isProblem } from '../ground/problem.js';
import { nameWithAlias } from '../catalogue/index.js';
import { horizonAltitudeDegAt } from '../pointing/horizon/horizon-profile.js';
import { NOWHERE, reply, type Fact, type Level, type Outcome } from '../reply/reply.js';
import { degrees, direction, duration, isoUtc, rounded } from '../reply/wording.js';
import { airmass } from '../sky/airmass.js';
import { horizontalOf, placeOf } from '../sky/place.js';
import { riseTransitSet, SUN_HORIZON_ALTITUDE_DEG } from '../sky/rise-set.js';
import { SUN } from '../sky/twilight.js';
import type { SkyBody, UtcMs } from '../sky/types.js';
import { formatLocalDateTime, formatLocalTime } from '../times/index.js';
import { defineCommand, optional, text } from './core/command.js';
import { targetAtSite, timeFor } from './asking/question-parts.js';
import { settingOf } from './asking/sets-soon.js';
import { LEAST_USEFUL_ALTITUDE_DEG } from '../evening/pick.js';

/** "in 2 h 24 min" counts from now; from another hour it is so much later. */
const away = (minutes: number, isNow: boolean): string => {
  const time = duration(Math.abs(minutes) * MS_PER_MINUTE);
  if (isNow) return minutes > 0 ? `in ${time}` : `${time} ago`;
  return `${time} ${minutes > 0 ? 'after' : 'before'} that hour`;
};

/** "in 2 h 24 min, east of the meridian till then". */
const hourAngleWords = (hourAngleHours: number, isNow: boolean): string => {
  const minutes = -Math.round(hourAngleHours * 60);
  if (minutes === 0) return `${isNow ? 'now' : 'at that hour'}, on the meridian`;
  return `${away(minutes, isNow)}, ${minutes > 0 ? 'east of the meridian till then' : 'west of the meridian since'}`;
};

/** An hour beside now that is past is said to be. */
const LEAST_PAST_MS = 5 * MS_PER_MINUTE;
const pastWords = (utcMs: UtcMs, nowUtcMs: UtcMs): string => {
  const pastMs = nowUtcMs - utcMs;
  return pastMs < LEAST_PAST_MS || pastMs > MS_PER_DAY / 2 ? '' : `, ${duration(pastMs)} ago`;
};

/** Airmass in plain words. */
const airFact = (mass: number | null): readonly Fact[] => {
  if (mass === null) return [];
  const value = mass < 1.05 ? 'as little as there is' : `${mass.toFixed(1)} times what is overhead`;
  return [{ label: 'Air in the way', value }];
};

const isSun = (body: SkyBody): boolean => body.kind === 'solarSystem' && body.body === 'Sun';

interface Turn {
  /** Stands behind how high it is. */
  readonly words: string;
  readonly facts: readonly Fact[];
  readonly isSoonGone: boolean;
}

const NO_TURN: Turn = { words: '', facts: [], isSoonGone: false };

/** When what is up sets, and what is down rises: who sends a tube there wants to know. */
const turnOf = (isUp: boolean, body: SkyBody, then: Parameters<typeof settingOf>[1]): Turn => {
  const { observer, zone, utcMs } = then;
  if (!isUp) {
    const { riseUtcMs } = riseTransitSet(body, observer, utcMs, utcMs + MS_PER_DAY);
    if (riseUtcMs === null) return NO_TURN;
    const isByDay = !isSun(body) && horizontalOf(SUN, observer, riseUtcMs).altitudeDeg > SUN_HORIZON_ALTITUDE_DEG;
    const byDay = isByDay ? ', by day: ask sun with its name before you point there then' : '';
    return { ...NO_TURN, words: ` It rises at ${formatLocalTime(riseUtcMs, zone)}${byDay}.` };
  }
  const setting = settingOf(body, then);
  if (setting === null) return NO_TURN;
  return setting.isSoon
    ? { words: ` It sets at ${setting.words}.`, facts: [], isSoonGone: true }
    : { ...NO_TURN, facts: [{ label: 'Sets', value: setting.words }] };
};

const heightWords = (heightDeg: number): string => degrees(heightDeg, heightDeg < 10 ? 1 : 0);

export const altitude = defineCommand({
  name: 'altitude',
  summary: 'How high is a target at a given hour, and which way?',
  options: {
    target: text('What to point at: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    at: optional(text('When: now, tonight 22:30, tomorrow 4am, 2026-12-13T21:00', { complete: 'time', maxLength: 80 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
  },
  examples: [
    'altitude Aldebaran at:"tonight 22:30" site:"Cork, Ireland"',
    'altitude M 46 at:2026-12-13T21:00Z site:-33.9,18.4',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const asked = await targetAtSite(deps, request, {
      command: 'altitude',
      target: options.target,
      site: options.site,
      rest: { at: options.at },
      takesWholes: true,
    });
    if (isProblem(asked)) return asked;
    const { target, where } = asked;
    const { observer, zone } = where.site;
    const time = timeFor(options.at, zone, nowUtcMs);
    if (isProblem(time)) return time;

    const place = placeOf(target.body, observer, time.utcMs);
    const mass = airmass(place.apparentAltitudeDeg);
    const isNow = Math.abs(time.utcMs - nowUtcMs) < MS_PER_MINUTE;
    const when = `${formatLocalDateTime(time.utcMs, zone)}${pastWords(time.utcMs, nowUtcMs)}`;
    const isUp = place.apparentAltitudeDeg > 0;
    const behind = where.horizon === null ? null : horizonAltitudeDegAt(where.horizon, place.azimuthDeg);
    const isBehind = isUp && behind !== null && place.altitudeDeg < behind;
    const height = heightWords(Math.abs(place.apparentAltitudeDeg));
    const upWords = isBehind
      ? `Above the true horizon (${height}) but behind yours (${degrees(behind)} there) at ${when}.`
      : `Up, ${height} high in the ${direction(place.azimuthDeg)}, at ${when}.`;
    const turn = turnOf(isUp, target.body, { observer, zone, utcMs: time.utcMs, isNow });
    const stands = isUp ? upWords : `Down: ${height} below the horizon at ${when}.`;
    const isWellUp = isUp && !isBehind && !turn.isSoonGone && place.altitudeDeg >= LEAST_USEFUL_ALTITUDE_DEG;
    const level: Level = isWellUp ? 'good' : 'info';
    return reply({
      title: nameWithAlias(target),
      level,
      summary: `${stands}${turn.words}`,
      facts: [
        { label: 'Highest', value: hourAngleWords(place.hourAngleHours, isNow) },
        ...turn.facts,
        ...airFact(mass),
      ],
      notes: [...time.notes, ...asked.notes],
      // The air lifts what stands at the horizon by over half a degree.
      pointsAt:
        place.altitudeDeg > -1
          ? [{ what: target.name, when: { utcMs: time.utcMs }, observer, zone, direction: target.body }]
          : NOWHERE,
      data: {
        target: {
          name: target.name,
          raHoursJ2000: rounded(place.j2000.raHours),
          decDegJ2000: rounded(place.j2000.decDeg),
        },
        utc: isoUtc(time.utcMs),
        altitudeDeg: rounded(place.altitudeDeg),
        apparentAltitudeDeg: rounded(place.apparentAltitudeDeg),
        azimuthDeg: rounded(place.azimuthDeg),
        hourAngleHours: rounded(place.hourAngleHours),
        airmass: mass === null ? null : rounded(mass, 4),
        pierSide: place.hourAngleHours < 0 ? 'west' : 'east',
      },
    });
  },
});
