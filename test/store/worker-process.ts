/**
 * A process of its own that writes into a store and says reminders until it is killed. It tells its parent of each write
 * before and after (over a pipe, so that nothing told is lost with it), and asks the parent, as the chat server, to show each
 * reminder. Run by worker-bench.ts.
 */
import { writeSync } from 'node:fs';
import { setImmediate as nextTurn } from 'node:timers/promises';
import type { RunningPlatform } from '../../bot/app/platform.js';
import { deliveryKey } from '../../bot/reminders/delivery-key.js';
import { startReminders } from '../../bot/reminders/start-reminders.js';
import { openStore } from '../../bot/store/open-store.js';
import type { NewReminder, Store } from '../../bot/store/store.js';
import { contextOver } from '../reminders/fake-platform.js';
import {
  CLUB_OF_WORKERS,
  filledMember,
  laneOf,
  remindedMember,
  SITES_FILLED,
  type Told,
  type WorkerTask,
  type Write,
} from './worker-task.js';

const tell = (told: Told): void => {
  writeSync(1, `${JSON.stringify(told)}\n`);
};

const doWrite = async (store: Store, { kind, number }: Write): Promise<Write> => {
  switch (kind) {
    case 'outcome':
      await store.outcomes.add(CLUB_OF_WORKERS, 'cable', `console:${process.pid}-${number}`, Date.UTC(2026, 10, 25));
      return { kind, number };
    case 'note':
      await store.notes.set(`sync-${laneOf(number)}`, String(number));
      return { kind, number };
    case 'event':
      return { kind, number, won: await store.events.claim(`e${number}`, Date.now()) };
    case 'walk':
      await store.walks.put({
        id: `w-${laneOf(number)}`,
        clubId: CLUB_OF_WORKERS,
        memberId: 'm',
        helperId: null,
        platform: 'discord',
        channelId: 'c',
        state: { number },
        updatedUtcMs: Date.now(),
        endedUtcMs: null,
      });
      return { kind, number };
    case 'fill': {
      await store.gear.put(filledMember(number), {
        mount: 'fork',
        connection: null,
        system: null,
        speeds: null,
        limits: null,
        apertureMm: null,
      });
      for (let i = 0; i < SITES_FILLED; i++) {
        await store.sites.put(
          { kind: 'member', id: filledMember(number) },
          {
            name: `s${i}`,
            latitudeDeg: 1,
            longitudeDeg: 2,
            elevationM: number,
            zone: 'UTC',
            horizon: null,
            isDefault: i === 0,
          },
        );
      }
      return { kind, number };
    }
    case 'forget':
      await store.forgetMember(filledMember(number));
      return { kind, number };
    case 'reminder': {
      const reminder: NewReminder = {
        memberId: remindedMember(number),
        clubId: CLUB_OF_WORKERS,
        platform: 'console',
        channelId: 'c',
        to: 'member',
        kind: 'dark',
        dueUtcMs: Date.now(),
        staleUtcMs: null,
        repeat: null,
        text: `reminder ${number}`,
      };
      const kept = await store.reminders.add(reminder);
      return { kind, number, key: deliveryKey(kept) };
    }
  }
};

const ORDER: readonly Write['kind'][] = [
  'outcome',
  'event',
  'reminder',
  'walk',
  'fill',
  'note',
  'event',
  'forget',
  'reminder',
  'outcome',
];

const writeOn = async (store: Store, firstNumber: number): Promise<void> => {
  let filled = firstNumber;
  for (let number = firstNumber; ; number++) {
    const kind = ORDER[number % ORDER.length] ?? 'note';
    if (kind === 'fill') filled = number;
    const write = { kind, number: kind === 'forget' ? filled : number } as Write;
    tell({ told: 'begins', write });
    tell({ told: 'done', write: await doWrite(store, write) });
    // SQLite answers without a turn of the event loop; a bot's questions come with one each.
    await nextTurn();
  }
};

/** The parent is the chat server: it takes the message, and answers. */
const parentAsPlatform = (serverMs: number): RunningPlatform => {
  const waiting = new Map<string, () => void>();
  process.on('message', (key: string) => {
    setTimeout(() => waiting.get(key)?.(), serverMs);
  });
  return {
    name: 'console',
    deliver: (reminder, text) =>
      new Promise((resolve) => {
        const key = deliveryKey(reminder);
        waiting.set(key, () => resolve('sent'));
        process.send?.({ key, text });
      }),
    health: () => ({ ok: true, detail: '' }),
    stop: async () => undefined,
  };
};

const task = JSON.parse(process.argv[2] ?? '') as WorkerTask;
const store = await openStore(task.place);
await store.ping();
tell({ told: 'open' });
if (task.delivers) {
  startReminders(contextOver(store, () => Date.now()).context, [parentAsPlatform(task.serverMs)], {
    lookEveryMs: 10,
    leaseMs: task.leaseMs,
    deliverWithinMs: task.leaseMs / 2,
  });
}
if (task.writes) await writeOn(store, task.firstNumber);
