/** `bright`: what bright star or planet stands in a direction at an hour, for who saw one and does not know it. */
import { nameWithAlias } from '../catalogue/index.js';
import { isTowards, offDeg, standsTowards, TOWARDS, towardsWords, type Towards } from '../evening/towards.js';
import { isProblem, problem, type Choice, type Problem } from '../ground/problem.js';
import { fittingChoices, reply, type Fact, type Outcome } from '../reply/reply.js';
import { direction, degrees, isoUtc, magnitudeText, rounded } from '../reply/wording.js';
import { airmass } from '../sky/airmass.js';
import { moonAt } from '../sky/moon.js';
import { horizontalOf } from '../sky/place.js';
import { SUN, twilights } from '../sky/twilight.js';
import type { Horizontal, Observer, UtcMs } from '../sky/types.js';
import { formatLocalDateTime, tonightAt } from '../times/index.js';
import { commandLine, siteNotes, wholeSecond } from './asking/question-parts.js';
import { siteFor } from './asking/resolve-site.js';
import { atOption, siteAtTime, siteOption, type SiteAtTime } from './asking/site-at-time.js';
import { brightStars, wanderers, type Bright } from './bright/bright-ones.js';
import { brightByDay } from './bright/by-day.js';
import { constellationOverhead } from './bright/overhead.js';
import { brightNear, SIDES } from './bright/near-target.js';
import { COLOUR_NAMES, colourOf, COLOURS, type Colour } from './bright/star-colours.js';
import { choice, defineCommand, flag, optional, text, type Deps, type Request } from './core/command.js';

/** Fainter ones nobody calls bright, nor in daylight those that show only by night; common practice, no source. */
const FAINTEST_MAG = 2.2;
const FAINTEST_BY_DAY_MAG = -3.5;
const DAY_SUN_DEG = -3;
const DUSK_SUN_DEG = -6;
const LEAST_DEG = 2;
/** Lower than this is called low; common practice, no source. */
const LOW_DEG = 30;
const MOST_SHOWN = 5;

const isPlanet = ({ target }: Bright): boolean => target.kind === 'planet';

/** The likeliest, planets always among them; of what shines steadily they stand first. */
const shownOf = <One extends Placed>(there: readonly One[], isSteady: boolean): readonly One[] => {
  const planets = there.filter(isPlanet);
  const others = there.filter((one) => !isPlanet(one)).slice(0, Math.max(0, MOST_SHOWN - planets.length));
  return isSteady ? [...planets, ...others] : there.filter((one) => isPlanet(one) || others.includes(one));
};

/** Higher than this nobody says which way it stands; common practice, no source. */
const NEARLY_OVERHEAD_DEG = 60;
const isHigh = ({ at }: Placed): number => Number(at.altitudeDeg >= NEARLY_OVERHEAD_DEG);
/** What so many degrees aside of the named direction, and another colour than the one seen, are worth in magnitudes; common practice, no source. */
const DEG_A_MAG = 40;
const OTHER_COLOUR_MAG = 2.5;
/** Low down the air reddens what is yellow. */
const NEXT_COLOUR_MAG = 1.2;

/** How unlike it is to the one that was seen: faint, aside of where it was said, of another colour. */
const unlikeMag = (one: Placed, towards: Towards | null, colour: Colour | undefined): number => {
  const aside = towards === null || towards === 'overhead' ? 0 : offDeg(towards, one.at) / DEG_A_MAG;
  const own = colourOf(one.target);
  if (colour === undefined || own === colour) return dimmed(one) + aside;
  const isNext = colour === 'yellow' || (own === 'yellow' && one.at.altitudeDeg < LOW_DEG);
  return dimmed(one) + aside + (isNext ? NEXT_COLOUR_MAG : OTHER_COLOUR_MAG);
};
const sideOf = (towards: Towards | null): string => (towards === null ? 'in the sky' : towardsWords(towards));
/** The likeliest first; what is nearly overhead is in no part of the sky, and comes last. */
const orderOf =
  (towards: Towards | null, colour: Colour | undefined) =>
  (a: Placed, b: Placed): number => {
    const high = towards === null || towards === 'overhead' ? 0 : isHigh(a) - isHigh(b);
    return high || unlikeMag(a, towards, colour) - unlikeMag(b, towards, colour);
  };

/** What clear air takes of a star's light at the zenith, at sea level; common practice, no source. */
const EXTINCTION_MAG = 0.2;

/** As bright as it looks: low down the air takes two or three magnitudes. */
const dimmed = ({ magnitude, at }: Placed): number =>
  magnitude + EXTINCTION_MAG * ((airmass(Math.max(0, at.altitudeDeg)) ?? 1) - 1);

/** The part of the sky that somebody names is often the next one. */
const ASIDE_DEG = 90;

/** A planet beside the part of the sky that was named. */
const planetAside = (planets: readonly Placed[], towards: Towards | null): string | null => {
  if (towards === null || towards === 'overhead') return null;
  const [one] = planets
    .filter(
      ({ magnitude, at }) =>
        magnitude <= FAINTEST_MAG && at.altitudeDeg >= LEAST_DEG && offDeg(towards, at) <= ASIDE_DEG,
    )
    .sort((a, b) => offDeg(towards, a.at) - offDeg(towards, b.at));
  return one === undefined
    ? null
    : `${one.target.name}, ${degrees(one.at.altitudeDeg)} high in the ${direction(one.at.azimuthDeg)}`;
};

/** So many magnitudes brighter it is what was meant, a little aside of the named part of the sky; common practice, no source. */
const OUTSHINES_MAG = 2.5;
const NEAR_ASIDE_DEG = 60;

/** A planet that outshines all that stands where it was said, and stands not far from there; null: none. */
const outshining = (planets: readonly Placed[], seen: readonly Placed[], towards: Towards | null): Placed | null => {
  if (towards === null || towards === 'overhead') return null;
  const brightest = Math.min(FAINTEST_MAG, ...seen.map(({ magnitude }) => magnitude));
  return (
    planets.find(
      ({ magnitude, at }) =>
        magnitude < brightest - OUTSHINES_MAG &&
        at.altitudeDeg >= LEAST_DEG &&
        !isTowards(towards, at) &&
        offDeg(towards, at) <= NEAR_ASIDE_DEG,
    ) ?? null
  );
};

const steadyNote = (aside: string | null): string =>
  `What shines steadily is most often a planet; ${aside === null ? 'none stands there then' : `the nearest to there is ${aside}`}.`;

interface Placed extends Bright {
  readonly at: Horizontal;
}

interface Sought {
  readonly isSteady: boolean;
  readonly colour: Colour | undefined;
  readonly isColourThere: boolean;
  /** "in the south". */
  readonly side: string;
  readonly isOverhead: boolean;
  readonly isDay: boolean;
}

const placeOfOne = ({ at }: Placed): string => `${degrees(at.altitudeDeg)} high in the ${direction(at.azimuthDeg)}`;

/** Which it most likely is, and why it may be none of that kind or colour. */
const summaryOf = (
  first: Placed | undefined,
  { isSteady, colour, isColourThere, side, isOverhead, isDay }: Sought,
): string => {
  if (first === undefined)
    return `No bright star or planet stands ${side} then${isDay ? ', or daylight hides it' : ''}.`;
  const told = `${nameWithAlias(first.target)}: ${placeOfOne(first)}.`;
  if (isSteady && first.target.kind !== 'planet') return `No planet stands ${side} then; brightest there ${told}`;
  if (colour !== undefined && colourOf(first.target) !== colour)
    return `Most likely ${told} It is not ${colour} itself${isColourThere ? '' : ', and no bright one there is'}; low down the air reddens any.`;
  return isOverhead ? `Brightest up there: ${told}` : `Most likely ${told}`;
};

const moreOn = (seen: readonly Placed[], site: string | undefined): readonly Choice[] =>
  seen
    .slice(0, 3)
    .map(({ target }) => ({ label: `More on ${target.name}`, run: commandLine('up', target.name, { site }) }));

const factOf = (one: Placed): Fact => ({
  label: nameWithAlias(one.target),
  value: `${placeOfOne(one)}; ${one.target.kind === 'moon' ? 'the Moon' : `mag ${magnitudeText(one.magnitude)}`}`,
});

/** Whatever it was that shone: beside the Moon all else is faint. Null: it does not stand there. */
const moonFirst = (seen: readonly Placed[], observer: Observer, utcMs: UtcMs): string | null => {
  const moon = seen.find(({ target }) => target.kind === 'moon');
  const next = seen.find(({ target }) => target.kind !== 'moon');
  if (moon === undefined) return null;
  const lit = Math.round(moonAt(observer, utcMs).illuminatedFraction * 100);
  const other = next === undefined ? '' : ` If it was a star: ${nameWithAlias(next.target)}, ${placeOfOne(next)}.`;
  return `Most likely the Moon, ${lit} % lit: ${placeOfOne(moon)}.${other}`;
};

const notesOf = (seen: readonly Placed[], isSteady: boolean, aside: string | null): readonly string[] => [
  ...(isSteady && !seen.some(isPlanet) ? [steadyNote(aside)] : []),
  ...(seen.every(({ target }) => target.kind === 'moon')
    ? []
    : [`The ${isSteady ? 'planets' : 'likeliest'} first. What moves or blinks is an aircraft or a satellite.`]),
];

const worthOverhead = (site: string | undefined): Choice => ({
  label: 'Worth seeing overhead',
  run: commandLine('tonight', '', { towards: 'overhead', site }),
});

/** The coming dawn or dusk, when the Sun is 12° down: the hour at which the brightest are left. Tonight is now, or from dusk on. */
const atTwilight = async (
  deps: Deps,
  request: Request<{ readonly site?: string | undefined; readonly at?: string | undefined }>,
): Promise<SiteAtTime | Problem | null> => {
  const { options, nowUtcMs } = request;
  const said = options.at?.toLowerCase();
  if (said !== 'dawn' && said !== 'dusk' && said !== 'tonight') return null;
  const where = await siteFor(deps, request, options.site);
  if (isProblem(where)) return where;
  const isNight = horizontalOf(SUN, where.site.observer, nowUtcMs).altitudeDeg <= DUSK_SUN_DEG;
  if (said === 'tonight' && isNight) return { where, utcMs: wholeSecond(nowUtcMs), notes: siteNotes(where) };
  const { startUtcMs, endUtcMs } = tonightAt(where.site, nowUtcMs);
  const { nautical } = twilights(where.site.observer, startUtcMs, endUtcMs);
  const utcMs = said === 'dawn' ? nautical?.dawnUtcMs : nautical?.duskUtcMs;
  return utcMs === null || utcMs === undefined
    ? problem(
        'no-such-hour',
        `There is no ${said === 'tonight' ? 'night' : said} to speak of there in these days: name an hour, such as bright at:21:00.`,
      )
    : { where, utcMs: wholeSecond(utcMs), notes: siteNotes(where) };
};

/** Straight up at night, the constellation there is named. */
const overheadWords = (observer: Observer, utcMs: UtcMs, isNamed: boolean): string =>
  isNamed ? `${constellationOverhead(observer, utcMs)} stands overhead. ` : '';

export const bright = defineCommand({
  name: 'bright',
  summary: 'Which bright star or planet is that, in a direction?',
  options: {
    towards: optional(choice('In which part of the sky it stands', TOWARDS)),
    height: optional(choice('Low (under 30°) or high', ['low', 'high'])),
    colour: optional(choice('Which colour it has: those come first', COLOURS, COLOUR_NAMES)),
    steady: optional(flag('It does not twinkle: planets first')),
    thing: optional(flag('Whatever shone, not a star for certain: the Moon first')),
    near: optional(text('Near which target: the bright ones beside it', { complete: 'target' })),
    side: optional(choice('With near: on which side of it', SIDES)),
    at: atOption,
    site: siteOption,
  },
  bare: 'towards',
  examples: ['bright east at:"tonight 20:00" site:52.71,0.12', 'bright near:Pleiades side:below site:52.71,0.12'],
  run: async (deps, request): Promise<Outcome> => {
    const asked = (await atTwilight(deps, request)) ?? (await siteAtTime(deps, request));
    if (isProblem(asked)) return asked;
    const { near, side: nearSide } = request.options;
    if (near !== undefined)
      return brightNear(deps, asked, {
        near,
        side: nearSide,
        colour: request.options.colour,
        isHourFree: request.options.at === undefined,
        site: request.options.site,
      });
    const { where, utcMs, notes } = asked;
    const { observer, zone } = where.site;
    const towards = request.options.towards ?? null;
    const isDay = horizontalOf(SUN, observer, utcMs).altitudeDeg > DAY_SUN_DEG;
    const isThere = standsTowards(towards, observer);
    const { height, colour } = request.options;
    const isSoHigh = (altitudeDeg: number): boolean =>
      height === undefined || altitudeDeg < LOW_DEG === (height === 'low');
    const placed = (ones: readonly Bright[]): readonly Placed[] =>
      ones.map((one) => ({ ...one, at: horizontalOf(one.target.body, observer, utcMs) }));
    const isBright = ({ magnitude }: Bright): boolean => magnitude <= (isDay ? FAINTEST_BY_DAY_MAG : FAINTEST_MAG);
    const moving = placed(wanderers(deps, utcMs));
    const planets = moving.filter(isPlanet);
    const there = [...moving.filter(isBright), ...placed(brightStars(deps).filter(isBright))]
      .filter(
        ({ target, at }) =>
          at.altitudeDeg >= LEAST_DEG && isSoHigh(at.altitudeDeg) && isThere({ target, bestUtcMs: utcMs }),
      )
      .sort(orderOf(towards, colour));
    const isSteady = request.options.steady === true;
    const shown = shownOf(there, isSteady);
    const isColourThere = there.some(({ target }) => colourOf(target) === colour);
    const brighter = colour === undefined ? outshining(planets, there, towards) : null;
    const seen = brighter === null || !isSoHigh(brighter.at.altitudeDeg) ? shown : [brighter, ...shown];
    const side = sideOf(towards);
    const when = formatLocalDateTime(utcMs, zone);
    const first = seen.find(({ target }) => target.kind !== 'moon');
    const isOverhead = towards === 'overhead';
    const constellation = overheadWords(observer, utcMs, isOverhead && !isDay);
    const day = brightByDay(observer, utcMs, towards);
    const aside = isSteady ? planetAside(planets, towards) : null;
    return reply({
      title: `Bright ${side}, ${when}`,
      level: first === undefined || day.isDay ? 'info' : 'good',
      summary: day.before(
        (request.options.thing === true ? moonFirst(seen, observer, utcMs) : null) ??
          `${constellation}${summaryOf(first, { isSteady, colour, isColourThere, side, isOverhead, isDay })}`,
      ),
      facts: seen.map(factOf),
      notes: [...notesOf(seen, isSteady, aside), ...notes],
      choices: fittingChoices([
        ...(isOverhead ? [worthOverhead(request.options.site)] : []),
        ...moreOn(seen, request.options.site),
      ]),
      pointsAt: [...day.points, ...seen.map(({ target }) => ({ what: target.name, direction: target.body }))].map(
        (point) => ({ ...point, when: { utcMs }, observer, zone }),
      ),
      data: {
        utc: isoUtc(utcMs),
        seen: seen.map(({ target, magnitude, at }) => ({
          name: target.name,
          magnitude: rounded(magnitude, 2),
          altitudeDeg: rounded(at.altitudeDeg, 4),
          azimuthDeg: rounded(at.azimuthDeg, 4),
        })),
      },
    });
  },
});
