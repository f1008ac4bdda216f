/** The bench holds together, and what the real command must reach on it. Floors stand a little under what held last; raise them. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { contextsOf } from '../../scripts/knowledge/contexts.js';
import { realDeps } from '../commands/real-deps.js';
import { complaintOf, howFarOf, isWell } from './chain.js';
import { at } from './edit.js';
import { broken, FAULT_CHANGES } from './faults.js';
import { offListJobs, pairJobs, singleJobs, type Draw, type Job } from './jobs.js';
import { siderealGapHours } from './links/sky.js';
import { RULES, seenAs, seenBy } from './member.js';
import { isGood, playJob, within, type Result } from './play.js';
import { randomFrom } from './random.js';
import { REMEDY_CHANGES } from './remedies.js';
import { soundWorld } from './sound-world.js';

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

describe('the set-ups', () => {
  it('are sound on every path and system until something is broken', () => {
    for (const [i, { path, system, client }] of contextsOf(deps.triage()).entries())
      for (let round = 0; round < 20; round++)
        expect(
          howFarOf(soundWorld(path as never, system as never, client as never, randomFrom(`${i} ${round}`))),
          `${path} ${system ?? ''} ${client ?? ''}`,
        ).toBe('works');
  });

  it('know every shipped fault and remedy, and every fault troubles a set-up somewhere', () => {
    // The bench is of computers; what only a phone can have is told in test/triage/on-a-phone.test.ts.
    const onlyOnPhone = deps.triage().faults.filter(({ only }) => only?.systems?.every((system) => system === 'phone'));
    expect(onlyOnPhone.map(({ id }) => id)).toEqual([
      'phone-program-not-allowed',
      'phone-gives-no-place',
      'phone-sends-by-mobile-data',
    ]);
    const ids = deps.triage().faults.flatMap((fault) => (onlyOnPhone.includes(fault) ? [] : [fault.id]));
    expect(ids.filter((id) => !(id in FAULT_CHANGES))).toEqual([]);
    expect(ids.filter((id) => !(id in REMEDY_CHANGES) && id !== 'mount-electronics-dead')).toEqual([]);
    const played = new Set(singleJobs(deps.triage(), 2).flatMap(({ truth }) => truth));
    expect(ids.filter((id) => !played.has(id))).toEqual([]);
  });

  it('are mended by the remedy of the fault that was put in, but for what a person must repair', () => {
    const left = singleJobs(deps.triage(), 3).filter(
      ({ truth, world }) => !isWell(REMEDY_CHANGES[truth[0] ?? '']?.(world) ?? world),
    );
    expect([...new Set(left.flatMap(({ truth }) => truth))].sort()).toEqual([
      'mount-electronics-dead',
      'mount-usb-dead',
    ]);
  });

  it('answer each check with one of its answers', () => {
    for (const { world } of [...singleJobs(deps.triage(), 1), ...offListJobs(deps.triage(), 1)])
      for (const check of deps.triage().checks) {
        const seen = seenAs(deps.triage(), world, check.id);
        if (seen !== null)
          expect(
            check.answers.map(({ id }) => id),
            check.id,
          ).toContain(seen);
      }
    expect(deps.triage().checks.filter(({ id }) => !(id in RULES)).length).toBeLessThanOrEqual(40);
  });

  it('behave as the arithmetic of the sky says', () => {
    const world = soundWorld('controller-usb', 'windows', 'direct', randomFrom('sky'));
    expect(siderealGapHours(world.sky)).toBe(0);
    // An hour on the clock is 1 h 0 min 9.86 s of sidereal time (1.0027379, the ratio of the days; Astronomical Almanac, section B).
    const hour = broken(world, ['summer-time-wrong']);
    expect(Math.abs(siderealGapHours(hour.sky))).toBeCloseTo(1.0027379, 4);
    expect(seenBy(hour, 'sidereal-gap')).toBe('one-hour');
    // A day is 3 min 56.56 s.
    const day = broken(world, ['date-one-day-off']);
    expect(Math.abs(siderealGapHours(day.sky)) * 3600).toBeCloseTo(236.56, 0);
    // East for west: twice the longitude.
    const longitude = broken(world, ['longitude-sign-wrong']);
    const twice = (((2 * world.sky.longitudeDeg) / 15 + 36) % 24) - 12;
    expect(Math.abs(siderealGapHours(longitude.sky))).toBeCloseTo(Math.abs(twice), 6);
  });

  it('show the first broken link first, and the second when the first is mended', () => {
    const world = broken(soundWorld('controller-serial', 'windows', 'direct', randomFrom('two')), [
      'adapter-driver-missing',
      'controller-at-start-question',
    ]);
    expect(complaintOf(world)).toContain('not-found');
    const mended = at('adapter', { driver: 'fits' })(world);
    expect(complaintOf(mended)).toContain('no-reply');
    expect(isWell(at('controller', { screen: 'ready' })(mended))).toBe(true);
  });

  it('tell nothing of guiding while the mount is dark, and of a small miss only once the great one is gone', () => {
    const sound = soundWorld('controller-usb', 'windows', 'direct', randomFrom('hidden'));
    const dark = broken(sound, ['fuse-blown', 'guide-lead-out']);
    expect(seenBy(dark, 'how-far')).toBe('no-light');
    expect(seenBy(dark, 'guiding')).toBe('none');
    expect(seenBy(at('power', { fuseWhole: true })(dark), 'how-far')).toBe('guiding');
    const astray = broken(sound, ['not-started-at-home', 'tube-shifts']);
    expect(seenBy(astray, 'miss')).toBe('anywhere');
    expect(seenBy(at('sky', { atHome: true })(astray), 'miss')).toBe('small');
  });
});

describe('the real command on the bench, with members who err', { timeout: 240_000 }, () => {
  const play = async (jobs: readonly Job[]): Promise<Result[]> => {
    const results: Result[] = [];
    for (const job of jobs) results.push(await playJob(deps, job));
    return results;
  };

  /** Every second set-up of either draw: as many walks as one draw whole, and both figures. */
  const halves = (jobs: (draw: Draw) => readonly Job[]): [Job[], Job[]] => [
    jobs('tuned').filter((_, i) => i % 2 === 0),
    jobs('held back').filter((_, i) => i % 2 === 1),
  ];
  const both = async (jobs: (draw: Draw) => readonly Job[], steps: number, what: string): Promise<Result[]> => {
    const [tuned, held] = halves(jobs);
    const results = [await play(tuned), await play(held)] as const;
    const [onTuned, onHeld] = results.map((some) => within(some, steps).toFixed(3));
    console.log(`bench, ${what} in ${steps} steps: ${onTuned} on the draw tuned on, ${onHeld} on the draw held back`);
    return results.flat();
  };

  it('cures or rightly hands on single faults within ten steps', async () => {
    const results = await both((draw) => singleJobs(deps.triage(), 1, draw), 10, 'single faults');
    expect(within(results, 10)).toBeGreaterThanOrEqual(0.8);
    expect(results.filter(isGood).length / results.length).toBeGreaterThanOrEqual(0.82);
  });

  it('cures or rightly hands on pairs within sixteen', async () => {
    const results = await both((draw) => pairJobs(deps.triage(), 100, draw), 16, 'pairs');
    expect(within(results, 16)).toBeGreaterThanOrEqual(0.7);
  });

  it('hands on what no list holds without naming a wrong cause', async () => {
    // Each draw holds its own half of the troubles, so both are played whole.
    const results = await play(
      (['tuned', 'held back'] as const).flatMap((draw) => offListJobs(deps.triage(), 1, draw)),
    );
    expect(results.length).toBeGreaterThanOrEqual(28);
    const located = results.filter((result) => result.located).length / results.length;
    console.log(
      `bench, off the list in ten steps: ${within(results, 10).toFixed(3)}; brought down to the right part ${located.toFixed(3)}`,
    );
    expect(results.filter(isGood).length / results.length).toBeGreaterThanOrEqual(0.85);
    expect(within(results, 10)).toBeGreaterThanOrEqual(0.75);
  });
});
