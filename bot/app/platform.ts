/** What the composition root gives a platform, and what it gets back. */
import type { Logger } from 'pino';
import type { Deps } from '../commands/core/command.js';
import type { PlatformName } from '../ground/platform-name.js';
import type { Settings } from './settings.js';
import type { UtcMs } from '../sky/types.js';
import type { Reminder } from '../store/store.js';
import type { Metrics } from './metrics.js';

export interface PlatformContext {
  readonly deps: Deps;
  readonly settings: Settings;
  readonly log: Logger;
  readonly metrics: Metrics;
  /** The one clock; tests replace it. */
  readonly now: () => UtcMs;
}

export interface RunningPlatform {
  readonly name: PlatformName;
  /**
   * Says a reminder where it belongs. `gone`: the member, channel or room is no longer there. Rejects when it may be tried again.
   * Sent under deliveryKey(reminder) (bot/reminders), so that a server which took it before shows it once.
   */
  readonly deliver: (reminder: Reminder, text: string) => Promise<'sent' | 'gone'>;
  readonly health: () => { readonly ok: boolean; readonly detail: string };
  /** Lets answers under way finish, then closes. */
  readonly stop: () => Promise<void>;
}
