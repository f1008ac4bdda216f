/** A clock that jumps: what a club hears of its sunrise warnings, and what is cleared out. All by clocks of the test's own. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createRounds } from '../../bot/reminders/start-reminders.js';
import { nextStandingWarning } from '../../bot/reminders/standing-warning.js';
import { openStore } from '../../bot/store/open-store.js';
import type { Store } from '../../bot/store/store.js';
import { contextOver, fakePlatform, standing, START, type FakePlatform } from './fake-platform.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

let store: Store;
let platform: FakePlatform;
/** True time since START, and what the computer's clock adds to it. */
let elapsedMs = 0;
let wrongByMs = 0;
let lines: Record<string, unknown>[];
let look: () => Promise<number>;

const restart = (): void => {
  const made = contextOver(store, () => START + elapsedMs + wrongByMs);
  lines = made.lines;
  ({ look } = createRounds(made.context, [platform], { elapsedMs: () => elapsedMs }));
};
/** A look every so often, for so long. */
const live = async (forMs: number, everyMs = 5 * MINUTE): Promise<void> => {
  for (const untilMs = elapsedMs + forMs; elapsedMs < untilMs; elapsedMs += everyMs) await look();
};
const dayOfSaid = (): readonly number[] => platform.sends.map(({ reminder }) => reminder.dueUtcMs);
const warnings = (): readonly string[] => platform.sends.map(({ text }) => text);

beforeEach(async () => {
  store = await openStore({ memory: true });
  platform = fakePlatform();
  elapsedMs = 0;
  wrongByMs = 0;
  await store.reminders.add({
    memberId: 'console:local',
    clubId: 'c',
    platform: 'console',
    channelId: 'c',
    to: 'channel',
    kind: 'sunrise',
    dueUtcMs: nextStandingWarning(standing, START)!.dueUtcMs,
    staleUtcMs: null,
    repeat: { ...standing },
    text: 'old words',
  });
  await store.walks.put({
    id: 'k3m7qp',
    clubId: 'c',
    memberId: 'console:local',
    helperId: null,
    platform: 'console',
    channelId: 'c',
    state: {},
    updatedUtcMs: START,
    endedUtcMs: null,
  });
  restart();
});
afterEach(() => store.close());

describe('a clock that jumps', () => {
  it('sixty days ahead for one look: every sunrise of the next week is warned of, nothing false is said, no walk is lost', async () => {
    await live(2 * HOUR);
    wrongByMs = 60 * DAY;
    await look();
    wrongByMs = 0;
    await live(7 * DAY);
    expect(platform.sends).toHaveLength(7);
    expect(new Set(dayOfSaid()).size).toBe(7);
    expect(warnings().every((text) => text.startsWith('The Sun rises at'))).toBe(true);
    expect(lines.map(({ msg }) => msg)).toContain(
      'the clock jumped: reminders wait until it has kept its new time for two minutes',
    );
    expect(await store.walks.get('k3m7qp')).not.toBeNull();
  });

  it('sixty days ahead for an hour: the missed ones are owned up to, and once it is right every sunrise is warned of again', async () => {
    wrongByMs = 60 * DAY;
    await live(HOUR);
    expect(warnings()).toEqual([expect.stringContaining('did not go out in time')]);
    wrongByMs = 0;
    platform.sends.length = 0;
    await live(7 * DAY);
    expect(platform.sends).toHaveLength(7);
    expect(warnings().every((text) => text.startsWith('The Sun rises at'))).toBe(true);
    expect(await store.walks.get('k3m7qp')).not.toBeNull();
  });

  it('wrong from the start, as on a computer without a clock of its own: no walk is cleared out before it is put right', async () => {
    wrongByMs = 400 * DAY;
    restart();
    await live(20 * MINUTE, MINUTE);
    wrongByMs = 0;
    platform.sends.length = 0;
    await live(2 * DAY);
    expect(await store.walks.get('k3m7qp')).not.toBeNull();
    expect(platform.sends).toHaveLength(2);
  });

  it('a laptop that slept the night: within three minutes of waking the missed warning is owned up to', async () => {
    await live(HOUR);
    wrongByMs = 14 * HOUR;
    await live(3 * MINUTE, 5_000);
    expect(warnings()).toEqual([expect.stringContaining('did not go out in time')]);
  });

  it('set back over a warning just said: it is not said twice', async () => {
    const first = nextStandingWarning(standing, START)!.dueUtcMs;
    await live(first - START + MINUTE, MINUTE);
    expect(platform.sends).toHaveLength(1);
    wrongByMs = -20 * MINUTE;
    await live(2 * HOUR, MINUTE);
    expect(platform.sends).toHaveLength(1);
  });

  it('steady: what is old goes soon after its time', async () => {
    await live(31 * DAY, 2 * HOUR);
    expect(await store.walks.get('k3m7qp')).toBeNull();
  });
});
