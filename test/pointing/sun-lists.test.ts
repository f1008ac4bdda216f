import { Body, Equator, Observer } from 'astronomy-engine';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import type { Reply } from '../../bot/reply/reply.js';
import { seededRandom } from '../../scripts/astray/simulate-misses.js';
import { ask, realDeps } from '../commands/real-deps.js';
import { atOption, pick, siteOption, someUtcMs, type Random } from './random-asking.js';
import { directionsNamed, listWanting } from './sun-lists-reader.js';
import { altitudeOf, apartDeg, sunAt, type Where } from './sun-reader.js';

/** `SUN_QUESTIONS=20000 npx vitest run test/pointing/sun-lists` is the whole of it; so many by themselves in CI. */
const QUESTIONS = Number(process.env.SUN_QUESTIONS ?? 160);
const SEED = Number(process.env.SUN_SEED ?? 20261126);

const SITES: readonly Where[] = [
  { latitudeDeg: 52.71, longitudeDeg: 0.12, zone: 'Europe/London' },
  { latitudeDeg: 40.42, longitudeDeg: -3.7, zone: 'Europe/Madrid' },
  { latitudeDeg: -33.9, longitudeDeg: 18.4, zone: 'Africa/Johannesburg' },
  { latitudeDeg: -45.87, longitudeDeg: 170.5, zone: 'Pacific/Auckland' },
  { latitudeDeg: 1.3, longitudeDeg: 103.8, zone: 'Asia/Singapore' },
  { latitudeDeg: 64.1, longitudeDeg: -21.9, zone: 'Atlantic/Reykjavik' },
];

const twoDigits = (value: number): string => String(value).padStart(2, '0');

interface Asked {
  readonly line: string;
  readonly where: Where;
  readonly utcMs: number;
  /** The body the reply is about, where it is about one at the asked instant. */
  readonly body: Body | null;
}

const question = (random: Random): Asked => {
  const where = pick(random, SITES);
  const utcMs = someUtcMs(random);
  const at = atOption(utcMs);
  const site = siteOption(where);
  const from = Math.floor(random() * 24);
  const hours = `from:${twoDigits(from)}:00 until:${twoDigits((from + 2) % 24)}:30`;
  const thing = pick(random, ['Venus', 'Mercury', 'Jupiter', 'Moon', 'M13', 'Regulus', 'M8', 'Canopus']);
  const direction = pick(random, ['N', 'S']);
  const forms: readonly (readonly [string, Body | null])[] = [
    [`tonight ${site}`, null],
    [`tonight ${site} kind:${pick(random, ['planet', 'star', 'globular-cluster'])} ${hours}`, null],
    [`alignment ${site} ${at} mount:${pick(random, ['german', 'altaz'])}`, null],
    [`moon ${site} ${at}`, Body.Moon],
    [`moons ${site} ${at}`, Body.Jupiter],
    [`ahead ${pick(random, ['meetings', 'eclipses', 'planets', 'showers', 'all'])} ${site}`, null],
    [`drift ${pick(random, ['meridian', 'east', 'west'])} by:"${direction} ${Math.ceil(random() * 9)}" ${site}`, null],
    [`remind ${thing} above:${Math.floor(10 + random() * 30)} ${site}`, null],
  ];
  const [line, body] = pick(random, forms);
  return { line, where, utcMs, body };
};

/** What is wanting for the one body a reply is about, by astronomy-engine's own place of it. */
const bodyWanting = (reply: Reply, body: Body, where: Where, utcMs: number): string | null => {
  const observer = new Observer(where.latitudeDeg, where.longitudeDeg, 0);
  const { ra, dec } = Equator(body, new Date(utcMs), observer, true, true);
  if (altitudeOf(sunAt(utcMs), where, utcMs) < 0.3 || altitudeOf([ra * 15, dec], where, utcMs) < 0.5) return null;
  const away = apartDeg([ra * 15, dec], sunAt(utcMs));
  const warned = (levels: readonly string[]): boolean =>
    levels.includes(reply.level) && /Sun/u.test(reply.cautions.join(' '));
  if (away < 14.5 && !warned(['danger'])) return `${reply.level}, ${away.toFixed(1)}° from the Sun`;
  if (away < 44.5 && !warned(['danger', 'caution'])) return `${reply.level}, ${away.toFixed(1)}° from the Sun`;
  return /\bSun\b/u.test([...reply.cautions, ...reply.notes].join(' ')) ? null : 'no word that the Sun is up';
};

/** An eclipse of the Sun sends people to look at it. */
const eclipseWanting = (reply: Reply): string | null =>
  reply.facts.some(({ label }) => label.includes('eclipse of the Sun')) &&
  !(reply.level === 'danger' && reply.cautions.join(' ').includes('ISO 12312-2'))
    ? `an eclipse of the Sun without the filter, level ${reply.level}`
    : null;

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

describe(`of ${QUESTIONS} random questions to the commands that list (seed ${SEED})`, () => {
  it(
    'none is answered with a direction near the Sun, or an hour before sunrise, without the words',
    async () => {
      const random = seededRandom(SEED);
      const misses: string[] = [];
      let named = 0;
      let warned = 0;
      let refused = 0;
      for (let i = 0; i < QUESTIONS; i++) {
        const { line, where, utcMs, body } = question(random);
        const outcome = await ask(deps, line, utcMs);
        // Some hours have no stars, some nights no such moment: a refusal sends nobody anywhere.
        if (isProblem(outcome)) {
          refused++;
          continue;
        }
        const directions = directionsNamed(outcome, where, utcMs);
        named += directions.length;
        if (outcome.level === 'danger' || outcome.level === 'caution') warned++;
        const found = [
          ...directions
            .flatMap((direction) => listWanting(outcome, where, direction) ?? [])
            .map(({ text, why }) => `${why}: ${text}`),
          ...(body === null ? [] : [bodyWanting(outcome, body, where, utcMs)]),
          eclipseWanting(outcome),
        ].filter((why) => why !== null);
        misses.push(...found.map((why) => `${new Date(utcMs).toISOString()} ${line}: ${why}`));
      }
      console.info(
        `${QUESTIONS} questions to lists named ${named} directions, ${warned} replies warned; ${misses.length} wanting`,
      );
      expect(misses.slice(0, 12)).toEqual([]);
      expect(refused).toBeLessThan(QUESTIONS / 4);
      expect(named).toBeGreaterThan(QUESTIONS);
      expect(warned).toBeGreaterThan(QUESTIONS / 20);
    },
    Math.max(60_000, QUESTIONS * 200),
  );

  it('the reader itself finds words that are wanting', async () => {
    const where = SITES[0]!;
    const utcMs = Date.UTC(2026, 5, 20, 10);
    const of = async (line: string, at: number, over: Partial<Reply> = {}): Promise<readonly unknown[]> => {
      const outcome = await ask(deps, line, at);
      if (isProblem(outcome)) throw new Error(outcome.message);
      const said = { ...outcome, ...over };
      return directionsNamed(said, where, at).flatMap((direction) => listWanting(said, where, direction) ?? []);
    };
    const bare = { level: 'good', cautions: [], notes: [] } as const;
    // Jupiter, 29° from the Sun at eleven in the morning.
    expect(await of('moons site:52.71,0.12', utcMs)).toEqual([]);
    expect(await of('moons site:52.71,0.12', utcMs, bare)).toHaveLength(1);
    // Venus at 07:22, 42 minutes before sunrise.
    const morning = 'tonight site:52.71,0.12 kind:planet from:06:30 until:08:00';
    expect(await of(morning, Date.UTC(2026, 11, 13, 18))).toEqual([]);
    expect(await of(morning, Date.UTC(2026, 11, 13, 18), bare)).not.toEqual([]);
    // The hour stands beside its date, a month ahead.
    const noon = Date.UTC(2026, 5, 20, 10);
    const text = '5.0° apart Sat 11 Jul at 12:30, 59° high in the south';
    expect(
      await of('ahead meetings site:52.71,0.12', noon, { ...bare, facts: [{ label: 'Moon', value: text }] }),
    ).toEqual([{ text: `Moon: ${text}`, why: '2026-07-11T11:30:00.000Z: good, within 15°' }]);
  });
});
