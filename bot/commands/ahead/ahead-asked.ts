/** What the options of `ahead` mean: one kind and what it is about, one night. */
import { MS_PER_DAY } from '../../ground/durations.js';
import type { UtcMs } from '../../sky/types.js';
import type { NamedNight } from '../../times/index.js';
import { choice } from '../core/command.js';
import { KIND_NAMES, KINDS, type Kind, type Question, type Shape } from './ahead-question.js';

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

/** Which of several: of what shape, how many come before it, and whether it is told alone. */
export const whichOf = (given: {
  readonly shape?: Shape | undefined;
  readonly total?: boolean | undefined;
  readonly first?: 'next' | 'contacts' | undefined;
  readonly later?: number | undefined;
}): Pick<Question, 'shape' | 'first' | 'later'> => ({
  shape: given.shape ?? (given.total === true ? 'total' : null),
  first: given.first ?? null,
  later: given.later ?? 0,
});
