/** What stands beside the Moon in one night, for who asks about the Moon's neighbour. */
import { nearMoon, type NearMoon } from '../../ahead/near-moon.js';
import { brightNamedStars, resolveTarget, type Catalogue } from '../../catalogue/index.js';
import { isProblem } from '../../ground/problem.js';
import { compassWord, degrees, listed } from '../../reply/wording.js';
import type { UtcMs } from '../../sky/types.js';
import { formatClock } from '../../times/index.js';
import type { Question, Section } from './ahead-question.js';

const PLANETS = ['Mercury', 'Venus', 'Mars', 'Jupiter', 'Saturn'] as const;

const brightIn = (catalogue: Catalogue) => [
  ...[...PLANETS, 'M 45', 'M 44'].flatMap((name) => {
    const found = resolveTarget(catalogue, name);
    return isProblem(found) ? [] : [found.target];
  }),
  ...brightNamedStars(catalogue),
];

const words = ({ near, utcMs, moonAltitudeDeg, moonAzimuthDeg }: NearMoon, then: string, zone: string): string => {
  const where = `the Moon, ${degrees(moonAltitudeDeg)} high in the ${compassWord(moonAzimuthDeg)} at ${formatClock(utcMs, zone)} ${then}`;
  if (near.length === 0) return `Nothing bright within 15° of ${where}.`;
  return `Near ${where}: ${listed(near.map(({ name, separationDeg }) => `${name} ${degrees(separationDeg, separationDeg < 10 ? 1 : 0)} away`))}.`;
};

/** Nothing where no night was asked about, nor meetings alone. */
export const besideMoon = (question: Question, catalogue: Catalogue, nowUtcMs: UtcMs): Section => {
  const { about, kind, night = null, nightSaid = null, observer, zone } = question;
  if (night === null || kind !== 'meetings' || about !== null) return { facts: [], data: [] };
  const then = nightSaid === null ? 'tonight' : `in the night of ${nightSaid}`;
  const span = { startUtcMs: Math.max(nowUtcMs, night.startUtcMs), endUtcMs: night.endUtcMs };
  const found = nearMoon(observer, span, brightIn(catalogue));
  if (found === null) return { headline: `The Moon is not seen in the dark ${then}.`, facts: [], data: [] };
  return {
    headline: words(found, then, zone),
    facts: [],
    pointsAt: found.near.map(({ name, body }) => ({
      what: name,
      when: { utcMs: found.utcMs },
      observer,
      zone,
      direction: body,
    })),
    data: [],
  };
};
