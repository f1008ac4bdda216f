/** What a reminder waits for, from the options: which moment of a night, what is said then, and why there may be none. */
import { MS_PER_DAY, MS_PER_HOUR } from '../../ground/durations.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import type { Target } from '../../catalogue/index.js';
import { NOWHERE, type PointsAt } from '../../reply/reply.js';
import { degrees } from '../../reply/wording.js';
import {
  highestByNight,
  whenAbove,
  whenClear,
  SIDES,
  whenDark,
  whenDue,
  whenRises,
  whenSets,
  whenSunrise,
  whenTransits,
  type Moment,
  type Search,
  type Side,
} from '../../reminders/find-moment.js';
import { sunriseWarningText } from '../../reminders/standing-warning.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDate, isOfThatDate } from '../../times/index.js';
import type { Request, Deps } from '../core/command.js';
import { hourOfNight, nightFor, targetFor, timeFor, type AskedTime } from '../asking/question-parts.js';
import { siteFor, type ResolvedSite } from '../asking/resolve-site.js';
import { downThen, USUAL_ABOVE_DEG } from './down-then.js';
import { eventOf } from './of-event.js';
import { sendsToSun, sunAt } from './of-sun.js';
import { again, type RemindOptions } from './remind-options.js';
import {
  altitudeText,
  darkText,
  dueText,
  horizonText,
  hourText,
  riseText,
  setText,
  transitText,
  type ReminderKind,
  ownWords,
} from './remind-words.js';
import type { To } from './reminder-address.js';

export interface Asked {
  readonly kind: ReminderKind;
  readonly where: ResolvedSite;
  readonly search: (night: TimeSpan) => Search;
  readonly sayOf: (moment: Moment) => string;
  /** Why there is no such moment in the night. */
  readonly why: (night: TimeSpan) => string;
  /** It is so already. */
  readonly already: string;
  /** Where a member is sent at the moment, and the Sun is judged. */
  readonly pointsAt: (utcMs: UtcMs) => readonly PointsAt[];
  /** What was taken for granted. */
  readonly notes?: readonly string[];
  /** It is looked for from midnight to midnight, not from noon to noon: the Sun. */
  readonly isByDay?: boolean;
}

interface Told {
  readonly where: ResolvedSite;
  readonly given: RemindOptions;
  readonly nowUtcMs: UtcMs;
}

const ofDark = ({ where, nowUtcMs }: Told): Asked => {
  const { observer, name } = where.site;
  return {
    kind: 'dark',
    where,
    search: (night) => whenDark(observer, night, nowUtcMs),
    sayOf: (moment) => darkText(where, moment),
    pointsAt: () => NOWHERE,
    why: () => `It does not get astronomically dark at ${name} that night, or it is over.`,
    already: `It is astronomically dark at ${name} already`,
  };
};

const ofSunrise = ({ where, nowUtcMs }: Told): Asked => {
  const { observer, zone, name } = where.site;
  return {
    kind: 'sunrise',
    where,
    search: (night) => whenSunrise(observer, night, nowUtcMs),
    sayOf: ({ utcMs }) => sunriseWarningText(name, utcMs, zone),
    pointsAt: () => NOWHERE,
    why: () => `The Sun does not rise at ${name} at the end of that night, or has risen.`,
    already: 'The Sun is up already',
  };
};

/** An hour past by more than this was not missed: the next one is meant. */
const LONG_PAST_MS = 3 * MS_PER_HOUR;

/** Before dawn an hour of the day is of the day to come, not of the one that the night began on; so is noon in the evening. */
const nextSuch = (found: AskedTime, at: string | undefined, zone: string, nowUtcMs: UtcMs): AskedTime => {
  if (found.utcMs > nowUtcMs) return found;
  const later = timeFor(at, zone, nowUtcMs + MS_PER_DAY / 2);
  if (isProblem(later) || later.utcMs <= nowUtcMs || later.utcMs > nowUtcMs + MS_PER_DAY) return found;
  const isToday = formatLocalDate(later.utcMs, zone) === formatLocalDate(nowUtcMs, zone);
  return isToday || nowUtcMs - found.utcMs > LONG_PAST_MS ? later : found;
};

type HourAndNight = Pick<Told['given'], 'on' | 'at'>;

/** "7am tomorrow" is of that very date, not of the night that begins on it. */
const sameDate = ({ on, at }: HourAndNight, nowUtcMs: UtcMs): HourAndNight =>
  on !== undefined && at !== undefined && isOfThatDate(on, at, nowUtcMs)
    ? { on: undefined, at: `${on} ${at}` }
    : { on, at };

/** An hour on the clocks, of the night asked about; what is past is none. */
const ofHour = ({ where, given, nowUtcMs }: Told, target: Target | null): Asked | Problem => {
  const { observer, zone, name } = where.site;
  const { on, at } = sameDate(given, nowUtcMs);
  const night = on === undefined ? null : nightFor(on, where.site, nowUtcMs);
  if (isProblem(night)) return night;
  const found = night === null ? timeFor(at, zone, nowUtcMs) : hourOfNight(at, zone, night);
  if (isProblem(found)) return found;
  const time = night === null ? nextSuch(found, at, zone, nowUtcMs) : found;
  const { utcMs } = time;
  const direction = target?.body;
  return {
    kind: 'hour',
    where,
    search: () => (utcMs > nowUtcMs ? { found: { utcMs, untilUtcMs: utcMs + MS_PER_HOUR } } : { never: true }),
    sayOf: (moment) => hourText(target, where, moment),
    pointsAt: () =>
      direction === undefined || horizontalOf(direction, observer, utcMs).altitudeDeg <= 0
        ? NOWHERE
        : [{ what: target?.name ?? '', when: { utcMs }, observer, zone, direction }],
    why: () => `That hour is past at ${name}. Give one to come, or on:tomorrow with it.`,
    already: 'It is that hour already',
    // What is past is never waited for: no word of yesterday.
    notes: time.notes.filter((note) => !/\byesterday\b/u.test(note)),
  };
};

const ofEvent = ({ where, given, nowUtcMs }: Told, event: string): Asked | Problem => {
  const found = eventOf({ event, where, at: given.at, nowUtcMs });
  if (isProblem(found)) return found;
  const { utcMs, untilUtcMs, words, pointsAt } = found;
  return {
    kind: 'hour',
    where,
    search: () => (utcMs > nowUtcMs ? { found: { utcMs, untilUtcMs } } : { never: true }),
    sayOf: () => words,
    pointsAt: () => pointsAt,
    why: () => 'That hour is past. Give one to come.',
    already: 'It is that hour already',
  };
};

const isSide = (when: string | undefined): when is Side => when !== undefined && Object.hasOwn(SIDES, when);

const ofTarget = ({ where, given, nowUtcMs }: Told, target: Target): Asked | Problem => {
  const { observer, zone, name } = where.site;
  const isByDay = target.id === 'sun';
  const what = isByDay ? 'day' : 'night';
  const about = {
    where,
    isByDay,
    pointsAt: (utcMs: UtcMs): readonly PointsAt[] => [
      { what: target.name, when: { utcMs }, observer, zone, direction: target.body },
    ],
  };
  const highest = (night: TimeSpan): string => {
    const best = highestByNight(target.body, observer, night);
    if (best === null) return 'the Sun does not set';
    return `highest${isByDay ? '' : ' with the Sun down'}: ${degrees(best.altitudeDeg)}`;
  };
  if (given.when === 'transit') {
    return {
      ...about,
      kind: 'transit',
      search: (night) => whenTransits(target.body, observer, night, nowUtcMs),
      sayOf: (moment) => transitText(target, where, moment),
      why: () =>
        `${target.name} does not cross the meridian above the horizon of ${name} in what is left of that ${what}.`,
      already: `${target.name} is at the meridian already`,
    };
  }
  if (isSide(given.when)) {
    const side = given.when;
    return {
      ...about,
      kind: 'transit',
      search: (night) => whenDue(target.body, observer, side, night, nowUtcMs),
      sayOf: (moment) => dueText(target, where, side, moment),
      why: () =>
        `${target.name} is not due ${side} above the horizon of ${name}${isByDay ? '' : ', with the Sun down,'} in what is left of that ${what}.`,
      already: `${target.name} is due ${side} already`,
    };
  }
  if (given.when === 'horizon') {
    const { horizon } = where;
    if (horizon === null)
      return problem(
        'no-horizon',
        `No horizon is saved for ${name}. Save one with site horizon, or say how high: remind target:"${target.name}" above:20`,
      );
    return {
      ...about,
      kind: 'horizon',
      search: (night) => whenClear(target.body, observer, horizon, night, nowUtcMs),
      sayOf: (moment) => horizonText(target, where, moment),
      why: (night) =>
        `${target.name} does not clear the horizon of ${name} in what is left of that ${what} (${highest(night)}).`,
      already: `${target.name} is clear of the horizon already`,
    };
  }
  if (given.when === 'set') {
    return {
      ...about,
      kind: 'set',
      search: (night) => whenSets(target.body, observer, night, nowUtcMs),
      sayOf: (moment) => setText(target, where, moment),
      why: () => `${target.name} does not set at ${name} in what is left of that ${what}.`,
      already: `${target.name} is setting already`,
    };
  }
  if (given.above === 0) {
    return {
      ...about,
      kind: 'altitude',
      search: (night) => whenRises(target.body, observer, night, nowUtcMs),
      sayOf: (moment) => riseText(target, where, moment),
      why: () => `${target.name} does not rise at ${name} in what is left of that ${what}.`,
      already: `${target.name} is rising already`,
    };
  }
  const aboveDeg = given.above ?? USUAL_ABOVE_DEG;
  return {
    ...about,
    kind: 'altitude',
    notes:
      given.above === undefined
        ? [`Taken: ${USUAL_ABOVE_DEG}° high. Say above:30 or when:transit for another moment.`]
        : [],
    search: (night) => whenAbove(target.body, observer, aboveDeg, night, nowUtcMs),
    sayOf: (moment) => altitudeText(target, where, aboveDeg, moment),
    why: (night) =>
      `${target.name} does not pass ${aboveDeg}° at ${name} in what is left of that ${what} (${highest(night)}).`,
    already: `${target.name} is higher than ${aboveDeg}° already`,
  };
};

/** "Check the dew heater. It is 19:30 GMT, as you asked." */
const withWords = (say: string | undefined, asked: Asked | Problem): Asked | Problem => {
  if (say === undefined || isProblem(asked)) return asked;
  const told = { ...asked, sayOf: (moment: Moment) => `${ownWords(say)} ${asked.sayOf(moment)}` };
  if (!sendsToSun(say)) return told;
  return { ...told, pointsAt: (utcMs) => [...asked.pointsAt(utcMs), sunAt(asked.where, utcMs)] };
};

export const askedOf = async (deps: Deps, request: Request<RemindOptions>, to: To): Promise<Asked | Problem> =>
  withWords(request.options.say, await waitedFor(deps, request, to));

const waitedFor = async (deps: Deps, request: Request<RemindOptions>, to: To): Promise<Asked | Problem> => {
  const { options: given, nowUtcMs } = request;
  const where = await siteFor(deps, request, given.site, {
    lineFor: (site) => again(given, { site }),
    shownTo: to === 'channel' ? 'everyone' : 'asker',
  });
  if (isProblem(where)) return where;
  const told: Told = { where, given, nowUtcMs };
  if (given.when === 'dark') return ofDark(told);
  if (given.when === 'sunrise') return ofSunrise(told);
  if (given.event !== undefined) return ofEvent(told, given.event);
  if (given.target === undefined)
    return given.at === undefined
      ? problem(
          'missing-option',
          'Which target? Such as remind target:"NGC 7331" above:30; or remind at:23:00, remind when:dark, remind when:sunrise',
        )
      : ofHour(told, null);
  const found = targetFor(deps, given.target, (typed) => again(given, { target: typed }));
  if (isProblem(found)) return found;
  if (given.at === undefined) return ofTarget(told, found.target);
  const asked = ofHour(told, found.target);
  if (given.when !== 'up') return asked;
  return isProblem(asked)
    ? asked
    : (downThen(told, found.target, asked.search({ startUtcMs: nowUtcMs, endUtcMs: nowUtcMs })) ?? asked);
};
