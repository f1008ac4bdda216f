/** `compare`: two targets side by side at an hour: which stands higher, which to look at first, how far apart and at what position angle. */
import { nameWithAlias } from '../catalogue/index.js';
import { isProblem, type Problem } from '../ground/problem.js';
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { isoUtc, rounded } from '../reply/wording.js';
import { ANYWHERE } from '../sky/anywhere.js';
import { horizontalOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { Observer, UtcMs } from '../sky/types.js';
import { formatLocalDateTime, tonightAt } from '../times/index.js';
import { commandLine, targetAtSite, targetFor, timeFor } from './asking/question-parts.js';
import { bestInNight, bestWords } from './compare/night-best.js';
import type { Pair, Stand } from './compare/pair.js';
import { apartText, COMPARED, type Compared, pairWords, sideBySide, standText } from './compare/side-by-side.js';
import { choice, defineCommand, number, optional, text, type Deps } from './core/command.js';

/** With the Sun higher than this the coming night is meant, not now. */
const DUSK_DEG = -6;
const isDay = (observer: Observer, utcMs: UtcMs): boolean => horizontalOf(SUN, observer, utcMs).altitudeDeg > DUSK_DEG;

const standData = ({ target, place, magnitude }: Stand) => ({
  name: target.name,
  apparentAltitudeDeg: rounded(place.apparentAltitudeDeg, 4),
  azimuthDeg: rounded(place.azimuthDeg, 4),
  magnitude: magnitude === null ? null : rounded(magnitude, 2),
});

/** How far apart planets, stars and the like stand hangs on no place; what does, and the Moon, is answered with the problem. */
const apartAnywhere = (
  problem: Problem,
  deps: Deps,
  {
    target,
    other,
    at,
    first,
  }: {
    readonly target: string;
    readonly other: string;
    readonly at?: string | undefined;
    readonly first?: string | undefined;
  },
  nowUtcMs: UtcMs,
): Outcome => {
  if (problem.problem !== 'no-site' || (first !== undefined && first !== 'apart')) return problem;
  const found = [target, other].map((name) => targetFor(deps, name, (meant) => commandLine('compare', meant, {})));
  const time = timeFor(at, 'UTC', nowUtcMs);
  const [one, two] = found;
  if (one === undefined || two === undefined || isProblem(one) || isProblem(two) || isProblem(time)) return problem;
  if ([one, two].some(({ target: { kind } }) => kind === 'moon' || kind === 'sun')) return problem;
  const pair = sideBySide([one.target, two.target], { observer: ANYWHERE, zone: 'UTC' }, time.utcMs);
  return reply({
    title: `${nameWithAlias(one.target)} and ${nameWithAlias(two.target)}`,
    summary: `${one.target.name} and ${two.target.name} are ${apartText(pair.apartDeg)} apart, position angle ${Math.round(pair.positionAngleDeg) % 360}°.`,
    facts: [{ label: 'When', value: formatLocalDateTime(time.utcMs, 'UTC') }],
    notes: ['Name a place to hear how they stand there: site:"Ely, England".'],
    pointsAt: NOWHERE,
    data: {
      utc: isoUtc(time.utcMs),
      separationDeg: rounded(pair.apartDeg, 4),
      positionAngleDeg: rounded(pair.positionAngleDeg, 3),
    },
  });
};

interface Wished {
  readonly at?: string | undefined;
  readonly first?: Compared | undefined;
  readonly within?: number | undefined;
}

/** No hour was said: by how they stand at their best in what is left of the night. */
const isBestAsked = ({ at, first }: Wished): boolean =>
  at === undefined && (first === 'higher' || first === 'higher-now');

/** Asked in the present, by night, and one of them is up. */
const isUpNow = ({ first: one, second, observer }: Pair, { first }: Wished, nowUtcMs: UtcMs): boolean =>
  first === 'higher-now' && (one.isUp || second.isUp) && !isDay(observer, nowUtcMs);

const comparedWords = (
  pair: Pair,
  { first = 'apart', within }: Wished,
  best: ReturnType<typeof bestInNight>,
  isOfNow: boolean,
): string =>
  [
    ...(best === null || isOfNow ? [pairWords(pair, first, within)] : []),
    ...(best === null ? [] : [bestWords(best, pair.zone)]),
  ].join(' ');

export const compare = defineCommand({
  name: 'compare',
  summary: 'Two targets at an hour: the higher, the one to begin with, how far apart',
  options: {
    target: text('The one: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    other: text('The other', { complete: 'target' }),
    at: optional(text('When: now, tonight 22:30, tomorrow 4am, 2026-12-13T21:00', { complete: 'time', maxLength: 80 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    first: optional(choice('Say this first (usual: how far apart)', COMPARED)),
    within: optional(number('Say first whether they are within so many degrees', { min: 0, max: 180 })),
  },
  examples: [
    'compare Moon other:Jupiter at:"tomorrow 2am" site:52.71,0.12',
    'compare Saturn other:Mars first:higher site:"Cork, Ireland"',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const { at, site, first, within } = options;
    const rest = { other: options.other, at, first, within: within === undefined ? undefined : String(within) };
    const asked = await targetAtSite(deps, request, { command: 'compare', target: options.target, site, rest });
    if (isProblem(asked)) return apartAnywhere(asked, deps, options, nowUtcMs);
    const other = targetFor(deps, options.other, (name) =>
      commandLine('compare', options.target, { ...rest, other: name, site }),
    );
    if (isProblem(other)) return other;
    const { observer, zone } = asked.where.site;
    const time = timeFor(at ?? (isDay(observer, nowUtcMs) ? 'tonight' : undefined), zone, nowUtcMs);
    if (isProblem(time)) return time;
    const { utcMs } = time;
    const pair = sideBySide([asked.target, other.target], asked.where.site, utcMs);
    const both = [pair.first, pair.second];
    const best = isBestAsked(options)
      ? bestInNight(pair, observer, tonightAt(asked.where.site, nowUtcMs), nowUtcMs)
      : null;
    const isOfNow = isUpNow(pair, options, nowUtcMs);
    return reply({
      title: `${both.map(({ target }) => nameWithAlias(target)).join(' and ')}, ${formatLocalDateTime(utcMs, zone)}`,
      level: both.some(({ isUp }) => isUp) && !isDay(observer, utcMs) ? 'good' : 'info',
      summary: comparedWords(pair, options, best, isOfNow),
      facts: [
        ...both.map((stand) => ({ label: stand.target.name, value: standText(stand, zone) })),
        {
          label: 'Apart',
          value: `${apartText(pair.apartDeg)}, position angle ${Math.round(pair.positionAngleDeg) % 360}°`,
        },
      ],
      notes: [...time.notes, ...other.notes, ...asked.notes],
      pointsAt: both
        .filter(({ place }) => place.altitudeDeg > -1)
        .map(({ target, name }) => ({ what: name, when: { utcMs }, observer, zone, direction: target.body }))
        .concat(
          (best ?? []).map(({ stand, utcMs: bestUtcMs }) => ({
            what: stand.name,
            when: { utcMs: bestUtcMs },
            observer,
            zone,
            direction: stand.target.body,
          })),
        ),
      data: {
        utc: isoUtc(utcMs),
        targets: both.map(standData),
        separationDeg: rounded(pair.apartDeg, 4),
        positionAngleDeg: rounded(pair.positionAngleDeg, 3),
      },
    });
  },
});
