import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { deliverDue, pauseMs, type Round } from '../../bot/reminders/deliver-due.js';
import { deliveryKey } from '../../bot/reminders/delivery-key.js';
import { nextStandingWarning, readStandingWarning } from '../../bot/reminders/standing-warning.js';
import { openStore } from '../../bot/store/open-store.js';
import { StoreError, type NewReminder, type Store } from '../../bot/store/store.js';
import { contextOver, fakePlatform, standing, START, type FakePlatform } from './fake-platform.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const simple = (more: Partial<NewReminder> = {}): NewReminder => ({
  memberId: 'console:local',
  clubId: 'console:club',
  platform: 'console',
  channelId: 'console',
  to: 'member',
  kind: 'transit',
  dueUtcMs: START + HOUR,
  staleUtcMs: START + 2 * HOUR,
  repeat: null,
  text: 'NGC 7331 crosses the meridian.',
  ...more,
});

let store: Store;
let platform: FakePlatform;
let round: Round;
let lines: Record<string, unknown>[];
let nowUtcMs = START;
const at = async (utcMs: number, other: Round = round): Promise<number> => {
  nowUtcMs = utcMs;
  return deliverDue(other);
};
const texts = (): readonly string[] => platform.shown().map(({ text }) => text);
const messages = (): unknown[] => lines.map(({ msg }) => msg);

const roundOver = (over: Store, claimant: string): Round => {
  const made = contextOver(over, () => nowUtcMs);
  lines = made.lines;
  return {
    store: over,
    platforms: [platform],
    claimant,
    now: () => nowUtcMs,
    log: made.context.log,
    metrics: made.context.metrics,
    leaseMs: 90_000,
    deliverWithinMs: 50,
    unsettled: new Set(),
    said: new Set(),
  };
};
beforeEach(async () => {
  store = await openStore({ memory: true });
  platform = fakePlatform();
  nowUtcMs = START;
  round = roundOver(store, 'one');
});
afterEach(() => store.close());

describe('a reminder', () => {
  it('is said when due, not before, and once', async () => {
    await store.reminders.add(simple());
    expect(await at(START + HOUR - 1)).toBe(0);
    expect(await at(START + HOUR)).toBe(1);
    expect(texts()).toEqual(['NGC 7331 crosses the meridian.']);
    expect(await at(START + HOUR + 1)).toBe(0);
    expect(await store.reminders.list('console:local')).toEqual([]);
  });

  it('that came due while the bot was down says how late it is', async () => {
    await store.reminders.add(simple());
    await at(START + HOUR + 12 * MINUTE);
    expect(texts()).toEqual([
      'NGC 7331 crosses the meridian. (This comes 12 min late and was true then: see where the Sun is now before you point.)',
    ]);
  });

  it('that has lost its sense is dropped, in the log alone', async () => {
    await store.reminders.add(simple());
    await at(START + 2 * HOUR + 1);
    expect(texts()).toEqual([]);
    expect(messages()).toEqual(['a reminder had lost its sense and was dropped']);
    expect(await store.reminders.list('console:local')).toEqual([]);
  });

  it('never puts a member or its words into the log', async () => {
    await store.reminders.add(
      simple({ memberId: 'matrix:@tamsin:fenwold.example', channelId: '!room:fenwold.example' }),
    );
    platform.next.push('refused', 'gone');
    await at(START + HOUR);
    await at(START + HOUR + MINUTE);
    expect(lines).toHaveLength(2);
    expect(JSON.stringify(lines)).not.toMatch(/tamsin|fenwold|NGC/u);
  });

  it('whose member or channel is gone is not tried again', async () => {
    await store.reminders.add(simple({ repeat: { ...standing }, kind: 'sunrise', staleUtcMs: null }));
    platform.next.push('gone');
    await at(START + HOUR);
    expect(await at(START + 40 * 24 * HOUR)).toBe(0);
    expect(texts()).toEqual([]);
  });

  it('that cannot be said is tried again, later each time, under the same key', async () => {
    const { id } = await store.reminders.add(simple());
    platform.next.push('refused', 'hangs', 'refused');
    expect(await at(START + HOUR)).toBe(1);
    expect(await at(START + HOUR + 29_000)).toBe(0);
    expect(await at(START + HOUR + 31_000)).toBe(1);
    expect(await at(START + HOUR + 80_000)).toBe(0);
    expect(await at(START + HOUR + 92_000)).toBe(1);
    expect(texts()).toEqual([]);
    expect(await at(START + HOUR + 300_000)).toBe(1);
    expect(platform.sends).toMatchObject([
      {
        key: deliveryKey({ id, dueUtcMs: START + HOUR }),
        text: 'NGC 7331 crosses the meridian. (This comes 5 min late and was true then: see where the Sun is now before you point.)',
      },
    ]);
    expect([1, 2, 3, 6, 60].map(pauseMs)).toEqual([30_000, 60_000, 120_000, 600_000, 600_000]);
  });

  it('of a platform that this process does not run is left to another', async () => {
    await store.reminders.add(simple({ platform: 'matrix' }));
    expect(await at(START + HOUR)).toBe(0);
    const matrix = fakePlatform('matrix');
    expect(await at(START + HOUR, { ...round, platforms: [matrix], claimant: 'two' })).toBe(1);
    expect(matrix.sends).toHaveLength(1);
  });

  it('is not said twice when the store fails between saying it and writing that down', async () => {
    await store.reminders.add(simple());
    let failing = true;
    const flaky: Store = {
      ...store,
      reminders: {
        ...store.reminders,
        settle: (...given) =>
          failing ? Promise.reject(new StoreError('store-locked', 'busy')) : store.reminders.settle(...given),
      },
    };
    const trying = roundOver(flaky, 'one');
    expect(await at(START + HOUR, trying)).toBe(1);
    expect(messages()).toEqual(['what became of a reminder could not be written down']);
    failing = false;
    expect(await at(START + HOUR + 2 * MINUTE, trying)).toBe(1);
    expect(platform.sends).toHaveLength(1);
    expect(await store.reminders.list('console:local')).toEqual([]);
  });

  it('is said again under the same key when the process dies before writing it down, so that the server shows it once', async () => {
    await store.reminders.add(simple({ staleUtcMs: null }));
    const dying: Store = {
      ...store,
      reminders: { ...store.reminders, settle: () => Promise.reject(new StoreError('store-unavailable', 'killed')) },
    };
    await at(START + HOUR, roundOver(dying, 'killed'));
    expect(await at(START + HOUR + MINUTE, roundOver(store, 'other'))).toBe(0);
    expect(await at(START + HOUR + 91_000, roundOver(store, 'other'))).toBe(1);
    expect(platform.sends).toHaveLength(2);
    expect(platform.shown()).toHaveLength(1);
  });

  it('is not said again when the clock jumps back', async () => {
    await store.reminders.add(simple());
    await store.reminders.add(
      simple({ kind: 'sunrise', repeat: { ...standing }, staleUtcMs: null, dueUtcMs: START + 11 * HOUR }),
    );
    await at(START + 11 * HOUR);
    const [again] = await store.reminders.list('console:local');
    expect(again?.dueUtcMs).toBeGreaterThan(START + 11 * HOUR);
    const said = platform.sends.length;
    for (const back of [0, 2 * HOUR, 10 * HOUR, 11 * HOUR]) expect(await at(START + back)).toBe(0);
    expect(platform.sends).toHaveLength(said);
  });

  it('claimed before the clock jumped back is not held for hours', async () => {
    await store.reminders.add(simple({ staleUtcMs: null }));
    await store.reminders.claimDue(START + 50 * HOUR, START + 50 * HOUR + 90_000, 'killed', 10);
    expect(await at(START + HOUR + MINUTE)).toBe(1);
    expect(texts()).toHaveLength(1);
  });
});

describe('a sunrise warning', () => {
  const sunrise = (more: Partial<NewReminder> = {}) =>
    simple({ kind: 'sunrise', staleUtcMs: START + 2 * HOUR, text: 'The Sun rises at 07:42 GMT.', ...more });

  it('that was missed is never dropped silently', async () => {
    await store.reminders.add(sunrise());
    await at(START + 9 * HOUR);
    expect(texts()).toHaveLength(1);
    expect(texts()[0]).toMatch(
      /did not go out in time: it was due 8 h ago\. .*cap both.*It would have said: The Sun rises at 07:42 GMT\./u,
    );
    expect(messages()).toEqual(['a sunrise warning was missed, and that was said']);
  });

  it("standing, comes back every observing night with that morning's sunrise", async () => {
    const first = nextStandingWarning(standing, START);
    await store.reminders.add(
      sunrise({ repeat: { ...standing }, staleUtcMs: null, dueUtcMs: first!.dueUtcMs, text: 'old words' }),
    );
    for (let night = 0; night < 5; night++) {
      const [waiting] = await store.reminders.list('console:local');
      expect(waiting?.dueUtcMs).toBe(nextStandingWarning(standing, START + night * 24 * HOUR)?.dueUtcMs);
      await at(waiting!.dueUtcMs);
    }
    // Times of sunrise at 52.71° N, 0.12° E for 26 to 30 November 2026, computed with skyfield 1.55 (almanac.sunrise_sunset, DE421):
    // 07:40:47, 07:42:22, 07:43:56, 07:45:27, 07:46:58 UTC; shown to the minute.
    expect(texts().map((text) => /rises at (\d\d:\d\d) GMT at Fenwold Common/u.exec(text)?.[1])).toEqual([
      '07:41',
      '07:42',
      '07:44',
      '07:45',
      '07:47',
    ]);
    expect(new Set(platform.sends.map(({ key }) => key)).size).toBe(5);
  });

  it('standing, says once that it was missed, however many nights the bot was down', async () => {
    const first = nextStandingWarning(standing, START);
    await store.reminders.add(sunrise({ repeat: { ...standing }, staleUtcMs: null, dueUtcMs: first!.dueUtcMs }));
    const back = first!.dueUtcMs + 5 * 24 * HOUR + 3 * HOUR;
    expect(await at(back)).toBe(1);
    expect(await at(back + MINUTE)).toBe(0);
    expect(texts()).toHaveLength(1);
    expect(texts()[0]).toContain('and so did any since');
    const [waiting] = await store.reminders.list('console:local');
    expect(waiting?.dueUtcMs).toBe(nextStandingWarning(standing, back)?.dueUtcMs);
  });

  it('late but before sunrise, is still a warning', async () => {
    const first = nextStandingWarning(standing, START);
    await store.reminders.add(sunrise({ repeat: { ...standing }, staleUtcMs: null, dueUtcMs: first!.dueUtcMs }));
    await at(first!.dueUtcMs + 20 * MINUTE);
    expect(texts()[0]).toMatch(/^The Sun rises at .* \(This comes 20 min late\.\)$/u);
  });

  it("is for the evenings asked, by the site's own calendar", () => {
    // 2026-11-25 is a Wednesday; the Friday and Saturday nights end on 28 and 29 November.
    const weekend = { ...standing, evenings: [5, 6] };
    const first = nextStandingWarning(weekend, START);
    expect(new Date(first!.sunriseUtcMs).toISOString().slice(0, 10)).toBe('2026-11-28');
    const second = nextStandingWarning(weekend, first!.dueUtcMs);
    expect(new Date(second!.sunriseUtcMs).toISOString().slice(0, 10)).toBe('2026-11-29');
    expect(new Date(nextStandingWarning(weekend, second!.dueUtcMs)!.sunriseUtcMs).toISOString().slice(0, 10)).toBe(
      '2026-12-05',
    );
    // In Auckland Friday evening comes thirteen hours before Greenwich's: its sunrise is on Friday in UTC.
    const auckland = { ...weekend, zone: 'Pacific/Auckland', latitudeDeg: -36.85, longitudeDeg: 174.76 };
    expect(new Date(nextStandingWarning(auckland, START)!.sunriseUtcMs).toISOString().slice(0, 13)).toBe(
      '2026-11-27T16',
    );
  });

  it('waits through the polar night and comes back with the Sun', () => {
    const tromso = { ...standing, zone: 'Europe/Oslo', latitudeDeg: 69.65, longitudeDeg: 18.96 };
    const next = nextStandingWarning(tromso, Date.UTC(2026, 11, 1));
    // The Sun is below the horizon there from late November to mid January (common knowledge of the place, no source).
    expect(new Date(next!.sunriseUtcMs).toISOString().slice(0, 8)).toBe('2027-01-');
  });

  it('keeps only what it needs to find the next one, and reads nothing else', () => {
    expect(readStandingWarning({ ...standing })).toEqual(standing);
    expect(readStandingWarning({ ...standing, evenings: [] })).toBeNull();
    expect(readStandingWarning({ ...standing, evenings: [8] })).toBeNull();
    expect(readStandingWarning({ nights: 'all' })).toBeNull();
    expect(readStandingWarning(null)).toBeNull();
  });
});
