import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { seededRandom } from '../../scripts/astray/simulate-misses.js';
import { ask, realDeps } from '../commands/real-deps.js';
import { atOption, pick, siteOption, someUtcMs, type Random } from './random-asking.js';
import { altitudeOf, hoursNamed, sunAt, wanting, type Where } from './sun-reader.js';

/** `SUN_QUESTIONS=20000 npx vitest run test/pointing/sun-property` is the whole of it; so many by themselves in CI. */
const QUESTIONS = Number(process.env.SUN_QUESTIONS ?? 600);
const SEED = Number(process.env.SUN_SEED ?? 20261125);

const SITES: readonly Where[] = [
  { latitudeDeg: 52.71, longitudeDeg: 0.12, zone: 'Europe/London' },
  { latitudeDeg: 51.05, longitudeDeg: -114.07, zone: 'America/Edmonton' },
  { latitudeDeg: -33.9, longitudeDeg: 18.4, zone: 'Africa/Johannesburg' },
  { latitudeDeg: -45.87, longitudeDeg: 170.5, zone: 'Pacific/Auckland' },
  { latitudeDeg: 28.6, longitudeDeg: 77.2, zone: 'Asia/Kolkata' },
  { latitudeDeg: 64.1, longitudeDeg: -21.9, zone: 'Atlantic/Reykjavik' },
];

const sexagesimal = (value: number): string => {
  const total = Math.floor(Math.abs(value) * 3600);
  const [a, b, c] = [Math.floor(total / 3600), Math.floor(total / 60) % 60, total % 60];
  return [a, b, c].map((part) => String(part).padStart(2, '0')).join(':');
};

interface Asked {
  readonly line: string;
  readonly where: Where;
  readonly utcMs: number;
  /** Degrees. */
  readonly target: readonly [number, number];
  /** Whether the reply is about the asked instant itself, about the hours it names, or about coordinates for any hour. */
  readonly about: 'instant' | 'hours' | 'both' | 'any hour';
}

/** A direction near the Sun or anywhere, rounded as it is written. */
const randomTarget = (random: Random, utcMs: number): readonly [number, number] => {
  const [sunRa, sunDec] = sunAt(utcMs);
  if (random() < 0.4) return [random() * 360, Math.asin(2 * random() - 1) * (180 / Math.PI) * 0.95];
  const away = 55 * Math.sqrt(random());
  const angle = random() * 2 * Math.PI;
  const dec = Math.max(-85, Math.min(85, sunDec + away * Math.sin(angle)));
  const ra = sunRa + (away * Math.cos(angle)) / Math.max(0.2, Math.cos((dec * Math.PI) / 180));
  return [((ra % 360) + 360) % 360, dec];
};

const question = (random: Random): Asked => {
  for (;;) {
    const where = pick(random, SITES);
    const utcMs = someUtcMs(random);
    if (altitudeOf(sunAt(utcMs), where, utcMs) < 1) continue;
    const target = randomTarget(random, utcMs);
    const written = `"${sexagesimal(target[0] / 15)} ${target[1] < 0 ? '-' : '+'}${sexagesimal(target[1])}"`;
    const at = atOption(utcMs);
    const site = siteOption(where);
    const mount = `mount:${pick(random, ['german', 'fork', 'altaz'])}`;
    const landed = `landed:${Math.floor(10 + random() * 70)},${Math.floor(random() * 360)}`;
    const forms: readonly (readonly [string, Asked['about']])[] = [
      [`altitude ${written} ${at} ${site}`, 'instant'],
      [`sun ${written} ${at} ${site} ${mount}`, 'instant'],
      [`meridian ${written} ${at} ${site} ${mount}`, 'both'],
      [`astray ${written} ${landed} ${at} ${site} ${mount}`, 'instant'],
      [`up ${written} on:${new Date(utcMs).toISOString().slice(0, 10)} ${site}`, 'hours'],
      [`altitude ${written} ${site}`, 'instant'],
      [`epoch ${written} ${at}`, 'any hour'],
    ];
    const [line, about] = pick(random, forms);
    return { line, where, utcMs, target, about };
  }
};

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

describe(`of ${QUESTIONS} random questions asked by day (seed ${SEED})`, () => {
  it(
    'none is answered with a direction near the Sun without the words, as an independent reader of the reply judges',
    async () => {
      const random = seededRandom(SEED);
      const misses: string[] = [];
      let named = 0;
      let near = 0;
      for (let i = 0; i < QUESTIONS; i++) {
        const { line, where, utcMs, target, about } = question(random);
        const outcome = await ask(deps, line, utcMs);
        if (isProblem(outcome)) throw new Error(`${line}: ${outcome.message}`);
        const instants = [
          ...(about === 'hours' ? [] : [utcMs]),
          ...(about === 'instant' || about === 'any hour' ? [] : hoursNamed(outcome, where, utcMs)),
        ];
        named += instants.length;
        for (const instant of instants) {
          const found = wanting(outcome, target, where, instant);
          if (outcome.level === 'danger' || outcome.level === 'caution') near++;
          // Coordinates for any hour say so of a place near the Sun alone.
          if (found !== null && (about !== 'any hour' || found.separationDeg < 44.8))
            misses.push(
              `${line}: ${new Date(found.utcMs).toISOString()} ${found.separationDeg.toFixed(1)}° ${found.why}: ${outcome.summary}`,
            );
        }
      }
      console.info(
        `${QUESTIONS} questions by day named ${named} instants, ${near} of them warned; ${misses.length} wanting`,
      );
      expect(misses.slice(0, 10)).toEqual([]);
      expect(named).toBeGreaterThan(QUESTIONS);
      expect(near).toBeGreaterThan(QUESTIONS / 5);
    },
    Math.max(60_000, QUESTIONS * 200),
  );

  it('the reader itself finds words that are wanting', async () => {
    const where = SITES[0]!;
    const utcMs = Date.UTC(2026, 5, 20, 10);
    const [ra, dec] = sunAt(utcMs);
    const outcome = await ask(deps, `altitude "${sexagesimal(ra / 15)} +${sexagesimal(dec)}" site:52.71,0.12`, utcMs);
    if (isProblem(outcome)) throw new Error(outcome.message);
    expect(wanting(outcome, [ra, dec], where, utcMs)).toBeNull();
    expect(wanting({ ...outcome, level: 'good' }, [ra, dec], where, utcMs)?.why).toContain('within 15°');
    const bare = { ...outcome, cautions: [], notes: [], summary: 'Up, 60° high.' };
    expect(wanting(bare, [ra - 60, dec], where, utcMs)).not.toBeNull();
  });
});
