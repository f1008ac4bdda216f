/** From when a target is followed: the hour said, else the dark of the night, once it stands high enough. */
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { isProblem, type Problem } from '../../ground/problem.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import { SUN_HORIZON_ALTITUDE_DEG } from '../../sky/rise-set.js';
import { SUN, twilights } from '../../sky/twilight.js';
import type { SkyBody, UtcMs } from '../../sky/types.js';
import { formatLocalTime, namesNight, tonightAt } from '../../times/index.js';
import { nightFor, timeFor, wholeSecond, type AskedTime, type TargetAtSite } from '../asking/question-parts.js';

interface Follow {
  readonly site: TargetAtSite['where']['site'];
  readonly body: SkyBody;
  readonly lowestAltitudeDeg: number;
  readonly nowUtcMs: UtcMs;
}

const STEP_MS = MS_PER_MINUTE;

/** The first minute of the dark at which it is high enough; null where there is none. */
const firstHighEnough = ({ site, body, lowestAltitudeDeg }: Follow, dark: TimeSpan): UtcMs | null => {
  for (let utcMs = dark.startUtcMs; utcMs < dark.endUtcMs; utcMs += STEP_MS)
    if (horizontalOf(body, site.observer, utcMs).altitudeDeg > lowestAltitudeDeg) return utcMs;
  return null;
};

/** From dark on, or from when it stands high enough; from now where that is past. */
const fromDusk = (follow: Follow, { startUtcMs, endUtcMs }: TimeSpan): AskedTime => {
  const { site, nowUtcMs } = follow;
  const now = { utcMs: wholeSecond(Math.max(nowUtcMs, startUtcMs)), notes: [] };
  const { astronomical, nautical } = twilights(site.observer, startUtcMs, endUtcMs);
  const duskUtcMs = (astronomical ?? nautical)?.duskUtcMs ?? null;
  if (duskUtcMs === null) return now;
  const dawnUtcMs = (astronomical ?? nautical)?.dawnUtcMs ?? endUtcMs;
  const isDark = duskUtcMs < nowUtcMs;
  const found = firstHighEnough(follow, { startUtcMs: isDark ? now.utcMs : duskUtcMs, endUtcMs: dawnUtcMs });
  if (isDark && (found === null || found === now.utcMs)) return now;
  const utcMs = wholeSecond(found ?? duskUtcMs);
  const why = found === null || found === duskUtcMs ? 'dark' : `when it is ${String(follow.lowestAltitudeDeg)}° high`;
  return { utcMs, notes: [`No hour said: reckoned from ${why}, ${formatLocalTime(utcMs, site.zone)}.`] };
};

/** No hour said by day: a star is followed from dark on; what is of the solar system may be followed by day. */
const fromDark = (follow: Follow): AskedTime => {
  const { site, body, nowUtcMs } = follow;
  const isDay = horizontalOf(SUN, site.observer, nowUtcMs).altitudeDeg > SUN_HORIZON_ALTITUDE_DEG;
  return isDay && body.kind === 'fixed'
    ? fromDusk(follow, tonightAt(site, nowUtcMs))
    : { utcMs: wholeSecond(nowUtcMs), notes: [] };
};

/** A night alone ("tonight") is one from its dark on, or from now where that has begun. */
export const startOf = (at: string | undefined, follow: Follow): AskedTime | Problem => {
  const { site, nowUtcMs } = follow;
  if (at === undefined) return fromDark(follow);
  if (!namesNight(at, nowUtcMs)) return timeFor(at, site.zone, nowUtcMs);
  const night = nightFor(at, site, nowUtcMs);
  return isProblem(night) ? night : fromDusk(follow, night);
};
