import { beforeEach, describe, expect, it } from 'vitest';
import { brokenStore, inPrivate, MBALI, NOW, openClub, RAVI, TAMSIN, type Club } from './club-bench.js';

const MINUTE = 60_000;
let club: Club;
beforeEach(async () => {
  club = await openClub();
  await club.says('site add name:"Fenwold Common" position:52.71,0.12 for:club', MBALI);
});

const idOf = ({ data }: { readonly data: { readonly [key: string]: unknown } }): string => data['id'] as string;

/** Seconds between a reply's moment and a reference time. */
const off = (reply: { readonly data: { readonly [key: string]: unknown } }, field: string, iso: string): number =>
  Math.abs(Date.parse(reply.data[field] as string) - Date.parse(iso)) / 1000;

describe('the moment of a reminder', () => {
  // All for 52.71° N, 0.12° E, the night of 2026-11-25, computed with skyfield 1.55 and DE421 (airless altitudes; sunrise with 34′ and 16′).
  it.each([
    ['remind Aldebaran above:30', '2026-11-25T20:10:08Z', '2026-11-25T20:10:08Z', 'altitude'],
    ['remind Aldebaran when:transit before:10', '2026-11-26T00:17:12Z', '2026-11-26T00:07:12Z', 'transit'],
    ['remind when:sunrise', '2026-11-26T07:40:47Z', '2026-11-26T06:55:47Z', 'sunrise'],
    ['remind when:sunrise before:20', '2026-11-26T07:40:47Z', '2026-11-26T07:20:47Z', 'sunrise'],
  ])('%s', async (line, moment, due, kind) => {
    const reply = await club.says(line);
    expect(reply.data).toMatchObject({ kind, to: 'member', repeats: false });
    expect(off(reply, 'momentUtc', moment)).toBeLessThanOrEqual(5);
    expect(off(reply, 'dueUtc', due)).toBeLessThanOrEqual(5);
  });

  it('of dark is the end of astronomical twilight', async () => {
    const reply = await club.says('remind when:dark', TAMSIN, NOW - 2 * 60 * MINUTE);
    expect(off(reply, 'momentUtc', '2026-11-25T17:57:02Z')).toBeLessThanOrEqual(5);
    expect(reply.data['text']).toBe('It is astronomically dark at Fenwold Common from 17:57 to 05:37 GMT.');
  });

  it('of a horizon is when the target comes out from behind it', async () => {
    await club.says('site add name:"Quarry Field" position:52.71,0.12 horizon:"0:5, 60:5, 90:25, 120:10, 270:5"');
    const reply = await club.says('remind Aldebaran when:horizon');
    expect(off(reply, 'momentUtc', '2026-11-25T19:26:16Z')).toBeLessThanOrEqual(5);
    expect(reply.data['text']).toBe(
      'Aldebaran clears the horizon of Quarry Field at 19:26 GMT, 23° high in the east (93°).',
    );
    expect(reply.audience).toBe('asker');
  });

  it('waits for the Sun to set where the target passed the altitude by day', async () => {
    // Sunset 15:53:21 UTC (skyfield 1.55, DE421).
    const reply = await club.says('remind Vega above:30', TAMSIN, Date.UTC(2026, 10, 25, 13));
    expect(off(reply, 'momentUtc', '2026-11-25T15:53:21Z')).toBeLessThanOrEqual(10);
    expect(reply.data['text']).toMatch(/^The Sun has set \(15:53 GMT\), and Vega is already \d\d° high/u);
  });

  it('says so where the target came out from behind the horizon by day', async () => {
    await club.says('site add name:"Quarry Field" position:52.71,0.12 horizon:"0:10, 180:10"');
    const reply = await club.says('remind Vega when:horizon', TAMSIN, Date.UTC(2026, 10, 25, 13));
    expect(off(reply, 'momentUtc', '2026-11-25T15:53:21Z')).toBeLessThanOrEqual(10);
    expect(reply.data['text']).toMatch(
      /^The Sun has set \(15:53 GMT\), and Vega is already clear of the horizon of Quarry Field, \d\d° high/u,
    );
  });

  it("is tomorrow's when tonight's is past", async () => {
    const reply = await club.says('remind when:sunrise', TAMSIN, Date.UTC(2026, 10, 26, 7, 30));
    expect(off(reply, 'momentUtc', '2026-11-27T07:42:22Z')).toBeLessThanOrEqual(5);
  });
});

describe('what cannot be reminded of', () => {
  it.each([
    ['remind Aldebaran above:30', Date.UTC(2026, 10, 25, 23), 'already', 'until 04:24 GMT'],
    ['remind Aldebaran above:60', NOW, 'no-such-moment', 'highest with the Sun down: 54°'],
    ['remind when:dark', NOW, 'already', '05:37 GMT'],
    ['remind when:dark on:2027-06-20', NOW, 'no-such-moment', 'does not get astronomically dark'],
    ['remind Aldebaran above:30 on:tonight before:240', NOW, 'too-late', '20:10 GMT'],
    ['remind Aldebaran when:horizon', NOW, 'no-horizon', 'above:20'],
    ['remind add', NOW, 'missing-option', 'Which target'],
    ['remind Nosuchthing above:30', NOW, 'unknown-target', 'Nosuchthing'],
    ['remind Aldebaran above:95', NOW, 'bad-option', '0 to 90'],
    ['remind cancel', NOW, 'missing-option', 'remind list'],
    ['remind cancel id:zzzzzzz', NOW, 'unknown-reminder', 'zzzzzzz'],
    ['remind when:dark nights:every', NOW, 'bad-option', 'when:sunrise'],
    ['remind when:sunrise nights:"fri someday"', NOW, 'bad-nights', 'fri sat'],
  ])('%s', async (line, nowUtcMs, code, words) => {
    const refused = await club.refused(line, TAMSIN, nowUtcMs);
    expect(refused.problem).toBe(code);
    expect(refused.message).toContain(words);
    expect((await club.says('remind list')).data['reminders']).toEqual([]);
  });

  it('is more than twenty at once', async () => {
    for (let i = 0; i < 20; i++) await club.says(`remind Aldebaran above:${30 + i}`);
    expect((await club.refused('remind Aldebaran above:51')).problem).toBe('store-limit');
  });
});

describe("a channel's reminder", () => {
  it("is set by managers alone; in a direct message it is the member's own", async () => {
    expect((await club.refused('remind Aldebaran above:30 to:channel')).problem).toBe('not-allowed');
    expect((await club.says('remind Aldebaran above:30 to:channel', MBALI)).data).toMatchObject({ to: 'channel' });
    expect(
      (await club.says('remind Aldebaran above:30 to:channel site:52.71,0.12', inPrivate(TAMSIN))).data,
    ).toMatchObject({ to: 'member' });
  });

  it("never shows a member's own site to the channel", async () => {
    await club.says('site add name:"My Garden" position:10,10', MBALI);
    expect((await club.says('remind when:sunrise', MBALI)).data['text']).toContain('My Garden');
    expect((await club.says('remind when:sunrise to:channel', MBALI)).data['text']).toContain('Fenwold Common');
    const refused = await club.refused('remind when:sunrise to:channel site:"my garden"', MBALI);
    expect(refused.problem).toBe('personal-site');
    expect((await club.says('remind when:sunrise to:channel nights:every', MBALI)).summary).toContain('Fenwold Common');
  });

  it('standing, is set once, listed and cancelled by any manager', async () => {
    const set = await club.says('remind when:sunrise to:channel nights:"fri, sat" before:60', MBALI);
    expect(set.data).toMatchObject({ kind: 'sunrise', to: 'channel', repeats: true });
    expect(set.audience).toBe('everyone');
    // 2026-11-25 is a Wednesday: Friday night ends on the 28th; sunrise 07:43:56 UTC (skyfield 1.55, DE421).
    expect(off(set, 'dueUtc', '2026-11-28T06:43:56Z')).toBeLessThanOrEqual(5);
    expect(set.summary).toContain('on the nights of Friday and Saturday');
    const again = await club.refused('remind when:sunrise to:channel nights:every', MBALI);
    expect(again.problem).toBe('already');
    const other = { ...RAVI, isManager: true };
    expect((await club.says('remind list', other)).data['reminders']).toHaveLength(1);
    expect((await club.says('remind list', RAVI)).data['reminders']).toHaveLength(0);
    expect((await club.refused(`remind cancel id:${idOf(set)}`, RAVI)).problem).toBe('unknown-reminder');
    await club.says(again.choices![0]!.run, other);
    expect((await club.says('remind list', MBALI)).data['reminders']).toEqual([]);
  });
});

describe('listing and cancelling', () => {
  it("shows a member's own, in order, each to be cancelled by its id", async () => {
    const later = await club.says('remind when:sunrise');
    const sooner = await club.says('remind Aldebaran above:30');
    const list = await club.says('remind list');
    expect(list.audience).toBe('asker');
    expect((list.data['reminders'] as { id: string }[]).map(({ id }) => id)).toEqual([
      sooner.data['id'],
      later.data['id'],
    ]);
    expect((await club.says('remind', RAVI)).data['reminders']).toEqual([]);
    await club.says(list.choices![0]!.run);
    expect((await club.says('remind')).data['reminders']).toHaveLength(1);
    expect((await club.refused(`remind cancel id:${idOf(later)}`, RAVI)).problem).toBe('unknown-reminder');
    await club.says(`remind cancel id:${idOf(later).toUpperCase()}`);
    expect((await club.says('remind')).data['reminders']).toEqual([]);
  });

  it('cancels by its place in the list, by what it is about, and all of them, said in words, even while a walk waits', async () => {
    for (const line of [
      'remind Aldebaran above:30',
      'remind Rigel above:20',
      'remind Rigel when:transit',
      'remind at:21:00',
    ])
      await club.says(line);
    await club.says('remind Sun when:transit', RAVI);
    expect((await club.says('cancel my aldebaran reminder')).summary).toContain('Aldebaran');
    const which = await club.refused('cancel my rigel reminder');
    expect(which.choices).toHaveLength(2);
    expect(which.audience).toBe('asker');
    expect((await club.says('del reminder 1')).data['cancelled']).toEqual(expect.any(String));
    await club.says('triage the mount does not connect');
    const gone = await club.says('cancel all reminders');
    expect(gone.data['cancelled']).toHaveLength(2);
    expect(gone.audience).toBe('asker');
    expect((await club.says('remind list')).data['reminders']).toEqual([]);
    expect((await club.says('remind list', RAVI)).data['reminders']).toHaveLength(1);
  });

  it('keeps the standing warning of a channel when all is cancelled: that takes its id', async () => {
    await club.says('remind when:sunrise to:channel nights:every', MBALI);
    await club.says('remind Aldebaran above:30', MBALI);
    await club.says('remind Rigel above:20', MBALI);
    const gone = await club.says('cancel all reminders', MBALI);
    expect(gone.data['cancelled']).toHaveLength(2);
    expect(gone.choices).toHaveLength(1);
    expect((await club.says('remind list', MBALI)).data['reminders']).toHaveLength(1);
  });

  it('suggests ids to cancel', async () => {
    const set = await club.says('remind Aldebaran above:30');
    const command = club.deps.commands.find(({ name }) => name === 'remind');
    expect(await command?.completeOwn?.(club.deps, 'id', 'aldeb', TAMSIN)).toMatchObject([{ value: set.data['id'] }]);
  });
});

it('the Sun as a target carries its warning into the reminder', async () => {
  const reply = await club.says('remind Sun when:transit', TAMSIN, Date.UTC(2026, 10, 25, 10));
  expect(reply.cautions[0]).toMatch(/^This is the Sun\./u);
  expect(reply.level).toBe('danger');
  expect(reply.data['text']).toContain('Danger: This is the Sun.');
});

it('says that the store cannot be reached, rather than forgetting a reminder', async () => {
  const broken = await openClub({ store: brokenStore() });
  await expect(broken.refused('remind Aldebaran above:30 site:52.71,0.12')).rejects.toMatchObject({
    code: 'store-unavailable',
  });
});
