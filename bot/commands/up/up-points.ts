/** Every direction and instant that an answer of `up` names, for the Sun to be judged. */
import type { Outlook } from '../../evening/outlook.js';
import type { PointsAt } from '../../reply/reply.js';
import { horizontalOf } from '../../sky/place.js';
import type { RiseTransitSet } from '../../sky/rise-set.js';
import { sunSafety } from '../../sky/sun-safety.js';
import type { UtcMs } from '../../sky/types.js';
import type { Deps } from '../core/command.js';
import type { TargetAtSite } from '../asking/question-parts.js';

interface Named {
  readonly utcMs: UtcMs;
  readonly what: string;
}

/** It is named when it rises and sets: that counts where it does so beside the Sun, not as a word on every night. */
const nearSun = (
  deps: Deps,
  { target, where }: TargetAtSite,
  { riseUtcMs, setUtcMs }: RiseTransitSet,
  events: readonly Named[],
): readonly Named[] =>
  [
    { utcMs: riseUtcMs, what: `${target.name} as it rises` },
    { utcMs: setUtcMs, what: `${target.name} as it sets` },
    ...events,
  ].filter((event): event is Named => {
    const { utcMs } = event;
    if (utcMs === null) return false;
    const { isSunUp, level } = sunSafety(target.body, where.site.observer, utcMs, deps.sunLimits);
    return isSunUp && level !== 'clear';
  });

interface Instants {
  readonly nowUtcMs: UtcMs;
  /** Other instants that are named; null: none. */
  readonly others: readonly (UtcMs | null)[];
  readonly events: readonly Named[];
}

/** Nobody goes out for what has set. */
const toCome = ({ riseUtcMs, setUtcMs, ...times }: RiseTransitSet, nowUtcMs: UtcMs): RiseTransitSet => ({
  ...times,
  riseUtcMs,
  setUtcMs: setUtcMs !== null && setUtcMs < nowUtcMs ? null : setUtcMs,
});

/** Who asks by day for tonight may slew at once; who asks for another night will not. */
export const pointsAtOf = (
  deps: Deps,
  asked: TargetAtSite,
  { times, best, clearsUtcMs, hiddenUtcMs }: Outlook,
  { nowUtcMs, others, events }: Instants,
): readonly PointsAt[] => {
  const { target, where } = asked;
  const { observer, zone } = where.site;
  const instants = [best.utcMs, clearsUtcMs, hiddenUtcMs, ...others].filter(
    (utcMs): utcMs is UtcMs => utcMs !== null && horizontalOf(target.body, observer, utcMs).altitudeDeg > 0,
  );
  const named = instants.map((utcMs) => ({ utcMs, what: target.name }));
  return [...named, ...nearSun(deps, asked, toCome(times, nowUtcMs), events)].map(({ utcMs, what }) => ({
    what,
    when: { utcMs },
    observer,
    zone,
    direction: target.body,
  }));
};
