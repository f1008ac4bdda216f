/** When Venus or Mercury is at its brightest, where that was asked. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { degrees, isoUtc, magnitudeText, rounded } from '../../reply/wording.js';
import { mercuryBrightest, venusBrightest } from '../../sky/inner-brightest.js';
import { planetLook } from '../../sky/planet-look.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { isAbout, type Question, type Section } from './ahead-question.js';
import { dayWords } from './ahead-words.js';

const NOTHING: Section = { facts: [], data: [] };
/** So near its peak the light is the same to the eye; common practice, no source. */
const ABOUT_PEAK_MS = 8 * MS_PER_DAY;

const venusWords = ({ zone }: Question, nowUtcMs: UtcMs): Section => {
  const { utcMs, magnitude } = venusBrightest(nowUtcMs);
  const look = planetLook('Venus', utcMs);
  const crescent =
    look === null
      ? ''
      : `, a crescent ${Math.round(look.litFraction * 100)} % lit and ${Math.round(look.diameterArcsec)}″ across`;
  const isNow = Math.abs(utcMs - nowUtcMs) < ABOUT_PEAK_MS;
  const value = `greatest brilliancy about ${dayWords(utcMs, zone, nowUtcMs)}, mag ${magnitudeText(magnitude)}${crescent}`;
  return {
    headline: `Venus: ${value}${isNow ? ': now, for a week either side' : ''}.`,
    facts: [{ label: 'Venus', value }],
    data: [{ what: 'greatest-brilliancy', planet: 'Venus', utc: isoUtc(utcMs), magnitude: rounded(magnitude, 2) }],
  };
};

const mercuryWords = ({ zone, observer }: Question, nowUtcMs: UtcMs): Section => {
  const found = mercuryBrightest(observer, nowUtcMs);
  if (found === null)
    return { headline: 'Mercury does not stand clear of the twilight here in the months ahead.', facts: [], data: [] };
  const { utcMs, magnitude, altitudeDeg, isMorning } = found;
  const value = `brightest while it is seen here ${dayWords(utcMs, zone, nowUtcMs)}, mag ${magnitudeText(magnitude)}, ${degrees(altitudeDeg)} high at civil ${isMorning ? 'dawn' : 'dusk'}, ${formatLocalTime(utcMs, zone)}`;
  return {
    headline: `Mercury: ${value}. Brighter still behind the Sun, where nobody sees it.`,
    facts: [{ label: 'Mercury', value }],
    pointsAt: [
      { what: 'Mercury', when: { utcMs }, observer, zone, direction: { kind: 'solarSystem', body: 'Mercury' } },
    ],
    data: [{ what: 'brightest-seen', planet: 'Mercury', utc: isoUtc(utcMs), magnitude: rounded(magnitude, 2) }],
  };
};

/** Nothing unless the brightest of one of the two was asked. */
export const brightest = (question: Question, nowUtcMs: UtcMs): Section => {
  if (question.kind !== 'planets' || question.wantsBest !== true || question.about === null) return NOTHING;
  if (isAbout(question, 'Venus')) return venusWords(question, nowUtcMs);
  return isAbout(question, 'Mercury') ? mercuryWords(question, nowUtcMs) : NOTHING;
};
