/** When the Moon comes by one target that was named: the next passes, or how they stand in one night. */
import { closestSeen, moonMeetings, type MoonMeeting, type MoonSeen } from '../../ahead/moon-meetings.js';
import { resolveTarget, type Catalogue, type Target } from '../../catalogue/index.js';
import { isProblem } from '../../ground/problem.js';
import { MS_PER_DAY } from '../../ground/durations.js';
import { compassWord, degrees, isoUtc, rounded } from '../../reply/wording.js';
import { MOON, moonSeparationDeg } from '../../sky/moon.js';
import { SUN } from '../../sky/twilight.js';
import { bodySeparationDeg } from '../../sky/separation.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { namedIn, type Question, type Section } from './ahead-question.js';
import { dayWords } from './ahead-words.js';

/** A pass in each month of a season. */
const MOST = 3;
const LOOKED_AHEAD_DAYS = 100;
/** More than two fists at arm's length nobody calls near; common practice, no source. */
const NEAR_DEG = 20;
/** Under this the Moon's own width, or a pair of binoculars, holds both. Common practice, no source. */
const WITH_A_FRACTION_DEG = 10;
/** Nearer to the Sun both are lost in its light; common practice, no source. */
const LOST_DEG = 12;

const meant = (catalogue: Catalogue, name: string): Target | null => {
  const found = resolveTarget(catalogue, name);
  return isProblem(found) || found.target.id === 'sun' || found.target.id === 'moon' ? null : found.target;
};

/** The target that the Moon comes by, where one is named with it. */
export const besideMoonIn = ({ kind, about }: Question, catalogue: Catalogue): Target | null => {
  const [first, second, third] = namedIn(about ?? '');
  if (kind !== 'meetings' || second === undefined || third !== undefined) return null;
  if (first === 'moon') return meant(catalogue, second);
  return second === 'moon' ? meant(catalogue, first ?? '') : null;
};

const apartText = (separationDeg: number): string =>
  degrees(separationDeg, separationDeg < WITH_A_FRACTION_DEG ? 1 : 0);

interface Told {
  readonly target: Target;
  readonly question: Question;
  readonly nowUtcMs: UtcMs;
}

const seenWords = (seen: MoonSeen, { question: { zone }, nowUtcMs }: Told): string =>
  `${apartText(seen.separationDeg)} apart ${dayWords(seen.utcMs, zone, nowUtcMs)} at ${formatLocalTime(seen.utcMs, zone)}, ${degrees(seen.altitudeDeg)} high in the ${compassWord(seen.azimuthDeg)}`;

/** "0.9° apart Mon 30 Nov at 05:40 GMT, 47° high in the south; closest 0.6° at 07:55, by day". */
const passWords = (pass: MoonMeeting, told: Told): string => {
  const { target, question, nowUtcMs } = told;
  const { zone, observer } = question;
  const closest = `${apartText(pass.separationDeg)} apart ${dayWords(pass.utcMs, zone, nowUtcMs)} at ${formatLocalTime(pass.utcMs, zone)}`;
  if (pass.seen === null)
    return bodySeparationDeg(SUN, target.body, observer, pass.utcMs) < LOST_DEG
      ? `${closest}, lost in the Sun’s light`
      : `${closest}, not seen in the dark from here`;
  const isClosest = pass.seen.separationDeg - pass.separationDeg < 0.3;
  return isClosest ? seenWords(pass.seen, told) : `${seenWords(pass.seen, told)}; at the closest ${closest}`;
};

/** Within a month or a year that was named, and not the next. */
const isOfPeriod = ({ spanSaid = null }: Question): boolean => spanSaid !== null;

const nameOf = ({ name }: Target): string => name;

const noneNear = ({ target, question, nowUtcMs }: Told, nearest: MoonMeeting | undefined): string => {
  if (nearest === undefined)
    return `The Moon does not come by ${nameOf(target)}${isOfPeriod(question) ? ' then' : ''}.`;
  return `The Moon never comes near ${nameOf(target)}: ${degrees(nearest.separationDeg)} at its next pass, ${dayWords(nearest.utcMs, question.zone, nowUtcMs)}.`;
};

/** How they stand in the night that was asked about. */
const thatNight = (told: Told): { readonly words: string; readonly seen: MoonSeen | null } | null => {
  const { target, question, nowUtcMs } = told;
  const { night = null, nightSaid = null, observer } = question;
  if (night === null) return null;
  const then = nightSaid === null ? 'tonight' : `in the night of ${nightSaid}`;
  const startUtcMs = Math.min(night.endUtcMs, Math.max(nowUtcMs, night.startUtcMs));
  const seen = closestSeen(target.body, observer, { startUtcMs, endUtcMs: night.endUtcMs });
  if (seen !== null) return { words: `The Moon and ${nameOf(target)} ${then}: ${seenWords(seen, told)}.`, seen };
  const apart = moonSeparationDeg(target.body, observer, (startUtcMs + night.endUtcMs) / 2);
  return { words: `The Moon and ${nameOf(target)} are not seen together ${then}; ${apartText(apart)} apart.`, seen };
};

const passesOf = ({ target, question, nowUtcMs }: Told): readonly MoonMeeting[] => {
  const { observer } = question;
  const span = isOfPeriod(question)
    ? question.span
    : { startUtcMs: nowUtcMs, endUtcMs: nowUtcMs + LOOKED_AHEAD_DAYS * MS_PER_DAY };
  return moonMeetings(target.body, observer, { ...span, startUtcMs: Math.max(nowUtcMs, span.startUtcMs) }, MOST);
};

export const moonPairSection = (question: Question, target: Target, nowUtcMs: UtcMs): Section => {
  const told: Told = { target, question, nowUtcMs };
  const { observer, zone } = question;
  const night = thatNight(told);
  const passes = passesOf(told);
  const [first] = passes;
  const near = passes.filter(({ separationDeg }) => separationDeg <= NEAR_DEG);
  const [next] = near;
  const isTheNext = !isOfPeriod(question);
  const comes =
    next === undefined
      ? noneNear(told, first)
      : `${isTheNext ? 'Next: the' : 'The'} Moon and ${nameOf(target)}, ${passWords(next, told)}.`;
  const seen = [night?.seen ?? null, ...near.map((pass) => pass.seen)].filter((each) => each !== null);
  return {
    headline: [night?.words, comes].filter((words) => words !== undefined).join(' '),
    facts: near.map((pass, i) => ({
      label: i === 0 && isTheNext ? 'Next' : 'Then',
      value: passWords(pass, told),
    })),
    pointsAt: seen.flatMap(({ utcMs }) =>
      [
        { what: 'the Moon', direction: MOON },
        { what: nameOf(target), direction: target.body },
      ].map((each) => ({ ...each, when: { utcMs }, observer, zone })),
    ),
    data: passes.map(({ utcMs, separationDeg, litFraction }) => ({
      what: 'meeting',
      names: ['Moon', nameOf(target)],
      utc: isoUtc(utcMs),
      separationDeg: rounded(separationDeg, 2),
      moonLitFraction: rounded(litFraction, 2),
    })),
  };
};
