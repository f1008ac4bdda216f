/** A target waited for at an hour at which it is not up. */
import type { Target } from '../../catalogue/index.js';
import { MS_PER_DAY } from '../../ground/durations.js';
import { problem, type Problem } from '../../ground/problem.js';
import type { Search } from '../../reminders/find-moment.js';
import { horizontalOf } from '../../sky/place.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import { formatLocalDateTime } from '../../times/index.js';
import type { ResolvedSite } from '../asking/resolve-site.js';
import { again, type RemindOptions } from './remind-options.js';

/** High enough to be worth walking out for, where no height is asked for. */
export const USUAL_ABOVE_DEG = 20;

interface Told {
  readonly where: ResolvedSite;
  readonly given: RemindOptions;
}

/** "Wake me at 4am if Saturn is up": it is not, so nobody is woken. Null: it is up, or the Sun is waited for. */
export const downThen = ({ where, given }: Told, target: Target, search: Search): Problem | null => {
  if (!('found' in search) || target.id === 'sun') return null;
  const { observer, zone, name } = where.site;
  const { utcMs } = search.found;
  if (horizontalOf(target.body, observer, utcMs).altitudeDeg > 0) return null;
  const { riseUtcMs } = riseTransitSet(target.body, observer, utcMs, utcMs + MS_PER_DAY);
  const rises = riseUtcMs === null ? '' : ` It rises at ${formatLocalDateTime(riseUtcMs, zone)}.`;
  return problem(
    'no-such-moment',
    `${target.name} is below the horizon of ${name} at ${formatLocalDateTime(utcMs, zone)}, so no reminder is set.${rises}`,
    [
      {
        label: `When ${target.name} is ${USUAL_ABOVE_DEG}° high`,
        run: again(given, { at: undefined, above: String(USUAL_ABOVE_DEG) }),
      },
      { label: 'At that hour all the same', run: again(given, { target: undefined }) },
    ],
  );
};
