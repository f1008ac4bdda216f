/** The page with the real commands and a store in memory, as `npm run try` starts it but for the clock. */
import { vi } from 'vitest';
import { openDeps } from '../../bot/app/compose.js';
import { createLog } from '../../bot/app/log.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { createMetrics } from '../../bot/app/metrics.js';
import { loadSettings } from '../../bot/app/settings.js';
import { startBrowser } from '../../bot/platforms/browser/index.js';

// A busy machine may be many times slower; nothing here is about its speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

/** A January evening, whatever the calendar says. */
const NOW_UTC_MS = Date.UTC(2027, 0, 8, 20, 0);

export const startPage = async (over: Partial<Deps> = {}) => {
  const settings = loadSettings({ PIERHAND_SITE: '52.71,0.12' });
  const opened = await openDeps(settings, () => {}, { place: { memory: true } });
  const { close } = opened;
  const deps = { ...opened.deps, ...over };
  const log = createLog('silent', []);
  const started = await startBrowser({ deps, settings, log, metrics: createMetrics(), now: () => NOW_UTC_MS }, 0);
  return {
    ...started,
    stop: async () => {
      await started.platform.stop();
      await close();
    },
  };
};
