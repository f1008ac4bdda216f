/** A chat server in miniature for reminders: remembers what it took, shows each delivery key once, and fails when told to. */
import { pino } from 'pino';
import type { Deps } from '../../bot/commands/core/command.js';
import { createMetrics } from '../../bot/app/metrics.js';
import type { PlatformContext, RunningPlatform } from '../../bot/app/platform.js';
import { deliveryKey } from '../../bot/reminders/delivery-key.js';
import type { StandingWarning } from '../../bot/reminders/standing-warning.js';
import type { Settings } from '../../bot/app/settings.js';
import type { Reminder, Store } from '../../bot/store/store.js';

/** 2026-11-25, 20:00 UTC. */
export const START = Date.UTC(2026, 10, 25, 20);

/** Fenwold Common; every night, 45 minutes before sunrise. */
export const standing: StandingWarning = {
  every: 'sunrise',
  evenings: [1, 2, 3, 4, 5, 6, 7],
  minutesBefore: 45,
  siteName: 'Fenwold Common',
  zone: 'Europe/London',
  latitudeDeg: 52.71,
  longitudeDeg: 0.12,
  elevationM: 3,
};

export interface Said {
  readonly key: string;
  readonly reminder: Reminder;
  readonly text: string;
}

export interface FakePlatform extends RunningPlatform {
  /** Every send that reached the server, repeats included. */
  readonly sends: Said[];
  /** What members see: each key once. */
  readonly shown: () => readonly Said[];
  /** What the next deliveries come to, in order; afterwards "sent". */
  readonly next: ('sent' | 'gone' | 'refused' | 'hangs')[];
}

export const fakePlatform = (name: RunningPlatform['name'] = 'console'): FakePlatform => {
  const sends: Said[] = [];
  const next: FakePlatform['next'] = [];
  return {
    name,
    sends,
    next,
    shown: () => sends.filter(({ key }, i) => sends.findIndex((each) => each.key === key) === i),
    deliver: async (reminder, text) => {
      const result = next.shift() ?? 'sent';
      if (result === 'refused') throw new Error('the server says no');
      if (result === 'hangs') return new Promise(() => undefined);
      if (result === 'sent') sends.push({ key: deliveryKey(reminder), reminder, text });
      return result;
    },
    health: () => ({ ok: true, detail: '' }),
    stop: async () => undefined,
  };
};

/** `lines`: the log, parsed. Reminders use nothing of deps but the store, and nothing of the settings. */
export const contextOver = (
  store: Store,
  now: () => number,
): { readonly context: PlatformContext; readonly lines: Record<string, unknown>[] } => {
  const lines: Record<string, unknown>[] = [];
  const log = pino(
    { level: 'debug' },
    {
      write: (line: string) => {
        lines.push(JSON.parse(line) as Record<string, unknown>);
      },
    },
  );
  return { lines, context: { deps: { store } as Deps, settings: {} as Settings, log, metrics: createMetrics(), now } };
};
