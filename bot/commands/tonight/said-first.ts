/** What of a list is said first, where that was asked of it: when its things set or rise, which of them are brightest. */
import { commonName } from '../../catalogue/index.js';
import type { Pick } from '../../evening/tonight-picks.js';
import { MS_PER_DAY } from '../../ground/durations.js';
import { listed, magnitudeText } from '../../reply/wording.js';
import { apparentMagnitude } from '../../sky/brightness.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import type { UtcMs } from '../../sky/types.js';
import { formatClock, zoneName } from '../../times/index.js';
import type { Sought } from './sought.js';
import type { ListFirst } from './tonight-options.js';

/** More are not taken in at the eyepiece. */
const MOST_TIMES = 6;
const MOST_BRIGHT = 3;

const magnitudeOf = ({ target: { body, magnitude }, bestUtcMs }: Pick): number | null =>
  body.kind === 'solarSystem' ? apparentMagnitude(body.body, bestUtcMs) : magnitude;

/** "Brightest: Jupiter, mag −2.3; then Saturn, mag 0.6, and Uranus, mag 5.6." */
const brightestWords = (picks: readonly Pick[]): string => {
  const bright = picks
    .flatMap((pick) => {
      const magnitude = magnitudeOf(pick);
      return magnitude === null ? [] : [{ name: commonName(pick.target), magnitude }];
    })
    .sort((a, b) => a.magnitude - b.magnitude)
    .slice(0, MOST_BRIGHT)
    .map(({ name, magnitude }) => `${name}, mag ${magnitudeText(magnitude)}`);
  const [first, ...others] = bright;
  if (first === undefined) return '';
  return `Brightest: ${first}${others.length === 0 ? '' : `; then ${others.join('; ')}`}. `;
};

interface Event {
  readonly name: string;
  readonly utcMs: UtcMs | null;
  readonly isUp: boolean;
}

const eventsOf = (picks: readonly Pick[], first: 'sets' | 'rises', sought: Sought): readonly Event[] => {
  const { where, hours, nowUtcMs } = sought;
  const startUtcMs = Math.max(hours?.brightWindow.startUtcMs ?? nowUtcMs, nowUtcMs);
  return picks.slice(0, MOST_TIMES).map(({ target }) => {
    const times = riseTransitSet(target.body, where.site.observer, startUtcMs, startUtcMs + MS_PER_DAY);
    const { riseUtcMs, setUtcMs, alwaysUp } = times;
    const isUp = alwaysUp || (setUtcMs !== null && (riseUtcMs === null || setUtcMs < riseUtcMs));
    return { name: commonName(target), utcMs: first === 'sets' ? setUtcMs : riseUtcMs, isUp };
  });
};

/** "They set: Saturn 01:23, Jupiter 12:00 GMT. M 31 does not set." */
const timesWords = (picks: readonly Pick[], first: 'sets' | 'rises', sought: Sought): string => {
  const { zone } = sought.where.site;
  const events = eventsOf(picks, first, sought);
  const told = events
    .filter(({ isUp, utcMs }) => utcMs !== null && !(first === 'rises' && isUp))
    .sort((a, b) => (a.utcMs ?? 0) - (b.utcMs ?? 0))
    .map(({ name, utcMs }) => `${name} ${formatClock(utcMs ?? 0, zone)}`);
  const up = events.filter(({ isUp, utcMs }) => isUp && (first === 'rises' || utcMs === null)).map(({ name }) => name);
  const times =
    told.length === 0
      ? ''
      : `They ${first === 'sets' ? 'set' : 'rise'}: ${told.join(', ')} ${zoneName(sought.nowUtcMs, zone)}. `;
  return `${times}${up.length === 0 ? '' : `${listed(up)} ${upWords(up.length === 1, first)}. `}`;
};

const upWords = (isOne: boolean, first: 'sets' | 'rises'): string => {
  if (first === 'sets') return isOne ? 'does not set' : 'do not set';
  return isOne ? 'is up already' : 'are up already';
};

/** "" where nothing of it was asked, or nothing is listed. */
export const firstOfList = (first: ListFirst | undefined, picks: readonly Pick[], sought: Sought): string => {
  if (first === undefined || picks.length === 0) return '';
  return first === 'brightest' ? brightestWords(picks) : timesWords(picks, first, sought);
};
