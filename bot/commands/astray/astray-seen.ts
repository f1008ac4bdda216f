/** Reads all that a member saw of a miss into observations, and the stars a mount is aligned on. */
import { resolveTarget, targetProblemMessage, type Target, brightNamedStars } from '../../catalogue/index.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import {
  POSITION_SIGMA_DEG,
  type AlignmentStar,
  type Observation,
  type PointedTarget,
} from '../../pointing/miss/astray-types.js';
import { precessionNutationAt } from '../../sky/earth.js';
import { equatorialFromVector, multiply } from '../../sky/angles.js';
import type { Equatorial } from '../../sky/types.js';
import { horizonFrame } from '../../sky/horizon-frame.js';
import { pointedAt, readAltAz, readLanding, readLst, type SkyThen } from './astray-observations.js';

/** With the first, ten landings at most. */
const MOST_ALSO = 9;

export interface Seen {
  readonly observations: readonly Observation[];
  readonly notes: readonly string[];
  /** The same with the first landing read along right ascension, where its words leave that open. */
  readonly alongRa: { readonly degrees: number; readonly observations: readonly Observation[] } | null;
}

const ALSO_HINT =
  'Write it as also:"Capella = 12 degrees east of it; Deneb = 41,135": a target, =, and where the tube landed.';

/** Further landings: "Capella = 12 degrees east of it; Deneb = 41,135". */
const readAlso = (sky: SkyThen, also: string, within: number | undefined): Omit<Seen, 'alongRa'> | Problem => {
  const parts = also
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length > MOST_ALSO)
    return problem('bad-also', `also: has ${parts.length} landings; at most ${MOST_ALSO} are read.`);
  const observations: Observation[] = [];
  const notes: string[] = [];
  for (const part of parts) {
    const at = part.indexOf('=');
    if (at < 1) return problem('bad-also', `also: "${tidy(part, 30)}" has no target and "=". ${ALSO_HINT}`);
    const found = resolveTarget(sky.deps.catalogue, part.slice(0, at).trim());
    if (isProblem(found)) return problem(found.problem, `also: ${targetProblemMessage(found)}`);
    const target = pointedAt(sky, found.target);
    const landing = readLanding(sky, part.slice(at + 1), target, found.target.body);
    if (isProblem(landing)) return landing;
    observations.push({ kind: 'landed', target, ofDate: landing.ofDate, sigmaDeg: within ?? landing.sigmaDeg });
    if (landing.note !== undefined) notes.push(landing.note);
  }
  return { observations, notes };
};

export interface SeenTexts {
  readonly landed?: string | undefined;
  readonly shown?: string | undefined;
  readonly lst?: string | undefined;
  readonly also?: string | undefined;
  readonly within?: number | undefined;
}

const readShown = (shown: string, target: PointedTarget): Observation | Problem => {
  const at = readAltAz('shown', shown);
  if (at === null)
    return problem(
      'bad-shown',
      `shown: "${tidy(shown, 30)}" is not an altitude and an azimuth. Give both in degrees, altitude first, as the display shows them: shown:41,135`,
    );
  return isProblem(at) ? at : { kind: 'shown', target, at, sigmaDeg: POSITION_SIGMA_DEG };
};

const readClock = (lst: string): Observation | Problem => {
  const read = readLst(lst);
  return isProblem(read) ? read : { kind: 'lst', lstHours: read.hours, sigmaS: read.sigmaS };
};

/** What stands on the controller. */
const readDisplay = (
  lst: string | undefined,
  shown: string | undefined,
  target: PointedTarget,
): readonly Observation[] | Problem => {
  const clock = lst === undefined ? null : readClock(lst);
  if (isProblem(clock)) return clock;
  const place = shown === undefined ? null : readShown(shown, target);
  return isProblem(place) ? place : [clock, place].filter((read) => read !== null);
};

/** All that was seen, or what is wrong with how it was told. */
export const readSeen = (
  sky: SkyThen,
  texts: SeenTexts,
  target: PointedTarget,
  body: Target['body'],
): Seen | Problem => {
  const { lst, shown, landed, also, within } = texts;
  const landing = landed === undefined ? null : readLanding(sky, landed, target, body);
  if (isProblem(landing)) return landing;
  const others = also === undefined ? { observations: [], notes: [] } : readAlso(sky, also, within);
  const display = readDisplay(lst, shown, target);
  if (isProblem(display)) return display;
  if (isProblem(others)) return others;
  const observations: Observation[] = [...display];
  const landedAt = (ofDate: Equatorial, sigmaDeg: number): Observation => ({
    kind: 'landed',
    target,
    ofDate,
    sigmaDeg: within ?? sigmaDeg,
  });
  const along = landing?.alongRa;
  const alongRa =
    along === undefined
      ? null
      : {
          degrees: along.degrees,
          observations: [...observations, landedAt(along.ofDate, POSITION_SIGMA_DEG), ...others.observations],
        };
  if (landing !== null) observations.push(landedAt(landing.ofDate, landing.sigmaDeg));
  observations.push(...others.observations);
  const notes = [...(landing?.note === undefined ? [] : [landing.note]), ...others.notes];
  return observations.length > 0
    ? { observations, notes: [...new Set(notes)], alongRa }
    : problem(
        'no-observation',
        'Say what you saw: landed: where the tube really went (a star, 41,135 as altitude and azimuth, or "15 degrees west of it"), shown: the altitude and azimuth on the display, or lst: the sidereal time on it.',
      );
};

/** To the aberration (20″), which is nothing to a miss. */
export const alignmentStars = ({ deps, observer, utcMs }: SkyThen): AlignmentStar[] => {
  const frame = horizonFrame(observer, utcMs);
  const toDate = precessionNutationAt(utcMs);
  return brightNamedStars(deps.catalogue).map(({ name, magnitude, body }) => ({
    name,
    magnitude,
    ofDate: equatorialFromVector(multiply(toDate, frame.directionOf(body))),
  }));
};
