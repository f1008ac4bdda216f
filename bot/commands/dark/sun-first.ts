/** When the Sun next sets or rises, or does on a date, where that is what was asked. */
import { isProblem } from '../../ground/problem.js';
import { sunSafety } from '../../sky/sun-safety.js';
import { SUN } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import {
  formatLocalDate,
  formatLocalDateTime,
  formatLocalTime,
  localToUtc,
  type NamedNight,
} from '../../times/index.js';
import type { ResolvedSite } from '../asking/resolve-site.js';

const MIDNIGHT = { hour: 0, minute: 0, second: 0 };

/** Without its full stop; null where neither was asked. */
export const sunFirst = (
  { first, on }: { readonly first?: string | undefined; readonly on?: string | undefined },
  { observer, zone }: ResolvedSite['site'],
  night: NamedNight,
  nowUtcMs: UtcMs,
): string | null => {
  const date = on === undefined ? null : night.date;
  if (first !== 'sunset' && first !== 'sunrise') return null;
  const from = date === null ? { utcMs: nowUtcMs } : localToUtc(date, MIDNIGHT, zone);
  if (isProblem(from)) return null;
  const { nextSunsetUtcMs, nextSunriseUtcMs } = sunSafety(SUN, observer, from.utcMs);
  const utcMs = first === 'sunset' ? nextSunsetUtcMs : nextSunriseUtcMs;
  if (utcMs === null) return `The Sun does not ${first === 'sunset' ? 'set' : 'rise'} there within two days`;
  const does = `The Sun ${first === 'sunset' ? 'sets' : 'rises'}`;
  return formatLocalDate(utcMs, zone) === formatLocalDate(nowUtcMs, zone)
    ? `${does} at ${formatLocalTime(utcMs, zone)}`
    : `${does}${date === null ? ' next' : ''} on ${formatLocalDateTime(utcMs, zone)}`;
};
