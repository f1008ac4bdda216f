/** `bright`: what bright star or planet stands in a direction at an hour, for who saw one and does not know it. */
import { brightNamedStars, nameWithAlias, resolveTarget, type Target } from '../catalogue/index.js';
import { offDeg, standsTowards, TOWARDS, towardsWords, type Towards } from '../evening/towards.js';
import { isProblem } from '../ground/problem.js';
import { fittingChoices, reply, type Outcome } from '../reply/reply.js';
import { direction, degrees, isoUtc, magnitudeText, rounded } from '../reply/wording.js';
import { apparentMagnitude } from '../sky/brightness.js';
import { horizontalOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { Observer, UtcMs } from '../sky/types.js';
import { formatLocalDateTime } from '../times/index.js';
import { commandLine } from './asking/question-parts.js';
import { atOption, siteAtTime, siteOption } from './asking/site-at-time.js';
import { choice, defineCommand, flag, optional, type Deps } from './core/command.js';

const WANDERERS = ['Moon', 'Venus', 'Jupiter', 'Mars', 'Saturn', 'Mercury'] as const;
/** Fainter ones nobody calls bright, nor in daylight those that show only by night; common practice, no source. */
const FAINTEST_MAG = 2.2;
const FAINTEST_BY_DAY_MAG = -3.5;
const DAY_SUN_DEG = -3;
const LEAST_DEG = 2;
/** Lower than this is called low; common practice, no source. */
const LOW_DEG = 30;
const MOST_SHOWN = 5;

interface Bright {
  readonly target: Target;
  readonly magnitude: number;
}

const wanderers = ({ catalogue }: Deps, utcMs: UtcMs): readonly Bright[] =>
  WANDERERS.flatMap((name) => {
    const found = resolveTarget(catalogue, name);
    return isProblem(found) ? [] : [{ target: found.target, magnitude: apparentMagnitude(name, utcMs) }];
  });

/** The brightest, planets always among them; of what shines steadily they stand first. */
const shownOf = <One extends Bright>(there: readonly One[], isSteady: boolean): readonly One[] => {
  const isPlanet = ({ target }: One): boolean => target.kind === 'planet';
  const planets = there.filter(isPlanet);
  const others = there.filter((one) => !isPlanet(one)).slice(0, Math.max(0, MOST_SHOWN - planets.length));
  const shown = [...planets, ...others];
  return isSteady ? shown : shown.sort((a, b) => a.magnitude - b.magnitude);
};

/** The part of the sky that somebody names is often the next one. */
const ASIDE_DEG = 90;

/** A planet beside the part of the sky that was named. */
const planetAside = (deps: Deps, observer: Observer, utcMs: UtcMs, towards: Towards | null): string | null => {
  if (towards === null || towards === 'overhead') return null;
  const [one] = wanderers(deps, utcMs)
    .filter(({ target, magnitude }) => target.kind === 'planet' && magnitude <= FAINTEST_MAG)
    .map((planet) => ({ ...planet, at: horizontalOf(planet.target.body, observer, utcMs) }))
    .filter(({ at }) => at.altitudeDeg >= LEAST_DEG && offDeg(towards, at) <= ASIDE_DEG)
    .sort((a, b) => offDeg(towards, a.at) - offDeg(towards, b.at));
  return one === undefined
    ? null
    : `${one.target.name}, ${degrees(one.at.altitudeDeg)} high in the ${direction(one.at.azimuthDeg)}`;
};

const steadyNote = (aside: string | null): string =>
  `What shines steadily is most often a planet; ${aside === null ? 'none stands there then' : `the nearest to there is ${aside}`}.`;

export const bright = defineCommand({
  name: 'bright',
  summary: 'Which bright star or planet is that, in a direction?',
  options: {
    towards: optional(choice('In which part of the sky it stands', TOWARDS)),
    height: optional(choice('Low (under 30°) or high', ['low', 'high'])),
    steady: optional(flag('It does not twinkle: planets first')),
    at: atOption,
    site: siteOption,
  },
  bare: 'towards',
  examples: ['bright east at:"tonight 20:00" site:52.71,0.12'],
  run: async (deps, request): Promise<Outcome> => {
    const asked = await siteAtTime(deps, request);
    if (isProblem(asked)) return asked;
    const { where, utcMs, notes } = asked;
    const { observer, zone } = where.site;
    const towards = request.options.towards ?? null;
    const isDay = horizontalOf(SUN, observer, utcMs).altitudeDeg > DAY_SUN_DEG;
    const isThere = standsTowards(towards, observer);
    const { height } = request.options;
    const isSoHigh = (altitudeDeg: number): boolean =>
      height === undefined || altitudeDeg < LOW_DEG === (height === 'low');
    const there = [
      ...wanderers(deps, utcMs),
      ...brightNamedStars(deps.catalogue).map((target) => ({ target, magnitude: target.magnitude })),
    ]
      .filter(({ magnitude }) => magnitude <= (isDay ? FAINTEST_BY_DAY_MAG : FAINTEST_MAG))
      .map((one) => ({ ...one, at: horizontalOf(one.target.body, observer, utcMs) }))
      .filter(
        ({ target, at }) =>
          at.altitudeDeg >= LEAST_DEG && isSoHigh(at.altitudeDeg) && isThere({ target, bestUtcMs: utcMs }),
      )
      .sort((a, b) => a.magnitude - b.magnitude);
    const isSteady = request.options.steady === true;
    const seen = shownOf(there, isSteady);
    const side = towards === null ? 'in the sky' : towardsWords(towards);
    const when = formatLocalDateTime(utcMs, zone);
    const first = seen.find(({ target }) => target.kind !== 'moon');
    const aside = isSteady ? planetAside(deps, observer, utcMs, towards) : null;
    const placeOfOne = ({ at }: (typeof seen)[number]): string =>
      `${degrees(at.altitudeDeg)} high in the ${direction(at.azimuthDeg)}`;
    return reply({
      title: `Bright ${side}, ${when}`,
      level: first === undefined ? 'info' : 'good',
      summary:
        first === undefined
          ? `No bright star or planet stands ${side} then${isDay ? ', or daylight hides it' : ''}.`
          : `${isSteady && first.target.kind !== 'planet' ? `No planet stands ${side} then; brightest there` : 'Most likely'} ${nameWithAlias(first.target)}: ${placeOfOne(first)}.`,
      facts: seen.map((one) => ({
        label: nameWithAlias(one.target),
        value: `${placeOfOne(one)}; ${one.target.kind === 'moon' ? 'the Moon' : `mag ${magnitudeText(one.magnitude)}`}`,
      })),
      notes: [
        ...(isSteady && !seen.some(({ target }) => target.kind === 'planet') ? [steadyNote(aside)] : []),
        ...(first === undefined
          ? []
          : [`The ${isSteady ? 'planets' : 'brightest'} first. What moves or blinks is an aircraft or a satellite.`]),
        ...notes,
      ],
      choices: fittingChoices(
        seen.slice(0, 3).map(({ target }) => ({
          label: `More on ${target.name}`,
          run: commandLine('up', target.name, { site: request.options.site }),
        })),
      ),
      pointsAt: seen.map(({ target }) => ({
        what: target.name,
        when: { utcMs },
        observer,
        zone,
        direction: target.body,
      })),
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
