/** What `up` says of a target as an observer of experience would; the readings are common practice, no source, unless one is named. */
import { describe, expect, it } from 'vitest';
import { answer, realDeps } from '../commands/real-deps.js';

const deps = await realDeps();
const NOW = Date.UTC(2026, 10, 25, 12);
const fact = (reply: { facts: readonly { label: string; value: string }[] }, label: string): string =>
  reply.facts.find((each) => each.label === label)?.value ?? '';

describe('what it is', () => {
  it.each([
    ['up M 42 site:52.71,0.12', /nebula in Orion, mag 4\.0/u],
    ['up Albireo site:52.71,0.12', /double star in Cygnus, .*″ apart/u],
    ['up Algol site:52.71,0.12', /Perseus, eclipsing.*2\.1 to 3\.4, every 2\.87 days, next minimum/u],
    ['up Jupiter site:52.71,0.12', /^planet, mag −2/u],
  ])('%s', async (line, says) => expect(fact(await answer(deps, line, NOW), 'It is')).toMatch(says));
});

describe('an honest verdict', () => {
  it.each([
    // The Moon is full on 24 November 2026, in Taurus (any almanac).
    ['a faint nebula beside a full Moon', 'up M 1 site:52.71,0.12 on:2026-11-24', 'washed-out', /moonlight/u],
    ['a bright star beside it', 'up Aldebaran site:52.71,0.12 on:2026-11-24', 'up', /^Up, best/u],
    ['what culminates at 15° for its latitude', 'up M 24 site:56,0 on:2027-06-21', 'twilight-only', /twilight/u],
    [
      'what culminates at 4°',
      'up Fomalhaut site:56,0 on:2026-11-25',
      'low',
      /never gets above 5°|never gets above 4°/u,
    ],
    ['what never rises', 'up Acrux site:52.71,0.12', 'never-up', /ever/u],
    ['a midnight Sun', 'up M 13 site:69.65,18.95 on:2027-06-20', 'day-only', /full daylight: the Sun does not set/u],
    // Inferior conjunction of Venus, 24 October 2026 (astronomical almanacs).
    ['Venus at inferior conjunction', 'up Venus site:52.71,0.12 on:2026-10-24', 'lost-in-sun', /glare/u],
    ['a bright star in a northern June', 'up Vega site:60,10 on:2027-06-21', 'up', /in nautical twilight/u],
  ])('%s', async (_what, line, verdict, says) => {
    const reply = await answer(deps, line, NOW);
    expect(reply.data['hindrance']).toBe(verdict === 'up' ? null : verdict);
    expect(reply.summary).toMatch(says);
    expect(reply.summary).not.toMatch(/none, /u);
    if (verdict !== 'up') expect(reply.level).not.toBe('good');
  });

  it('tells no hour that is past as one to come', async () => {
    const lateUtcMs = Date.UTC(2026, 10, 26, 3);
    const reply = await answer(deps, 'up M 42 site:52.71,0.12', lateUtcMs);
    expect(Date.parse(reply.data['bestUtc'] as string)).toBeGreaterThanOrEqual(lateUtcMs);
    expect(fact(reply, 'In the sky')).toMatch(/^until .*it rose at/u);
  });

  it('answers an hour asked with the night: "9pm" and "saturday 9pm"', async () => {
    expect((await answer(deps, 'up m42 9pm site:52.71,0.12', NOW)).summary).toMatch(/^At 21:00 GMT \d+° high/u);
    const saturday = await answer(deps, 'up m42 saturday 9pm site:52.71,0.12', NOW);
    expect(saturday.title).toContain('Sat 28 Nov');
    expect(saturday.summary).toMatch(/^At 21:00 GMT \d+° high.*Best at/u);
  });

  it("gives the evening's best where the night's comes after bedtime, the hour tonight lists", async () => {
    const reply = await answer(deps, 'up Jupiter site:52.71,0.12 on:2027-01-09', NOW);
    const picks = (await answer(deps, 'tonight kind:planet site:52.71,0.12 on:2027-01-09', NOW)).data[
      'picks'
    ] as unknown as {
      name: string;
      bestUtc: string;
    }[];
    const listed = picks.find(({ name }) => name === 'Jupiter')?.bestUtc.slice(11, 16) ?? '';
    expect(fact(reply, 'This evening')).toContain(listed);
  });
});

describe('nights of clock changes', () => {
  // British clocks went back on 25 October 2026 at 01:00 UTC (the Summer Time Act's last Sunday of October).
  it('keep each time in its own offset', async () => {
    const reply = await answer(deps, 'dark site:52.71,0.12 on:2026-10-24', NOW);
    expect(reply.summary).toContain('19:40 BST to 04:48 GMT');
    expect(fact(reply, 'Sun')).toMatch(/BST.*GMT/u);
  });

  it('names twilight by how far down the Sun is', async () => {
    // At 56° N on 21 June the Sun is 10.6° down at midnight: nautical twilight (definition: US Naval Observatory).
    expect((await answer(deps, 'dark site:56,0 on:2027-06-21', NOW)).summary).toContain('nautical twilight');
    // At 50.5° N, 16.1° down: astronomical twilight.
    expect((await answer(deps, 'dark site:50.5,0 on:2027-06-21', NOW)).summary).toContain('astronomical twilight');
  });
});
