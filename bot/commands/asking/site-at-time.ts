/** The two options of questions about a place and an hour, and their reading. */
import { isProblem, type Problem } from '../../ground/problem.js';
import type { UtcMs } from '../../sky/types.js';
import { optional, text, type Request, type Deps } from '../core/command.js';
import { siteNotes, timeFor } from './question-parts.js';
import { siteFor, type ResolvedSite } from './resolve-site.js';

export const siteOption = optional(text('Where: a saved site, a place name, or LAT,LON', { complete: 'site' }));
export const atOption = optional(
  text('When: now, tonight 22:30, 2026-12-13T21:00', { complete: 'time', maxLength: 80 }),
);

export interface SiteAtTime {
  readonly where: ResolvedSite;
  readonly utcMs: UtcMs;
  /** How time and site were read, for the end of the answer. */
  readonly notes: readonly string[];
}

export const siteAtTime = async (
  deps: Deps,
  request: Request<{ readonly site?: string | undefined; readonly at?: string | undefined }>,
): Promise<SiteAtTime | Problem> => {
  const { options, nowUtcMs } = request;
  const where = await siteFor(deps, request, options.site);
  if (isProblem(where)) return where;
  const time = timeFor(options.at, where.site.zone, nowUtcMs);
  return isProblem(time) ? time : { where, utcMs: time.utcMs, notes: [...time.notes, ...siteNotes(where)] };
};
