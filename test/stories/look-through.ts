/** The scheduler, run long enough to say what is due at that instant. */
import type { RunningPlatform } from '../../bot/app/platform.js';
import { startReminders } from '../../bot/reminders/start-reminders.js';
import type { Store } from '../../bot/store/store.js';
import { contextOver } from '../reminders/fake-platform.js';

/** Stopping lets the deliveries under way finish, and the first look starts at once. */
export const lookThrough = async (store: Store, platform: RunningPlatform, now: () => number): Promise<void> => {
  const { context, lines } = contextOver(store, now);
  const running = startReminders(context, [platform], { lookEveryMs: 10, purgeEveryMs: 3_600_000 });
  await new Promise((resolve) => setTimeout(resolve, 60));
  await running.stop();
  const wrong = lines.filter(({ level }) => Number(level) >= 50);
  if (wrong.length > 0) throw new Error(`the reminders failed: ${JSON.stringify(wrong)}`);
};
