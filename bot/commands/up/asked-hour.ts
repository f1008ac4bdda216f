/** The hour that `up` was asked about, and the night it is of. */
import { isProblem, type Problem } from '../../ground/problem.js';
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { horizontalOf } from '../../sky/place.js';
import { SUN_HORIZON_ALTITUDE_DEG } from '../../sky/rise-set.js';
import { SUN } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import { formatClock, formatLocalDate, nightAround, tonightAt, type NamedNight } from '../../times/index.js';
import { hourOfNight, nightFor, timeFor, type AskedTime, type TargetAtSite } from '../asking/question-parts.js';

export interface AskedHour {
  readonly hour: AskedTime | null;
  readonly night: NamedNight;
}

/** Of "now" in the morning after sunrise the night is the coming one: the other is over. */
const nightOfHour = (utcMs: UtcMs, site: TargetAtSite['where']['site'], nowUtcMs: UtcMs): NamedNight => {
  const around = nightAround(utcMs, site);
  const tonight = tonightAt(site, nowUtcMs);
  const isNow = Math.abs(utcMs - nowUtcMs) < MS_PER_MINUTE;
  const isDay = horizontalOf(SUN, site.observer, utcMs).altitudeDeg > SUN_HORIZON_ALTITUDE_DEG;
  return isNow && isDay && tonight.startUtcMs > around.startUtcMs ? tonight : around;
};

/** "friday 2am" may be meant either way: which date it is, is said. */
const nextMorning = (utcMs: UtcMs, zone: string, { said }: NamedNight): readonly string[] => {
  const day = formatLocalDate(utcMs, zone);
  return day === said ? [] : [`${formatClock(utcMs, zone)} is that of ${day}, in the night that begins on ${said}.`];
};

/** Of the night in progress or the coming one, and of the evening past, the hour itself says which. */
const TONIGHT = /^\s*(?:tonight|this evening)\s*$/iu;
const LAST = /^\s*(?:last|yesterday) (?:night|evening)\s*$/iu;

export const hourAndNight = (
  { on, at }: { readonly on?: string | undefined; readonly at?: string | undefined },
  { site }: TargetAtSite['where'],
  nowUtcMs: UtcMs,
): AskedHour | Problem => {
  // A bare hour is of the night asked about; with a night of its own the hour says which.
  const dated = nightFor(on, site, nowUtcMs);
  if (isProblem(dated)) return dated;
  if (at === undefined) return { hour: null, night: dated };
  const isRelative = on === undefined || TONIGHT.test(on) || LAST.test(on);
  const isOfItsNight = on !== undefined && (LAST.test(on) || /^\s*midnight\s*$/iu.test(at));
  const said = isOfItsNight ? `${on} ${at}` : at;
  const hour = isRelative ? timeFor(said, site.zone, nowUtcMs) : hourOfNight(at, site.zone, dated);
  if (isProblem(hour)) return hour;
  if (isRelative) return { hour, night: nightOfHour(hour.utcMs, site, nowUtcMs) };
  return { hour: { ...hour, notes: [...hour.notes, ...nextMorning(hour.utcMs, site.zone, dated)] }, night: dated };
};
