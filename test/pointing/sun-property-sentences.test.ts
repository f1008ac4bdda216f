/** Random sentences of ways, hours and the Sun itself, typed by day, and whether each is warned as an independent reader of the reply judges. */
import { Body, Equator, Observer } from 'astronomy-engine';
import { DateTime } from 'luxon';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { seededRandom } from '../../scripts/astray/simulate-misses.js';
import { ask, realDeps } from '../commands/real-deps.js';
import { pick, someUtcMs, type Random } from './random-asking.js';
import { altitudeOf, sunAt, wanting, type Where } from './sun-reader.js';

/** `SUN_QUESTIONS=20000 npx vitest run test/pointing/sun-property` is the whole of it; so many by themselves in CI. */
const QUESTIONS = Number(process.env.SUN_QUESTIONS ?? 300);
const SEED = Number(process.env.SUN_SEED ?? 20261127);

const SITES: readonly Where[] = [
  { latitudeDeg: 52.71, longitudeDeg: 0.12, zone: 'Europe/London' },
  { latitudeDeg: 40.42, longitudeDeg: -3.7, zone: 'Europe/Madrid' },
  { latitudeDeg: 51.05, longitudeDeg: -114.07, zone: 'America/Edmonton' },
  { latitudeDeg: -33.9, longitudeDeg: 18.4, zone: 'Africa/Johannesburg' },
  { latitudeDeg: -45.87, longitudeDeg: 170.5, zone: 'Pacific/Auckland' },
];

/** Right ascension and declination of J2000 in degrees: Hipparcos (ESA 1997), from memory, to a few hundredths of a degree. */
const STARS = new Map<string, readonly [number, number]>([
  ['vega', [279.23, 38.78]],
  ['capella', [79.17, 46.0]],
  ['arcturus', [213.92, 19.18]],
  ['spica', [201.3, -11.16]],
  ['antares', [247.35, -26.43]],
  ['regulus', [152.09, 11.97]],
  ['aldebaran', [68.98, 16.51]],
  ['pollux', [116.33, 28.03]],
  ['fomalhaut', [344.41, -29.62]],
  ['betelgeuse', [88.79, 7.41]],
  ['altair', [297.7, 8.87]],
  ['procyon', [114.83, 5.23]],
]);
const PLANETS = new Map([
  ['mercury', Body.Mercury],
  ['venus', Body.Venus],
  ['mars', Body.Mars],
  ['jupiter', Body.Jupiter],
  ['saturn', Body.Saturn],
]);
const NAMES = [...STARS.keys(), ...PLANETS.keys(), ...PLANETS.keys()];

const placeOf = (name: string, where: Where, utcMs: number): readonly [number, number] => {
  const star = STARS.get(name);
  if (star !== undefined) return star;
  const observer = new Observer(where.latitudeDeg, where.longitudeDeg, 0);
  const { ra, dec } = Equator(PLANETS.get(name)!, new Date(utcMs), observer, false, true);
  return [ra * 15, dec];
};

interface Asked {
  readonly line: string;
  readonly utcMs: number;
  /** All that the tube points at. */
  readonly names: readonly string[];
}

/** An hour within the next twelve, in several spellings, with the instant that it is. */
const someHour = (random: Random, where: Where, nowUtcMs: number): readonly [words: string, utcMs: number] => {
  const utcMs = nowUtcMs + Math.ceil(random() * 11 * 12) * 300_000;
  const local = DateTime.fromMillis(utcMs, { zone: where.zone }).set({ second: 0, millisecond: 0 });
  const rounded = local.set({ minute: Math.floor(local.minute / 5) * 5 });
  const at = rounded.toMillis() <= nowUtcMs ? rounded.plus({ minutes: 5 }) : rounded;
  const half = at.toFormat('a').toLowerCase();
  const spellings = [`at ${at.toFormat('HH:mm')}`, at.toFormat('HH:mm'), `at ${at.toFormat('h:mm')}${half}`];
  if (at.hour === 12 && at.minute === 0) spellings.push('at noon');
  // A clock with hands: the next time that they stand so.
  if (at.minute === 30) spellings.push(`at half past ${at.hour % 12 || 12}`);
  if (at.minute === 0) spellings.push(`at ${at.hour % 12 || 12}`, `at ${at.hour % 12 || 12} o'clock`);
  return [pick(random, spellings), at.toMillis()];
};

const WAYS: readonly ((a: string, b: string) => string)[] = [
  (a, b) => `slew from ${a} to ${b}`,
  (a, b) => `swing from ${a} over to ${b}`,
  (a, b) => `star hop from ${a} to ${b}`,
  (a, b) => `${a} to ${b}`,
  (a, b) => `from ${a} -> ${b}`,
  (a, b) => `swap ${a} for ${b}`,
  (a, b) => `go to ${a} then to ${b}`,
  (a, b) => `done with ${a}, ${b} next`,
  (a, b) => `I am on ${a} and want ${b}`,
  (a, b) => `can i move the scope to ${b} from ${a}`,
  (a, b) => `is it safe to turn from ${a} to ${b}`,
  (a, b) => `replace ${a} with ${b}`,
  (a, b) => `leaving ${a} for ${b}`,
];

const question = (random: Random, where: Where, nowUtcMs: number): Asked => {
  const a = pick(random, NAMES);
  const b = pick(
    random,
    NAMES.filter((name) => name !== a),
  );
  const isNow = random() < 0.3;
  const [hour, utcMs] = isNow ? [pick(random, ['now', '', 'right now']), nowUtcMs] : someHour(random, where, nowUtcMs);
  if (random() < 0.75) return { line: `${pick(random, WAYS)(a, b)} ${hour}`.trim(), utcMs, names: [a, b] };
  const single = pick(random, [`is ${b} safe`, `is it dangerous to point at ${b}`, `how near the sun is ${b}`]);
  return { line: `${single} ${hour}`.trim(), utcMs, names: [b] };
};

const LOOKING = {
  verbs: ['look at', 'observe', 'see', 'photograph', 'point my scope at', 'track', 'image', 'show the kids', 'project'],
  with: [
    '',
    ' through the finder',
    ' with binoculars',
    ' at sunset',
    ' with sunglasses',
    ' in my refractor',
    ' tomorrow',
  ],
  asking: ['can i ', 'is it ok to ', 'i want to ', 'how do i ', ''],
} as const;

let clubs: readonly (readonly [Where, Deps])[];
beforeAll(async () => {
  clubs = await Promise.all(
    SITES.map(async (where) => {
      const deps = await realDeps({ clubSiteText: `${where.latitudeDeg},${where.longitudeDeg}` });
      return [where, deps] as const;
    }),
  );
});

describe(`of ${QUESTIONS} random sentences typed by day (seed ${SEED})`, () => {
  it(
    'each is judged as the way it is, both of its ends at the hour asked, with the words due',
    async () => {
      const random = seededRandom(SEED);
      const misses: string[] = [];
      let byDay = 0;
      let near = 0;
      for (let i = 0; i < QUESTIONS; i++) {
        const [where, deps] = pick(random, clubs);
        const nowUtcMs = someUtcMs(random);
        const { line, utcMs, names } = question(random, where, nowUtcMs);
        // By night, and within minutes of the Sun's rising or setting, other answers are as good.
        if (altitudeOf(sunAt(utcMs), where, utcMs) < 1 || altitudeOf(sunAt(nowUtcMs), where, nowUtcMs) < 1) continue;
        byDay++;
        const outcome = await ask(deps, line, nowUtcMs);
        const said = `${new Date(nowUtcMs).toISOString()} ${where.zone} "${line}"`;
        if (isProblem(outcome)) {
          misses.push(`${said}: ${outcome.message}`);
          continue;
        }
        const last = names.at(-1)!;
        if (!outcome.title.toLowerCase().startsWith(`the sun and ${last}`)) misses.push(`${said}: ${outcome.title}`);
        const { utc } = outcome.data as { readonly utc: string };
        if (Math.abs(Date.parse(utc) - utcMs) > 60_000) misses.push(`${said}: answered for ${utc}`);
        if (outcome.level === 'danger' || outcome.level === 'caution') near++;
        for (const name of names) {
          const found = wanting(outcome, placeOf(name, where, utcMs), where, utcMs);
          if (found !== null) misses.push(`${said}: ${name} ${found.separationDeg.toFixed(1)}° ${found.why}`);
        }
      }
      console.info(`${QUESTIONS} sentences, ${byDay} by day, ${near} of them warned; ${misses.length} wanting`);
      expect(misses.slice(0, 12)).toEqual([]);
      expect(byDay).toBeGreaterThan(QUESTIONS / 5);
      expect(near).toBeGreaterThan(byDay / 5);
    },
    Math.max(60_000, QUESTIONS * 200),
  );

  it('whoever asks to look at the Sun is told No, whatever with and at whatever hour', async () => {
    for (const verb of LOOKING.verbs)
      for (const looked of LOOKING.with)
        for (const asking of LOOKING.asking) {
          const line = `${asking}${verb} the sun${looked}`;
          const outcome = await ask(clubs[0]![1], line, Date.UTC(2026, 10, 26, 9, 23));
          expect(isProblem(outcome) ? outcome.message : outcome.title, line).toMatch(/^No[,:] /u);
        }
  }, 60_000);
});
