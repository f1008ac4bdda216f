/** What the options of `ahead` mean: one kind and what it is about, one night, several nights. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import type { TimeSpan } from '../../sky/night.js';
import type { UtcMs } from '../../sky/types.js';
import { nightOn, nightsOver, type NamedNight } from '../../times/index.js';
import { nightFor } from '../asking/question-parts.js';
import type { ResolvedSite } from '../asking/resolve-site.js';
import { choice } from '../core/command.js';
import { KIND_NAMES, KINDS, type Kind, type Question } from './ahead-question.js';

export const kindOption = choice('Only one kind of event, looked for further ahead', KINDS, KIND_NAMES);

/** "about:planets" is a kind, not a name. */
export const wantedOf = (given: {
  readonly kind?: Kind | undefined;
  readonly about?: string | undefined;
}): Pick<Question, 'kind' | 'about'> => {
  const meant = kindOption.schema.safeParse(given.about);
  return !meant.success || meant.data === 'phases'
    ? { kind: given.kind ?? 'all', about: given.about?.toLowerCase() ?? null }
    : { kind: given.kind ?? meant.data, about: null };
};

/** Of one night; tonight is not called by its date. */
export const ofNight = (night: NamedNight | null, nowUtcMs: UtcMs): Pick<Question, 'night' | 'nightSaid'> => {
  const isTonight = night !== null && nowUtcMs < night.endUtcMs && nowUtcMs >= night.startUtcMs - MS_PER_DAY / 4;
  return { night, nightSaid: isTonight ? null : (night?.said ?? null) };
};

/** From the first of several nights to the last. */
const nightsIn = (over: string | undefined, site: ResolvedSite['site'], nowUtcMs: UtcMs): TimeSpan | Problem | null => {
  const found = over === undefined ? null : nightsOver(over, site.zone, nowUtcMs);
  if (found === null) return null;
  if (isProblem(found)) return problem(found.problem, found.message);
  const [first] = found.dates;
  const last = found.dates.at(-1);
  return first === undefined || last === undefined
    ? null
    : { startUtcMs: nightOn(first, site).startUtcMs, endUtcMs: nightOn(last, site).endUtcMs };
};

/** The one night, and the several. */
export const timesIn = (
  { on, over }: { readonly on?: string | undefined; readonly over?: string | undefined },
  site: ResolvedSite['site'],
  nowUtcMs: UtcMs,
): { readonly night: NamedNight | null; readonly nights: TimeSpan | null } | Problem => {
  const night = on === undefined ? null : nightFor(on, site, nowUtcMs);
  if (isProblem(night)) return night;
  const nights = nightsIn(over, site, nowUtcMs);
  return isProblem(nights) ? nights : { night, nights };
};
