import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { answer, realDeps } from './real-deps.js';

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const EAST_DEG = 0.12;

/**
 * Mean sidereal time in seconds of a day by the U.S. Naval Observatory's approximate formula ("Computing Greenwich Sidereal Time"),
 * good to 0.1 s in this century; the apparent one is within 1.2 s of it.
 */
const meanSeconds = (utcMs: number): number => {
  const daysFrom2000 = utcMs / 86_400_000 + 2_440_587.5 - 2_451_545;
  const hours = 18.697374558 + 24.06570982441908 * daysFrom2000 + EAST_DEG / 15;
  return (((hours % 24) + 24) % 24) * 3600;
};

const secondsIn = (words: string): number => {
  const [, hours, minutes, seconds] = /(\d\d)h (\d\d)m (\d\d)s/u.exec(words) ?? [];
  return Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
};

describe('the sidereal time now, to be compared with a display that counts seconds', () => {
  it.each(['17:49:37', '17:50:00', '23:59:31', '00:00:29'])('is that of the instant it names: %s', async (clock) => {
    const nowUtcMs = Date.parse(`2026-11-26T${clock}Z`);
    const { summary } = await answer(deps, 'sidereal site:52.71,0.12', nowUtcMs);
    const said = / at \w+ (\d+ \w+ \d{4}), (\d\d:\d\d(?::\d\d)?) GMT/u.exec(summary) ?? [];
    const saidUtcMs = Date.parse(`${said[1]} ${said[2]} UTC`);
    expect(saidUtcMs).toBe(nowUtcMs);
    expect(Math.abs(secondsIn(summary) - meanSeconds(saidUtcMs))).toBeLessThan(2);
  });

  it('is that of the instant that `entries` says to type', async () => {
    const nowUtcMs = Date.parse('2026-11-26T17:49:37Z');
    const { summary, facts } = await answer(deps, 'entries site:52.71,0.12', nowUtcMs);
    expect(summary).toContain('for 17:49:37 GMT');
    expect(facts.find(({ label }) => label === 'Local time')?.value).toContain('17:49:37');
    expect(Math.abs(secondsIn(summary) - meanSeconds(nowUtcMs))).toBeLessThan(2);
  });
});
