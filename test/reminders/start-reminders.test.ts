import { setTimeout as sleep } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { startReminders } from '../../bot/reminders/start-reminders.js';
import { openStore } from '../../bot/store/open-store.js';
import { StoreError, type Store } from '../../bot/store/store.js';
import { contextOver, fakePlatform } from './fake-platform.js';

const NOW = Date.UTC(2026, 10, 25, 20);
const QUICK = { lookEveryMs: 5 };

it('keep running through a store that fails, say so once in the log and in the health, and go on', async () => {
  const store = await openStore({ memory: true });
  let isBroken = true;
  const flaky: Store = {
    ...store,
    reminders: {
      ...store.reminders,
      claimDue: (...given) =>
        isBroken ? Promise.reject(new StoreError('store-full', 'no room')) : store.reminders.claimDue(...given),
    },
  };
  await store.reminders.add({
    memberId: 'console:local',
    clubId: 'c',
    platform: 'console',
    channelId: 'c',
    to: 'member',
    kind: 'dark',
    dueUtcMs: NOW,
    staleUtcMs: null,
    repeat: null,
    text: 'Dark now.',
  });
  const platform = fakePlatform();
  const { context, lines } = contextOver(flaky, () => NOW);
  const running = startReminders(context, [platform], QUICK);
  // Nothing is called well before it was looked into.
  expect(running.health()).toEqual({ ok: false, detail: 'not looked into yet' });
  while (!running.health().detail.startsWith('store-full')) await sleep(5);
  await sleep(50);
  expect(running.health()).toEqual({ ok: false, detail: 'store-full: no room is left on its disk' });
  expect(lines.map(({ msg }) => msg)).toEqual(['reminders wait: the store does not answer']);
  isBroken = false;
  while (platform.sends.length === 0) await sleep(5);
  await running.stop();
  expect(running.health()).toEqual({ ok: true, detail: 'answers' });
  expect(lines.map(({ msg }) => msg)).toEqual([
    'reminders wait: the store does not answer',
    'reminders go on: the store answers again',
  ]);
  expect(platform.sends).toHaveLength(1);
  await store.close();
});

it('stop after the delivery under way, and start no other', async () => {
  const store = await openStore({ memory: true });
  for (let i = 0; i < 12; i++) {
    await store.reminders.add({
      memberId: `console:${i}`,
      clubId: 'c',
      platform: 'console',
      channelId: 'c',
      to: 'member',
      kind: 'dark',
      dueUtcMs: NOW,
      staleUtcMs: null,
      repeat: null,
      text: 'Dark now.',
    });
  }
  let letGo: () => void = () => undefined;
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  let begun = 0;
  const platform = fakePlatform();
  const slow = {
    ...platform,
    deliver: async (...given: Parameters<typeof platform.deliver>) => {
      begun++;
      await held;
      return platform.deliver(...given);
    },
  };
  const running = startReminders(contextOver(store, () => NOW).context, [slow], QUICK);
  while (begun === 0) await sleep(5);
  const stopped = running.stop();
  letGo();
  await stopped;
  expect(platform.sends).toHaveLength(begun);
  expect(begun).toBeLessThan(12);
  await sleep(30);
  expect(platform.sends).toHaveLength(begun);
  // What was said is written off; the rest waits for the next process.
  expect(await store.reminders.claimDue(NOW, NOW + 60_000, 'next', 20)).toHaveLength(12 - begun);
  await store.close();
});
