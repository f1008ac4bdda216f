/** What is asked of the Moon's face: a feature, the terminator, the earthshine; and for which moment. */
import { moonFeatureIn, type MoonFeature } from '../../catalogue/index.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import type { Outcome } from '../../reply/reply.js';
import type { TimeSpan } from '../../sky/night.js';
import type { UtcMs } from '../../sky/types.js';
import { namesNight } from '../../times/index.js';
import { nightFor, siteNotes } from '../asking/question-parts.js';
import type { ResolvedSite } from '../asking/resolve-site.js';
import { siteAtTime, type SiteAtTime } from '../asking/site-at-time.js';
import type { Deps, Request } from '../core/command.js';
import { siteFor } from '../asking/resolve-site.js';
import { earthshineAnswer } from './earthshine-answer.js';
import { featureAnswer } from './feature-answer.js';
import { moonSeenIn, type MoonStands } from './moon-seen.js';
import { terminatorAnswer } from './terminator-answer.js';

export const FACE = ['terminator', 'earthshine'] as const;
export type Face = (typeof FACE)[number];

export interface FaceOptions {
  readonly at?: string | undefined;
  readonly site?: string | undefined;
  readonly feature?: string | undefined;
  readonly first?: Face | undefined;
}

const NOT_SEEN = 'The Moon is not seen in the dark of that night from here.';

/** As high as this in the evening it is not worth waiting; common practice, no source. */
const EVENING_DEG = 15;
const midOf = ({ startUtcMs, endUtcMs }: TimeSpan): UtcMs => (startUtcMs + endUtcMs) / 2;

/** In a night: when the Moon stands highest there with the Sun down; where it does not, as the night begins. */
const inNight = (where: ResolvedSite, at: string | undefined, nowUtcMs: UtcMs): SiteAtTime | Problem => {
  const night = nightFor(at, where.site, nowUtcMs);
  if (isProblem(night)) return night;
  const startUtcMs = Math.min(night.endUtcMs, Math.max(nowUtcMs, night.startUtcMs));
  const highestUntil = (endUtcMs: UtcMs): MoonStands | undefined =>
    [...moonSeenIn(where.site.observer, { startUtcMs, endUtcMs })].sort(
      (a, b) => b.best.altitudeDeg - a.best.altitudeDeg,
    )[0]?.best;
  // Where the Moon is well up in the evening, that comes before the small hours.
  const early = highestUntil(midOf(night));
  const best = early !== undefined && early.altitudeDeg >= EVENING_DEG ? early : highestUntil(night.endUtcMs);
  return {
    where,
    utcMs: best?.utcMs ?? startUtcMs,
    notes: [...(best === undefined ? [NOT_SEEN] : []), ...siteNotes(where)],
  };
};

/** A night, or none at all, is asked about as a whole; an hour is that hour. */
const momentOf = async (deps: Deps, request: Request<FaceOptions>): Promise<SiteAtTime | Problem> => {
  const { at, site } = request.options;
  if (at !== undefined && !namesNight(at, request.nowUtcMs)) return siteAtTime(deps, request);
  const where = await siteFor(deps, request, site);
  return isProblem(where) ? where : inNight(where, at, request.nowUtcMs);
};

const featureOf = (text: string): MoonFeature | Problem =>
  moonFeatureIn(text) ??
  problem(
    'unknown-target',
    'I know some ninety features of the Moon, such as Copernicus, the Straight Wall or Lunar X, and not that one.',
    [{ label: 'What stands on the terminator', run: 'moon first:terminator' }],
  );

/** Null where nothing of the face is asked. */
export const ofFace = async (deps: Deps, request: Request<FaceOptions>): Promise<Outcome | null> => {
  const { feature: named, first } = request.options;
  if (named === undefined && first === undefined) return null;
  const feature = named === undefined ? null : featureOf(named);
  if (isProblem(feature)) return feature;
  const asked = first === 'earthshine' ? await siteAtTime(deps, request) : await momentOf(deps, request);
  if (isProblem(asked)) return asked;
  const { where, utcMs, notes } = asked;
  if (feature !== null) return featureAnswer({ feature, where, utcMs, notes });
  return first === 'earthshine' ? earthshineAnswer(where, utcMs, notes) : terminatorAnswer(where, utcMs, notes);
};
