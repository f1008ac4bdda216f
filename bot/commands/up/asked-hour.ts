/** The hour that `up` was asked about, and the night it is of. */
import { isProblem, type Problem } from '../../ground/problem.js';
import type { UtcMs } from '../../sky/types.js';
import { nightAround, type NamedNight } from '../../times/index.js';
import { hourOfNight, nightFor, timeFor, type AskedTime, type TargetAtSite } from '../asking/question-parts.js';

export interface AskedHour {
  readonly hour: AskedTime | null;
  readonly night: NamedNight;
}

export const hourAndNight = (
  { on, at }: { readonly on?: string | undefined; readonly at?: string | undefined },
  { site }: TargetAtSite['where'],
  nowUtcMs: UtcMs,
): AskedHour | Problem => {
  // A bare hour is of the night asked about; with a night of its own the hour says which.
  const dated = nightFor(on, site, nowUtcMs);
  if (isProblem(dated)) return dated;
  if (at === undefined) return { hour: null, night: dated };
  const hour = on === undefined ? timeFor(at, site.zone, nowUtcMs) : hourOfNight(at, site.zone, dated);
  if (isProblem(hour)) return hour;
  return { hour, night: on === undefined ? nightAround(hour.utcMs, site) : dated };
};
