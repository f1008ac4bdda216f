/** When two planets that were named meet: the next time, and the last. */
import { pairMeetings, type PairMeeting } from '../../ahead/pair-meetings.js';
import { compassWord, degrees, isoUtc, rounded } from '../../reply/wording.js';
import type { SolarSystemBody, UtcMs } from '../../sky/types.js';
import { formatClock } from '../../times/index.js';
import { namedIn, type Question, type Section } from './ahead-question.js';
import { dayWords } from './ahead-words.js';

const PLANETS: readonly SolarSystemBody[] = ['Mercury', 'Venus', 'Mars', 'Jupiter', 'Saturn', 'Uranus', 'Neptune'];
/** Nearer to the Sun than this both are lost in its light; common practice, no source. */
const LOST_DEG = 12;

/** Both planets, where a meeting of two and of nothing else is asked about. */
export const pairIn = ({ kind, about }: Question): readonly [SolarSystemBody, SolarSystemBody] | null => {
  const named = namedIn(about ?? '').flatMap((name) => PLANETS.find((body) => body.toLowerCase() === name) ?? []);
  const [first, second, third] = named;
  return kind === 'meetings' && first !== undefined && second !== undefined && third === undefined && first !== second
    ? [first, second]
    : null;
};

const seenWords = ({ seen, fromSunDeg }: PairMeeting, zone: string, nowUtcMs: UtcMs): string => {
  if (seen !== null)
    return `; here best ${dayWords(seen.utcMs, zone, nowUtcMs)} at ${formatClock(seen.utcMs, zone)}, ${degrees(seen.altitudeDeg)} high in the ${compassWord(seen.azimuthDeg)}`;
  return fromSunDeg < LOST_DEG ? '; lost in the Sun’s light' : '; not seen in the dark from here';
};

const meetingWords = (meeting: PairMeeting, zone: string, nowUtcMs: UtcMs): string =>
  `${degrees(meeting.separationDeg, 1)} apart ${dayWords(meeting.utcMs, zone, nowUtcMs)}`;

export const pairSection = (
  question: Question,
  pair: readonly [SolarSystemBody, SolarSystemBody],
  nowUtcMs: UtcMs,
): Section => {
  const { observer, zone } = question;
  const { last, next } = pairMeetings(pair, observer, nowUtcMs);
  const both = pair.join(' and ');
  const was = last === null ? '' : ` The last time: ${meetingWords(last, zone, nowUtcMs)}.`;
  const comes =
    next === null
      ? `${both} do not come close to each other in the years that I look ahead.`
      : `Next: ${both}, ${meetingWords(next, zone, nowUtcMs)}${seenWords(next, zone, nowUtcMs)}.`;
  const facts = [
    ...(next === null
      ? []
      : [{ label: both, value: `${meetingWords(next, zone, nowUtcMs)}${seenWords(next, zone, nowUtcMs)}` }]),
    ...(last === null ? [] : [{ label: 'The last time', value: meetingWords(last, zone, nowUtcMs) }]),
  ];
  const found = [last, next].filter((meeting) => meeting !== null);
  return {
    headline: `${comes}${was}`,
    facts,
    pointsAt:
      next === null || next.seen === null
        ? []
        : pair.map((body) => ({
            what: body,
            when: { utcMs: next.seen?.utcMs ?? next.utcMs },
            observer,
            zone,
            direction: { kind: 'solarSystem', body } as const,
          })),
    data: found.map(({ utcMs, separationDeg }) => ({
      what: 'meeting',
      names: [...pair],
      utc: isoUtc(utcMs),
      separationDeg: rounded(separationDeg, 2),
    })),
  };
};
