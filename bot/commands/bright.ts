/** `bright`: what bright star or planet stands in a direction at an hour, for who saw one and does not know it. */
import { brightNamedStars, nameWithAlias, resolveTarget, type Target } from '../catalogue/index.js';
import { standsTowards, TOWARDS, towardsWords } from '../evening/towards.js';
import { isProblem } from '../ground/problem.js';
import { fittingChoices, reply, type Outcome } from '../reply/reply.js';
import { direction, degrees, isoUtc, magnitudeText, rounded } from '../reply/wording.js';
import { apparentMagnitude } from '../sky/brightness.js';
import { horizontalOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { UtcMs } from '../sky/types.js';
import { formatLocalDateTime } from '../times/index.js';
import { commandLine } from './asking/question-parts.js';
import { atOption, siteAtTime, siteOption } from './asking/site-at-time.js';
import { choice, defineCommand, optional, type Deps } from './core/command.js';

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

export const bright = defineCommand({
  name: 'bright',
  summary: 'Which bright star or planet is that, in a direction?',
  options: {
    towards: optional(choice('In which part of the sky it stands', TOWARDS)),
    height: optional(choice('Low (under 30°) or high', ['low', 'high'])),
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
    const seen = [
      ...wanderers(deps, utcMs),
      ...brightNamedStars(deps.catalogue).map((target) => ({ target, magnitude: target.magnitude })),
    ]
      .filter(({ magnitude }) => magnitude <= (isDay ? FAINTEST_BY_DAY_MAG : FAINTEST_MAG))
      .map((one) => ({ ...one, at: horizontalOf(one.target.body, observer, utcMs) }))
      .filter(
        ({ target, at }) =>
          at.altitudeDeg >= LEAST_DEG && isSoHigh(at.altitudeDeg) && isThere({ target, bestUtcMs: utcMs }),
      )
      .sort((a, b) => a.magnitude - b.magnitude)
      .slice(0, MOST_SHOWN);
    const side = towards === null ? 'in the sky' : towardsWords(towards);
    const when = formatLocalDateTime(utcMs, zone);
    const first = seen.find(({ target }) => target.kind !== 'moon');
    const placeOfOne = ({ at }: (typeof seen)[number]): string =>
      `${degrees(at.altitudeDeg)} high in the ${direction(at.azimuthDeg)}`;
    return reply({
      title: `Bright ${side}, ${when}`,
      level: first === undefined ? 'info' : 'good',
      summary:
        first === undefined
          ? `No bright star or planet stands ${side} then${isDay ? ', or daylight hides it' : ''}.`
          : `Most likely ${nameWithAlias(first.target)}: ${placeOfOne(first)}.`,
      facts: seen.map((one) => ({
        label: nameWithAlias(one.target),
        value: `${placeOfOne(one)}; ${one.target.kind === 'moon' ? 'the Moon' : `mag ${magnitudeText(one.magnitude)}`}`,
      })),
      notes: [
        ...(first === undefined ? [] : ['The brightest first. What moves or blinks is an aircraft or a satellite.']),
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
