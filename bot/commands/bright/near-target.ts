/** `bright near:…`: which bright star or planet stands near a target, and on which side of it, at an hour when both are up. */
import { nameWithAlias, type Target } from '../../catalogue/index.js';
import { isProblem, type Problem } from '../../ground/problem.js';
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { reply, type Outcome, fittingChoices } from '../../reply/reply.js';
import { degrees, direction, isoUtc, magnitudeText, rounded } from '../../reply/wording.js';
import { cosDeg, wrapDeg180 } from '../../sky/angles.js';
import { horizontalOf } from '../../sky/place.js';
import { bodySeparationDeg } from '../../sky/separation.js';
import { SUN } from '../../sky/twilight.js';
import type { Horizontal, UtcMs } from '../../sky/types.js';
import { formatLocalDateTime, tonightAt } from '../../times/index.js';
import { commandLine, targetFor } from '../asking/question-parts.js';
import type { SiteAtTime } from '../asking/site-at-time.js';
import type { Deps } from '../core/command.js';
import { brightPlanets, brightStars, type Bright } from './bright-ones.js';
import { colourOf, type Colour } from './star-colours.js';

export const SIDES = ['below', 'above', 'left', 'right'] as const;
export type Side = (typeof SIDES)[number];

/** Fainter ones nobody calls bright; common practice, no source. */
const FAINTEST_MAG = 2.6;
/** Farther off nothing is "beside"; common practice, no source. */
const FARTHEST_DEG = 30;
/** So many degrees nearer are worth a magnitude: who says "the star below it" means a bright one; common practice, no source. */
const DEG_A_MAG = 8;
const MOST_SHOWN = 4;
const SAMPLE_MS = 20 * MS_PER_MINUTE;
const LEAST_DEG = 20;
const DARK_SUN_DEG = -6;
const STILL_UP_DEG = 5;

export interface NearQuestion {
  readonly near: string;
  readonly side: Side | undefined;
  readonly colour: Colour | undefined;
  /** No hour was said: that of the night is taken at which it stands well. */
  readonly isHourFree: boolean;
  readonly site: string | undefined;
}

interface Neighbour extends Bright {
  readonly apartDeg: number;
  readonly at: Horizontal;
  /** How much higher it stands than the target, and how far to the right of it, in degrees. */
  readonly upDeg: number;
  readonly rightDeg: number;
}

/** The instant that was asked for, or the first of the night at which the target stands well in the dark; the highest where there is none. */
const instantFor = (target: Target, { where, utcMs }: SiteAtTime, { isHourFree }: NearQuestion): UtcMs => {
  const { observer } = where.site;
  const height = (at: UtcMs): number => horizontalOf(target.body, observer, at).altitudeDeg;
  const isDark = (at: UtcMs): boolean => horizontalOf(SUN, observer, at).altitudeDeg < DARK_SUN_DEG;
  if (!isHourFree || (height(utcMs) > STILL_UP_DEG && isDark(utcMs))) return utcMs;
  const { endUtcMs } = tonightAt(where.site, utcMs);
  let best = utcMs;
  for (let at = utcMs; at < endUtcMs; at += SAMPLE_MS) {
    if (!isDark(at)) continue;
    if (height(at) >= LEAST_DEG) return at;
    if (!isDark(best) || height(at) > height(best)) best = at;
  }
  return best;
};

const IS_ON: Readonly<Record<Side, (one: Neighbour) => boolean>> = {
  below: ({ upDeg, rightDeg }) => upDeg < 0 && -upDeg > Math.abs(rightDeg) / 2,
  above: ({ upDeg, rightDeg }) => upDeg > 0 && upDeg > Math.abs(rightDeg) / 2,
  left: ({ upDeg, rightDeg }) => rightDeg < 0 && -rightDeg > Math.abs(upDeg) / 2,
  right: ({ upDeg, rightDeg }) => rightDeg > 0 && rightDeg > Math.abs(upDeg) / 2,
};

const SAID: Readonly<Record<Side, string>> = {
  below: 'below',
  above: 'above',
  left: 'to the left',
  right: 'to the right',
};

/** "below and to the left". */
const sideWords = (one: Neighbour): string => {
  const words = SIDES.filter((side) => IS_ON[side](one)).map((side) => SAID[side]);
  return words.join(' and ');
};

const neighboursOf = (deps: Deps, target: Target, { where }: SiteAtTime, utcMs: UtcMs): readonly Neighbour[] => {
  const { observer } = where.site;
  const middle = horizontalOf(target.body, observer, utcMs);
  return [...brightPlanets(deps, utcMs), ...brightStars(deps)]
    .filter((one) => one.magnitude <= FAINTEST_MAG && one.target.id !== target.id)
    .map((one) => {
      const at = horizontalOf(one.target.body, observer, utcMs);
      return {
        ...one,
        at,
        apartDeg: bodySeparationDeg(target.body, one.target.body, observer, utcMs),
        upDeg: at.altitudeDeg - middle.altitudeDeg,
        rightDeg: wrapDeg180(at.azimuthDeg - middle.azimuthDeg) * cosDeg(middle.altitudeDeg),
      };
    })
    .filter(({ apartDeg }) => apartDeg <= FARTHEST_DEG && apartDeg > SAME_DEG)
    .sort((a, b) => a.magnitude + a.apartDeg / DEG_A_MAG - (b.magnitude + b.apartDeg / DEG_A_MAG));
};
/** A star of the target itself, such as Alcyone of the Pleiades. */
const SAME_DEG = 1.5;

const wordsFor = (one: Neighbour, { name }: Target): string =>
  `${nameWithAlias(one.target)}, ${degrees(one.apartDeg, 1)} ${sideWords(one)}${/(?:left|right)$/u.test(sideWords(one)) ? ' of' : ''} ${name}`;

/** Which bright ones stand near a target. */
export const brightNear = (deps: Deps, asked: SiteAtTime, question: NearQuestion): Outcome | Problem => {
  const { site, side, colour } = question;
  const found = targetFor(deps, question.near, (near) => commandLine('bright', '', { near, site }));
  if (isProblem(found)) return found;
  const { target } = found;
  const { where, notes } = asked;
  const { observer, zone } = where.site;
  const utcMs = instantFor(target, asked, question);
  const near = neighboursOf(deps, target, asked, utcMs).filter((one) => side === undefined || IS_ON[side](one));
  const ofColour = colour === undefined ? [] : near.filter((one) => colourOf(one.target) === colour);
  const seen = [...ofColour, ...near.filter((one) => !ofColour.includes(one))].slice(0, MOST_SHOWN);
  const [first] = seen;
  const when = formatLocalDateTime(utcMs, zone);
  const isDown = horizontalOf(target.body, observer, utcMs).altitudeDeg < 0;
  return reply({
    title: `Bright near ${target.name}, ${when}`,
    level: first === undefined ? 'info' : 'good',
    summary:
      first === undefined
        ? `No bright star or planet stands ${side === undefined ? 'near' : `${SAID[side]}${side === 'left' || side === 'right' ? ' of' : ''}`} ${target.name} then, within ${FARTHEST_DEG}°.`
        : `Most likely ${wordsFor(first, target)}.${isDown ? ` ${target.name} itself is down then.` : ''}`,
    facts: seen.map((one) => ({
      label: nameWithAlias(one.target),
      value: `${degrees(one.apartDeg, 1)} ${sideWords(one)}; ${degrees(one.at.altitudeDeg)} high in the ${direction(one.at.azimuthDeg)}; mag ${magnitudeText(one.magnitude)}`,
    })),
    notes: ['Above, below, left and right as they look at that hour.', ...found.notes, ...notes],
    choices: fittingChoices(
      seen.slice(0, 3).map((one) => ({
        label: `More on ${one.target.name}`,
        run: commandLine('up', one.target.name, { site }),
      })),
    ),
    pointsAt: seen.map((one) => ({
      what: one.target.name,
      when: { utcMs },
      observer,
      zone,
      direction: one.target.body,
    })),
    data: {
      utc: isoUtc(utcMs),
      near: target.name,
      seen: seen.map((one) => ({
        name: one.target.name,
        magnitude: rounded(one.magnitude, 2),
        apartDeg: rounded(one.apartDeg, 3),
      })),
    },
  });
};
