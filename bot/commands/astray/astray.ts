/** `astray`: the tube went elsewhere; which mistake, or which two, explain it, and what to change. */
import { resolveTarget, targetProblemMessage } from '../../catalogue/index.js';
import { MS_PER_HOUR } from '../../ground/durations.js';
import { isProblem, problem, type Choice, type Problem } from '../../ground/problem.js';
import type { AlignmentStar, Circumstances, Observation, PointedTarget } from '../../pointing/miss/astray-types.js';
import { explainMiss, type Diagnosis, type Explanation } from '../../pointing/miss/explain-miss.js';
import { magneticNorth } from '../../pointing/pole/magnetic-north.js';
import { duration } from '../../reply/wording.js';
import { reply, type Outcome, type PointsAt } from '../../reply/reply.js';
import { horizontalFromOfDate, placeOf } from '../../sky/place.js';
import { sunUpHeight } from '../../sky/sun-safety.js';
import { StoreError } from '../../store/store.js';
import { siteClock } from '../../times/index.js';
import { mountFor, mountOption } from '../asking/mount-for.js';
import { storedPlaces } from '../asking/stored-places.js';
import { pastTimeFor, targetAtSite } from '../asking/question-parts.js';
import { defineCommand, number, optional, text, type Asker, type Deps } from '../core/command.js';
import { findingReply } from './astray-answer.js';
import { isFound } from './astray-finding.js';
import { pointedAt, type SkyThen } from './astray-observations.js';
import { alignmentStars, readSeen, type Seen } from './astray-seen.js';
import { CAUSE_TITLES, causeTitle } from './astray-words.js';
import type { WordContext } from './correction-words.js';

const CHOICES_OFFERED = 3;

/** Buttons that take the finding back to a triage walk under way. */
const triageChoices = async (deps: Deps, asker: Asker, causes: readonly Explanation[]): Promise<readonly Choice[]> => {
  try {
    const walk = await deps.store.walks.active(asker.clubId, asker.memberId);
    if (walk === null) return [];
    const ids = causes
      .filter(({ probability }) => probability > 0.02)
      .flatMap(({ parts }) => parts.map(({ id }) => id));
    return [...new Set(ids)].slice(0, CHOICES_OFFERED).map((id, i) => ({
      label: `Back to the walk with: ${CAUSE_TITLES[id]}`,
      run: `triage walk:${walk.id} answer:found.${id}`,
      preferred: i === 0,
    }));
  } catch (error) {
    if (error instanceof StoreError) return [];
    throw error;
  }
};

const alignedStar = (
  { deps, observer, utcMs }: SkyThen,
  aligned: string | undefined,
): AlignmentStar | null | Problem => {
  if (aligned === undefined) return null;
  const found = resolveTarget(deps.catalogue, aligned);
  if (isProblem(found)) return problem(found.problem, `aligned: ${targetProblemMessage(found)}`);
  const { name, magnitude, body } = found.target;
  return { name, magnitude: magnitude ?? 0, ofDate: placeOf(body, observer, utcMs).ofDate };
};

/** Where the tube stands: it may be nearer to the Sun than what it was sent to. */
const landedPoints = ({ observer, utcMs }: SkyThen, zone: string, observations: readonly Observation[]): PointsAt[] =>
  observations.flatMap((seen) => {
    if (seen.kind === 'lst') return [];
    const isLanding = seen.kind === 'landed';
    const direction = isLanding ? horizontalFromOfDate(seen.ofDate, observer, utcMs) : seen.at;
    const what = `where ${isLanding ? 'the tube landed' : 'the display says it is'} for ${seen.target.name}`;
    return [{ what, when: { utcMs }, observer, zone, direction }];
  });

/** The star it is to be sent to next. */
const nextPoints = ({ observer, utcMs }: SkyThen, zone: string, { name, ofDate }: PointedTarget): PointsAt[] => [
  { what: name, when: { utcMs }, observer, zone, direction: horizontalFromOfDate(ofDate, observer, utcMs) },
];

/** Better than this nobody reads degrees by eye. */
const FITS_DEG = 0.5;
const FITS_BADLY_DEG = 1;

/** "15 degrees east" may be an hour of right ascension, which is less on the sky: said where that fits and the sky does not. */
const alongRaNotes = (
  circumstances: Circumstances,
  target: PointedTarget,
  { alongRa }: Seen,
  { causes }: Diagnosis,
): readonly string[] => {
  if (alongRa === null || !((causes[0]?.residualDeg ?? 0) > FITS_BADLY_DEG)) return [];
  const first = explainMiss(circumstances, target, alongRa.observations).causes[0];
  if (first === undefined || first.residualDeg > FITS_DEG) return [];
  return [
    `If you read those ${alongRa.degrees}° in right ascension (${duration((alongRa.degrees / 15) * MS_PER_HOUR)}), not on the sky, ${causeTitle(first, circumstances)} fits exactly.`,
  ];
};

export const astray = defineCommand({
  name: 'astray',
  summary: 'It went to the wrong place: which mistake explains the miss?',
  options: {
    target: text('What you sent it to: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    landed: optional(
      text('Where the tube really went: a star, coordinates, ALT,AZ, or "15 degrees west of it"', {
        complete: 'target',
      }),
    ),
    shown: optional(text('The altitude and azimuth the controller shows for the target, as ALT,AZ', { maxLength: 40 })),
    lst: optional(text('The sidereal time the controller shows, such as 05:12:33', { maxLength: 20 })),
    at: optional(text('When: now, tonight 22:30, 2026-12-13T21:00', { complete: 'time', maxLength: 80 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    mount: mountOption,
    aligned: optional(
      text('The star you aligned on last, if any; leave out if you only started from home', { complete: 'target' }),
    ),
    also: optional(
      text('More targets and where they landed: "Capella = 12 degrees east of it; Deneb = 41,135"', { maxLength: 600 }),
    ),
    within: optional(number('How sure the landing is, in degrees (0.5 when not said)', { min: 0.01, max: 20 })),
  },
  examples: [
    'astray Mirach landed:"about 15 degrees east of it" lst:23:19:40 at:2026-11-25T20:00Z site:52.71,0.12',
    'astray M 36 landed:"7 degrees east of it" aligned:Capella mount:fork site:"Cork, Ireland"',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, asker, nowUtcMs } = request;
    const asked = await targetAtSite(deps, request, {
      command: 'astray',
      target: options.target,
      site: options.site,
      rest: {
        landed: options.landed,
        shown: options.shown,
        lst: options.lst,
        at: options.at,
      },
    });
    if (isProblem(asked)) return asked;
    const { target: wanted, where } = asked;
    const { observer, zone } = where.site;
    const time = pastTimeFor(options.at, zone, nowUtcMs);
    if (isProblem(time)) return time;
    const { utcMs } = time;
    const sky: SkyThen = { deps, observer, utcMs };
    const target = pointedAt(sky, wanted);
    const seen = readSeen(sky, options, target, wanted.body);
    if (isProblem(seen)) return seen;
    const alignedOn = alignedStar(sky, options.aligned);
    if (isProblem(alignedOn)) return alignedOn;
    const clock = siteClock(zone, utcMs);
    const circumstances: Circumstances = {
      observer,
      utcMs,
      mount: await mountFor(request, options.mount),
      clock,
      stars: alignmentStars(sky),
      alignedOn,
      places: await storedPlaces(request),
    };
    const diagnosis = explainMiss(circumstances, target, seen.observations);
    const context: WordContext = {
      circumstances,
      clock,
      zone,
      target,
      magneticDeclinationDeg: magneticNorth(observer, utcMs)?.declinationDeg ?? null,
    };
    const isSunUp = sunUpHeight(observer)(utcMs) > 0;
    const found = findingReply({ context, observations: seen.observations, diagnosis, isSunUp }, wanted.name);
    return reply({
      ...found.parts,
      notes: [
        ...found.parts.notes,
        ...alongRaNotes(circumstances, target, seen, diagnosis),
        ...seen.notes,
        ...time.notes,
        ...asked.notes,
      ],
      pointsAt: [
        { what: wanted.name, when: { utcMs }, observer, zone, direction: wanted.body },
        ...landedPoints(sky, zone, seen.observations),
        ...(found.next === null ? [] : nextPoints(sky, zone, found.next)),
      ],
      choices: await triageChoices(deps, asker, isFound(diagnosis) ? diagnosis.causes : []),
    });
  },
});
