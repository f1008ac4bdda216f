/**
 * Two hours of a club evening by clocks of the test's own: members ask, reminders come due, the clock slips, the store is away for a while.
 * At the end everything has been said once, nothing of ours has failed, and what is kept is bounded.
 */
import { expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import { createRounds } from '../../bot/reminders/start-reminders.js';
import { openStore } from '../../bot/store/open-store.js';
import { StoreError, type Store } from '../../bot/store/store.js';
import { contextOver, fakePlatform } from '../reminders/fake-platform.js';
import { MBALI, NOW, openClub, RAVI, TAMSIN } from './club-bench.js';

const MINUTE = 60_000;
const LINES = [
  'up M 31',
  'sun Venus',
  'dark',
  'altitude Vega',
  'triage do:new',
  'triage the port is not in the list',
  'remind list',
  'site list',
  'sidereal',
  'nonsense here',
  'mydata',
  'gear mount:fork',
];

/** The store, away while `isAway()`. */
const awayWhile = (store: Store, isAway: () => boolean): Store => {
  const part = <T extends object>(of: T): T =>
    new Proxy(of, {
      get: (target, name) => {
        const method: unknown = Reflect.get(target, name);
        if (typeof method !== 'function') return method;
        return (...given: unknown[]): unknown =>
          isAway()
            ? Promise.reject(new StoreError('store-unavailable', 'away'))
            : (method as (...all: unknown[]) => unknown).apply(target, given);
      },
    });
  const parts = Object.fromEntries(
    Object.entries(store).map(([name, value]: [string, unknown]) => [
      name,
      typeof value === 'object' && value !== null ? part(value) : value,
    ]),
  );
  return part({ ...store, ...parts });
};

it('two hours of an evening: each reminder once, nothing of ours fails, and no more is kept than was promised', async () => {
  let elapsedMs = 0;
  let slipMs = 0;
  const minute = (): number => elapsedMs / MINUTE;
  const isAway = (): boolean => minute() >= 60 && minute() < 66;
  const now = (): number => NOW + elapsedMs + slipMs;
  const real = await openStore({ memory: true });
  const store = awayWhile(real, isAway);
  const { deps } = await openClub({ store, clubSiteText: '52.71,0.12' });
  for (let i = 0; i < 20; i++)
    await real.reminders.add({
      memberId: RAVI.memberId,
      clubId: RAVI.clubId,
      platform: 'discord',
      channelId: RAVI.channelId,
      to: 'member',
      kind: 'transit',
      dueUtcMs: NOW + (i * 6 + 1) * MINUTE,
      staleUtcMs: NOW + 600 * MINUTE,
      repeat: null,
      text: `reminder ${i}`,
    });
  const platform = fakePlatform('discord');
  const { context } = contextOver(store, now);
  const { look, health } = createRounds(context, [platform], { elapsedMs: () => elapsedMs });

  const failures: unknown[] = [];
  const answers = { replies: 0, problems: 0 };
  for (; minute() < 125; elapsedMs += MINUTE / 2) {
    // For one look the clock stands a month ahead.
    slipMs = minute() === 40 ? 30 * 24 * 60 * MINUTE : 0;
    await look();
    slipMs = 0;
    for (const [i, asker] of [TAMSIN, RAVI, MBALI].entries()) {
      const line = LINES[(elapsedMs / (MINUTE / 2) + i * 5) % LINES.length] ?? '';
      const outcome = await runLine(deps, line, {
        asker,
        nowUtcMs: now(),
        onError: (error) => void (error instanceof StoreError && isAway() ? undefined : failures.push(error)),
      });
      answers[isProblem(outcome) ? 'problems' : 'replies']++;
      if (isAway() && line.startsWith('sun')) expect(outcome).toMatchObject({ problem: 'store-unavailable' });
    }
  }
  console.log(`soak: ${answers.replies} answers, ${answers.problems} refusals, ${platform.sends.length} reminders`);
  expect(failures).toEqual([]);
  expect(platform.sends.map(({ text }) => text.replace(/ \(This.*/u, '')).sort()).toEqual(
    Array.from({ length: 20 }, (_, i) => `reminder ${i}`).sort(),
  );
  // On time, save those due while the store was away.
  expect(platform.sends.filter(({ text }) => text.includes('late'))).toHaveLength(1);
  expect(health()).toEqual({ ok: true, detail: 'answers' });
  for (const { memberId } of [TAMSIN, RAVI, MBALI]) {
    const { walks } = (await real.exportMember(memberId)) as { readonly walks: readonly unknown[] };
    expect(walks.length).toBeLessThanOrEqual(20);
    expect(walks.length).toBeGreaterThan(10);
  }
  await real.close();
}, 300_000);
