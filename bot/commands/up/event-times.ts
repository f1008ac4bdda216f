/** When a target rises, sets and crosses the meridian, and where it stands then; the last of them as well. */
import { MS_PER_DAY, MS_PER_HOUR } from '../../ground/durations.js';
import { compassWord, degrees } from '../../reply/wording.js';
import { airmass } from '../../sky/airmass.js';
import type { TimeSpan } from '../../sky/night.js';
import { placeOf } from '../../sky/place.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDateTime } from '../../times/index.js';
import type { TargetAtSite } from '../asking/question-parts.js';
import { besideSunWords } from './after-sun-words.js';

export const EVENTS = {
  rise: { key: 'riseUtcMs', will: 'rises', did: 'rose' },
  set: { key: 'setUtcMs', will: 'sets', did: 'set' },
  transit: { key: 'transitUtcMs', will: 'crosses the meridian', did: 'crossed the meridian' },
} as const;
export type Event = keyof typeof EVENTS;

/** "rises at 18:32 GMT in the north-east", "crosses the meridian at 21:17 WET, 62.5° high in the south (180°), airmass 1.13". */
export const whereThen = ({ target, where }: TargetAtSite, event: Event, utcMs: UtcMs): string => {
  const { apparentAltitudeDeg, azimuthDeg } = placeOf(target.body, where.site.observer, utcMs);
  const side = `in the ${compassWord(azimuthDeg)} (${Math.round(azimuthDeg) % 360}°)`;
  if (event !== 'transit') return ` ${side}${besideSunWords(target, event, utcMs, where.site.observer)}`;
  const mass = airmass(apparentAltitudeDeg);
  return mass === null
    ? ', below the horizon'
    : `, ${degrees(apparentAltitudeDeg, 1)} high ${side}, airmass ${mass.toFixed(2)}`;
};

export const TWO_DAYS_MS = 2 * MS_PER_DAY;

export const timeOf = (
  { target, where }: TargetAtSite,
  event: Event,
  { startUtcMs, endUtcMs }: TimeSpan,
): UtcMs | null => riseTransitSet(target.body, where.site.observer, startUtcMs, endUtcMs)[EVENTS[event].key];

/** A rising comes a day after the other but for some minutes: the later of those in the two days before. */
const lastBefore = (asked: TargetAtSite, event: Event, nowUtcMs: UtcMs): UtcMs | null => {
  const first = timeOf(asked, event, { startUtcMs: nowUtcMs - TWO_DAYS_MS, endUtcMs: nowUtcMs });
  if (first === null) return null;
  return timeOf(asked, event, { startUtcMs: first + MS_PER_HOUR, endUtcMs: nowUtcMs }) ?? first;
};

/** The last one that has been, and the next; null where none has been in these days. */
export const pastEvent = (
  asked: TargetAtSite,
  event: Event,
  nowUtcMs: UtcMs,
): { readonly words: string; readonly nextUtcMs: UtcMs | null } | null => {
  const { zone } = asked.where.site;
  const last = lastBefore(asked, event, nowUtcMs);
  if (last === null) return null;
  const next = timeOf(asked, event, { startUtcMs: nowUtcMs, endUtcMs: nowUtcMs + TWO_DAYS_MS });
  const again = next === null ? '' : `; next on ${formatLocalDateTime(next, zone)}`;
  return {
    words: `${asked.target.name} ${EVENTS[event].did} on ${formatLocalDateTime(last, zone)}${whereThen(asked, event, last)}${again}.`,
    nextUtcMs: next,
  };
};
