/** What goes wrong while a question is answered: said in the log and counted in the same words on every platform. */
import type { PlatformContext } from '../../app/platform.js';
import type { ErrorSink } from '../../commands/core/dispatch.js';
import type { PlatformName } from '../../ground/platform-name.js';
import { StoreError } from '../../store/store.js';

type Told = Pick<PlatformContext, 'log' | 'metrics'>;

/** Told of what went wrong inside commands: a store that is away is not a fault of the program. */
export const commandFaults =
  ({ log, metrics }: Told, platform: PlatformName): ErrorSink =>
  (error, command) => {
    if (error instanceof StoreError) {
      log.error({ err: error, command }, 'the store could not serve a command');
      metrics.failed(platform, 'store');
      return;
    }
    log.error({ err: error, command }, 'a command failed');
    metrics.failed(platform, 'command');
  };

/** Told why there is no picture; its words went out. */
export const chartFaults =
  ({ log, metrics }: Told, platform: PlatformName) =>
  (error: unknown): void => {
    log.warn({ err: error }, 'a chart could not be drawn or sent');
    metrics.failed(platform, 'chart');
  };
