/** What holds for every answer whatever its command remembers: privacy, the Sun, and words that are no command. */
import { describe, expect, it } from 'vitest';
import { isProblem, problem } from '../../bot/ground/problem.js';
import { siteFor } from '../../bot/commands/asking/resolve-site.js';
import {
  defineCommand,
  optional,
  text,
  type Command,
  type WordsReader,
  type Deps,
} from '../../bot/commands/core/command.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import { judgeSun } from '../../bot/commands/core/judge-sun.js';
import { NOWHERE, reply, type PointsAt } from '../../bot/reply/reply.js';
import { horizontalOf } from '../../bot/sky/place.js';
import { sunAtWorst } from '../../bot/sky/sun-span.js';
import { ODALYS, answer, ask, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 25, 20);
const HOUR_MS = 3_600_000;
const FENWOLD = { latitudeDeg: 52.71, longitudeDeg: 0.12, elevationM: 5 };
const ZONE = 'Europe/London';
const IN_CLUB = { ...ODALYS, isPrivate: false };

/** A newcomer's command: it names the site to all, and says nothing of privacy. */
const forgetful = defineCommand({
  name: 'whereami',
  summary: 'Says where one is',
  options: { site: optional(text('Where')), way: optional(text('How it forgets')) },
  bare: 'site',
  examples: ['whereami'],
  run: async (deps, request) => {
    if (request.options.way === 'store') {
      const sites = await deps.store.sites.list({ kind: 'member', id: request.asker.memberId });
      return reply({ title: 'Here', summary: sites.map(({ latitudeDeg }) => latitudeDeg).join(), pointsAt: NOWHERE });
    }
    if (request.options.way === 'gear') {
      const mount = (await deps.store.gear.get(request.asker.memberId))?.mount ?? 'none';
      return reply({ title: 'Here', summary: mount, pointsAt: NOWHERE });
    }
    const where = await siteFor(deps, request, request.options.site);
    if (isProblem(where)) return where;
    const { latitudeDeg } = where.site.observer;
    if (request.options.way === 'problem') return problem('odd', `Nothing can be said of ${latitudeDeg}.`);
    return reply({ title: 'Here', summary: `${latitudeDeg}`, pointsAt: NOWHERE });
  },
});

const depsWith = async (...more: readonly Command[]): Promise<Deps> => {
  const deps = await realDeps();
  return { ...deps, commands: [...deps.commands, ...more] };
};

describe("a member's own site", () => {
  it('stays with the member though the command forgets to say so, in answers and in problems', async () => {
    const deps = await depsWith(forgetful);
    await answer(deps, 'site add name:"Quarry Field" position:52.71,0.12', NOW, IN_CLUB);
    for (const line of ['whereami', 'whereami "Quarry Field"', 'whereami way:problem', 'whereami way:store'])
      expect((await ask(deps, line, NOW, IN_CLUB)).audience, line).toBe('asker');
  });

  it("is not hidden where it is not used: a place, the club's site, a member without one", async () => {
    const deps = await depsWith(forgetful);
    const other = { ...IN_CLUB, memberId: 'console:mbali', isManager: true };
    await answer(deps, 'site add name:"Fenwold Common" position:52.7,0.1 for:club', NOW, other);
    await answer(deps, 'site add name:"Quarry Field" position:52.71,0.12', NOW, IN_CLUB);
    for (const line of ['whereami 40,10', 'whereami "Fenwold Common"', 'whereami 40,10 way:problem'])
      expect((await ask(deps, line, NOW, IN_CLUB)).audience ?? 'everyone', line).toBe('everyone');
    expect((await ask(deps, 'whereami', NOW, other)).audience).toBe('everyone');
  });

  it('that is asked for is answered to the asker alone where there is none, as where there is one', async () => {
    const deps = await depsWith(forgetful);
    const none = { ...IN_CLUB, memberId: 'console:mbali' };
    for (const line of [
      'whereami way:store',
      'whereami home',
      'whereami nosuchplace',
      'whereami way:gear',
      'site list',
      'site show name:nosuchplace',
      'remind list',
      'remind cancel id:aaaaaaa',
      'remind M13 above:89 site:52.7,0.1',
    ])
      expect((await ask(deps, line, NOW, none)).audience, line).toBe('asker');
  });

  it('of mount shapes an answer for the asker alone, and one that names its mount is for everyone', async () => {
    const deps = await realDeps();
    await answer(deps, 'gear mount:fork', NOW, IN_CLUB);
    for (const line of ['sun Venus', 'meridian M31', 'alignment', 'astray Capella landed:"15 degrees east of it"']) {
      expect((await ask(deps, `${line} site:52.7,0.1`, NOW, IN_CLUB)).audience, line).toBe('asker');
      expect((await ask(deps, `${line} site:52.7,0.1 mount:fork`, NOW, IN_CLUB)).audience, line).toBe('everyone');
    }
  });
});

const pointing = (name: string, pointsAt: readonly PointsAt[]): Command =>
  defineCommand({
    name,
    summary: 'Sends someone somewhere',
    options: {},
    examples: [name],
    run: async () => reply({ title: 'There', summary: 'Look there.', level: 'good', cautions: ['Its own.'], pointsAt }),
  });

describe('the Sun', () => {
  const noon = Date.UTC(2026, 5, 20, 12);
  const mercury = { kind: 'solarSystem', body: 'Mercury' } as const;
  const at = (what: string, direction: PointsAt['direction'], when: PointsAt['when']): PointsAt => ({
    what,
    when,
    observer: FENWOLD,
    zone: ZONE,
    direction,
  });

  it('is judged for every reply: the level rises to the worst and the caution stands first', async () => {
    const deps = await depsWith(
      pointing('near', [at('Mercury', mercury, { utcMs: noon })]),
      pointing('nowhere', NOWHERE),
    );
    const near = await answer(deps, 'near', noon);
    expect(near.level).toBe('caution');
    expect(near.cautions[0]).toMatch(/^The Sun is up, 24° from Mercury\. /u);
    expect(near.cautions[1]).toBe('Its own.');
    expect(await answer(deps, 'nowhere', noon)).toMatchObject({ level: 'good', cautions: ['Its own.'] });
  });

  it('cannot be left out: a reply that does not say where it points does not compile', () => {
    // @ts-expect-error pointsAt is missing
    expect(reply({ title: 'Up', summary: 'Up.' }).title).toBe('Up');
  });

  it('finds the worst instant of a span for a direction fixed to the ground that the Sun passes through', () => {
    // Where the Sun itself stands at 13:37:30; a sampling at whole or half hours alone would see it 7° off at the nearest.
    const passes = noon + 1.625 * HOUR_MS;
    const direction = horizontalOf({ kind: 'solarSystem', body: 'Sun' }, FENWOLD, passes);
    const when = { fromUtcMs: noon - 3 * HOUR_MS, untilUtcMs: noon + 5 * HOUR_MS };
    const worst = sunAtWorst(direction, FENWOLD, { startUtcMs: when.fromUtcMs, endUtcMs: when.untilUtcMs });
    expect(worst).toMatchObject({ level: 'danger', isSunUp: true });
    expect(worst.separationDeg).toBeLessThan(0.02);
    expect(Math.abs(worst.utcMs - passes)).toBeLessThan(10_000);
    const { level, cautions } = judgeSun([at('the parked tube', direction, when)]);
    expect(level).toBe('danger');
    expect(cautions[0]).toMatch(/^The Sun is up, 0° from the parked tube at 14:37 BST\. /u);
  });

  it('warns of a span that runs into the hour before sunrise, and not of one that ends before it', () => {
    // Sunrise here is at 03:35 UTC: computed; the sky tests hold sunrises against astropy.
    const sunriseHour = Date.UTC(2026, 5, 20, 2, 35);
    const span = (untilUtcMs: number): string =>
      judgeSun([
        at(
          'Vega',
          { kind: 'fixed', raHoursJ2000: 18.615, decDegJ2000: 38.78 },
          { fromUtcMs: Date.UTC(2026, 5, 19, 23), untilUtcMs },
        ),
      ]).level;
    expect(span(sunriseHour - 5 * 60_000)).toBe('clear');
    expect(span(sunriseHour + 5 * 60_000)).toBe('caution');
  });

  it('names at most three things in one caution and counts the others', () => {
    const points = ['Mercury', 'Venus', 'Mars', 'Jupiter', 'Saturn'].map((what) => at(what, mercury, { utcMs: noon }));
    expect(judgeSun([...points, points[0]!]).cautions).toHaveLength(1);
    expect(judgeSun(points).cautions[0]).toMatch(/24° from Mercury, 24° from Venus, 24° from Mars and 2 more\. /u);
  });
});

describe('words that are no command', () => {
  const told: unknown[] = [];
  const say = (deps: Deps, line: string) =>
    runLine(deps, line, { asker: IN_CLUB, nowUtcMs: NOW, onError: (error) => told.push(error) });

  it('are an unknown command where nobody reads them, and where no reader wants them', async () => {
    const { readers: _, ...deps } = await depsWith();
    expect(await say(deps, 'is M31 up')).toMatchObject({ problem: 'unknown-command' });
    expect(await say({ ...deps, readers: [] }, 'is M31 up')).toMatchObject({ problem: 'unknown-command' });
    const silent: WordsReader = { name: 'silent', read: async () => null };
    expect(await say({ ...deps, readers: [silent] }, 'is M31 up')).toMatchObject({ problem: 'unknown-command' });
  });

  it('are answered by the first reader that has something to say, with a line to run or an answer', async () => {
    const deps = await depsWith(forgetful);
    const broken: WordsReader = { name: 'broken', read: async () => Promise.reject(new Error('lost')) };
    const liner: WordsReader = {
      name: 'liner',
      read: async (_deps, { text: said }) =>
        said.startsWith('where') ? { line: 'whereami 40,10', note: 'Taken as whereami 40,10.' } : null,
    };
    const last: WordsReader = {
      name: 'last',
      read: async () => ({ outcome: reply({ title: 'Last', summary: 'Last.', pointsAt: NOWHERE }) }),
    };
    const read = { ...deps, readers: [broken, liner, last] };
    expect(await say(read, 'where am I')).toMatchObject({ title: 'Here', notes: ['Taken as whereami 40,10.'] });
    expect(told).toEqual([new Error('lost')]);
    expect(await say(read, 'hm')).toMatchObject({ title: 'Last' });
    // What is a command goes to no reader.
    expect(await say(read, 'whereami 41,10')).toMatchObject({ title: 'Here', notes: [] });
  });

  it("keep a member's own site with the member too", async () => {
    const deps = await depsWith(forgetful);
    await answer(deps, 'site add name:"Quarry Field" position:52.71,0.12', NOW, IN_CLUB);
    const reader: WordsReader = {
      name: 'finder',
      read: async (given, said) => {
        const where = await siteFor(given, said, undefined);
        return isProblem(where) ? null : { line: `whereami 40,10`, note: where.saidAs };
      },
    };
    expect((await say({ ...deps, readers: [reader] }, 'where am I')).audience).toBe('asker');
  });
});
