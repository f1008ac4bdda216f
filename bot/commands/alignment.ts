/** `alignment`: the two or three bright stars that best fix the mount's orientation here and now, in the order to slew. */
import { cautionText } from '../cautions/cautions.js';
import { tidy } from '../ground/tidy.js';
import { isProblem, problem, type Problem } from '../ground/problem.js';
import { resolveTarget, targetProblemMessage, brightNamedStars, type BrightNamedStar } from '../catalogue/index.js';
import {
  chooseAlignmentStars,
  within95Arcmin,
  type AlignmentCandidate,
  type AlignmentChoice,
} from '../pointing/stars/alignment-stars.js';
import { horizonAltitudeDegAt } from '../pointing/horizon/horizon-profile.js';
import type { MountKind } from '../pointing/mount/mount.js';
import { mountSky } from '../pointing/mount/mount-sky.js';
import { LOWEST_ALTITUDE_DEG, unfitReason } from '../pointing/stars/star-visibility.js';
import { fittingChoices, NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { degrees, direction, isoUtc, listed, magnitudeText, rounded } from '../reply/wording.js';
import { separationDeg, unitFromHorizontal } from '../sky/angles.js';
import { horizonFrame } from '../sky/horizon-frame.js';
import { moonAt } from '../sky/moon.js';
import { sunUpAltitudeDeg } from '../sky/sun-safety.js';
import { horizontalOf, placeOf } from '../sky/place.js';
import { SUN, twilights } from '../sky/twilight.js';
import type { Place, UtcMs } from '../sky/types.js';
import { formatLocalDateTime, formatLocalTime, nightsFrom } from '../times/index.js';
import { choice, defineCommand, integer, optional, text, type Deps } from './core/command.js';
import { mountFor, mountOption } from './asking/mount-for.js';
import { commandLine } from './asking/question-parts.js';
import type { ResolvedSite } from './asking/resolve-site.js';
import { atOption, siteAtTime, siteOption } from './asking/site-at-time.js';

/** Sets of three are tried among so many; beyond them nothing is gained. */
const CANDIDATES_TRIED = 28;
const MOST_EXCLUDED = 12;

interface Offered {
  readonly star: BrightNamedStar;
  readonly place: Place;
}

/** Ids of the stars not wanted: "Vega, Deneb". */
const excludedIds = (deps: Deps, not: string | undefined): ReadonlySet<string> | Problem => {
  const ids = new Set<string>();
  const names = (not ?? '')
    .split(/[,;]|\band\b/iu)
    .map((name) => name.trim())
    .filter((name) => name !== '');
  if (names.length > MOST_EXCLUDED)
    return problem('too-many-stars', `not: names ${names.length} stars; at most ${MOST_EXCLUDED} can be left out.`);
  for (const name of names) {
    const found = resolveTarget(deps.catalogue, name);
    if (isProblem(found)) return problem(found.problem, `not: ${targetProblemMessage(found)}`);
    if (found.target.kind !== 'star' && found.target.kind !== 'double-star') {
      return problem(
        'not-a-star',
        `not: "${tidy(name, 30)}" reads as ${found.target.name}, which is no star. Name stars to leave out, such as not:"Capella, Deneb".`,
      );
    }
    ids.add(found.target.id);
  }
  return ids;
};

const fitStars = (
  deps: Deps,
  { site: { observer }, horizon }: ResolvedSite,
  utcMs: UtcMs,
  excluded: ReadonlySet<string>,
): Offered[] => {
  const moon = moonAt(observer, utcMs);
  const sunAltitudeDeg = horizontalOf(SUN, observer, utcMs).altitudeDeg;
  const frame = horizonFrame(observer, utcMs);
  return brightNamedStars(deps.catalogue).flatMap((star) => {
    // The cheap look first: most stars are down, and a whole place costs a hundred times more.
    if (excluded.has(star.id) || frame.altitudeDegOf(frame.directionOf(star.body)) < LOWEST_ALTITUDE_DEG - 1) return [];
    const place = placeOf(star.body, observer, utcMs);
    const reason = unfitReason({
      magnitude: star.magnitude,
      altitudeDeg: place.altitudeDeg,
      decDeg: place.ofDate.decDeg,
      sunAltitudeDeg,
      horizonDeg: horizonAltitudeDegAt(horizon, place.azimuthDeg),
      moonSeparationDeg: moon.place.altitudeDeg > 0 ? separationDeg(moon.place.ofDate, place.ofDate) : null,
      moonIlluminatedFraction: moon.illuminatedFraction,
    });
    return reason === null ? [{ star, place }] : [];
  });
};

const SIDE_AZIMUTH_DEG = { north: 0, east: 90, south: 180, west: 270 } as const;
type Side = keyof typeof SIDE_AZIMUTH_DEG | 'both';

/** Whoever asks for the east wants none that is nearly north; common practice, no source. */
const SIDE_REACH_DEG = 70;

const isOnSide =
  (side: Side | undefined) =>
  ({ place }: Offered): boolean =>
    side === undefined ||
    side === 'both' ||
    Math.abs(((place.azimuthDeg - SIDE_AZIMUTH_DEG[side] + 540) % 360) - 180) <= SIDE_REACH_DEG;

const candidateOf = (mount: MountKind, where: ResolvedSite, utcMs: UtcMs) => {
  const sky = mountSky(mount, where.site.observer, utcMs);
  return ({ star, place }: Offered): AlignmentCandidate => ({
    name: star.name,
    magnitude: star.magnitude,
    direction: unitFromHorizontal(place),
    inMountFrame: sky.directionAt(place.ofDate, 0),
  });
};

/** An alignment takes about so long; a star that crosses the meridian meanwhile turns a German mount over. Common practice, no source. */
const CROSSING_HOURS = { before: 0.6, after: 0.1 } as const;
const isAboutToCross = ({ place: { hourAngleHours } }: Offered): boolean =>
  hourAngleHours > -CROSSING_HOURS.before && hourAngleHours < CROSSING_HOURS.after;

/** The set for the mount: on a German one without stars about to cross the meridian, as long as three are left. */
const chooseFor = (
  mount: MountKind,
  where: ResolvedSite,
  utcMs: UtcMs,
  offered: readonly Offered[],
  { wanted, isOfBothSides }: { readonly wanted: 2 | 3; readonly isOfBothSides: boolean },
): AlignmentChoice | null => {
  const asCandidate = candidateOf(mount, where, utcMs);
  const eastern = new Set(offered.filter(({ place }) => place.hourAngleHours < 0).map(({ star }) => star.name));
  const isEachSide = (stars: readonly AlignmentCandidate[]): boolean =>
    stars.some(({ name }) => eastern.has(name)) && stars.some(({ name }) => !eastern.has(name));
  const choose = (stars: readonly Offered[], count: 2 | 3): AlignmentChoice | null =>
    chooseAlignmentStars(
      mount,
      stars.slice(0, CANDIDATES_TRIED).map(asCandidate),
      count,
      isOfBothSides ? isEachSide : undefined,
    );
  const calm = mount === 'german' ? offered.filter((star) => !isAboutToCross(star)) : offered;
  return choose(calm, wanted) ?? choose(offered, wanted) ?? choose(calm, 2) ?? choose(offered, 2);
};

/** Why there are no stars to offer, and when there will be. */
const tooFew = (where: ResolvedSite, utcMs: UtcMs, offered: readonly Offered[], hasExcluded: boolean): string => {
  const { observer, zone } = where.site;
  if (horizontalOf(SUN, observer, utcMs).altitudeDeg > -9) {
    const duskUtcMs = nightsFrom(utcMs, where.site)
      .map(({ startUtcMs, endUtcMs }) => twilights(observer, startUtcMs, endUtcMs).civil?.duskUtcMs ?? null)
      .find((dusk) => dusk !== null && dusk > utcMs);
    return duskUtcMs !== undefined && duskUtcMs !== null
      ? `Too bright for stars: the first ones show from about ${formatLocalTime(duskUtcMs, zone)}.`
      : 'Too bright for stars.';
  }
  const names =
    offered.length === 0 ? 'no bright star stands' : `only ${listed(offered.map(({ star }) => star.name))} stands`;
  return `Too few stars: ${names} between 20° and 75° high, clear of your horizon, the Moon and the pole.${hasExcluded ? ' Allow some of those you left out.' : ' Try an hour later.'}`;
};

const ALIGNING_BY_DAY =
  'The Sun is up: a mount that is not yet aligned goes where it will, across the Sun too. Wait for the stars.';

export const alignment = defineCommand({
  name: 'alignment',
  summary: 'Which stars should I align on?',
  options: {
    site: siteOption,
    at: atOption,
    mount: mountOption,
    stars: optional(integer('How many stars: 2 or 3 (3 when not said)', { min: 2, max: 3 })),
    side: optional(
      choice('Only on one side of the sky; both: some on each side of the meridian', [
        'north',
        'east',
        'south',
        'west',
        'both',
      ]),
    ),
    not: optional(text('Stars you cannot see from where you stand, such as "Capella, Deneb"', { complete: 'target' })),
  },
  bare: 'site',
  examples: ['alignment 52.71,0.12', 'alignment site:"Cork, Ireland" at:"tonight 21:00" stars:2 not:"Capella"'],
  run: async (deps, request): Promise<Outcome> => {
    const asked = await siteAtTime(deps, request);
    if (isProblem(asked)) return asked;
    const { where, utcMs } = asked;
    const { observer, zone } = where.site;
    const { options } = request;
    const excluded = excludedIds(deps, options.not);
    if (isProblem(excluded)) return excluded;
    const mount = await mountFor(request, options.mount);
    const offered = fitStars(deps, where, utcMs, excluded).filter(isOnSide(options.side));
    const wanted = options.stars === 2 ? 2 : 3;
    const chosen = chooseFor(mount, where, utcMs, offered, { wanted, isOfBothSides: options.side === 'both' });
    const { notes } = asked;
    const title = `Stars to align on${options.at === undefined ? '' : `, ${formatLocalDateTime(utcMs, zone)}`}`;
    if (chosen === null) {
      const isDay = horizontalOf(SUN, observer, utcMs).altitudeDeg > sunUpAltitudeDeg(observer);
      return reply({
        title,
        level: isDay ? 'caution' : 'info',
        cautions: isDay ? [`${ALIGNING_BY_DAY} ${cautionText('sun')}`] : [],
        summary: tooFew(where, utcMs, offered, excluded.size > 0),
        notes,
        pointsAt: NOWHERE,
        data: { utc: isoUtc(utcMs), mount, stars: [], expectedErrorArcmin: null },
      });
    }
    const isShort = chosen.stars.length < wanted;
    const within95 = within95Arcmin(chosen.expectedErrorArcmin);
    const inOrder = chosen.stars.map(({ name }) => offered.find(({ star }) => star.name === name)!);
    const choices = fittingChoices(
      inOrder.map(({ star }) => ({
        label: `I cannot see ${star.name}`,
        run: commandLine('alignment', '', {
          site: options.site,
          at: options.at,
          mount: options.mount,
          stars: options.stars,
          side: options.side,
          not: [options.not, star.name].filter(Boolean).join(', '),
        }),
      })),
    );
    return reply({
      title,
      level: isShort ? 'caution' : 'good',
      summary: `${isShort ? `Only two stars stand well ${options.at === undefined ? 'just now' : 'then'}. ` : ''}In this order: ${listed(
        inOrder.map(({ star }) => star.name),
        'then',
      )}. Then 95 of 100 targets should land within ${Math.max(1, Math.round(within95))}′.`,
      facts: inOrder.map(({ star, place }, i) => ({
        label: `${i + 1}. ${star.name}`,
        value: `${degrees(place.altitudeDeg)} high, ${direction(place.azimuthDeg)}; magnitude ${magnitudeText(star.magnitude)}`,
      })),
      notes: [
        ...(isShort
          ? ['With two stars a slip on one goes unseen: check on a third later, or ask again in an hour.']
          : []),
        'Counted: how well you centre and where the stars stand. Not counted: cone error, play in the gears, a tripod that settles.',
        'If one is hidden, say so with not: and its name. Centre each star the same way, ending with the same two keys.',
        ...notes,
      ],
      pointsAt: inOrder
        .slice(0, 1)
        .map(({ star }) => ({ what: star.name, when: { utcMs }, observer, zone, direction: star.body })),
      choices,
      data: {
        utc: isoUtc(utcMs),
        mount,
        stars: inOrder.map(({ star, place }) => ({
          name: star.name,
          altitudeDeg: rounded(place.altitudeDeg, 4),
          azimuthDeg: rounded(place.azimuthDeg, 4),
          magnitude: rounded(star.magnitude, 2),
        })),
        expectedErrorArcmin: rounded(chosen.expectedErrorArcmin, 2),
        within95Arcmin: rounded(within95, 2),
      },
    });
  },
});
