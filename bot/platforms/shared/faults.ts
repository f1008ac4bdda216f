/** What goes wrong while a question is answered: said in the log and counted in the same words on every platform. */
import type { PlatformContext } from '../../app/platform.js';
import type { ErrorSink } from '../../commands/core/dispatch.js';
import type { PlatformName } from '../../ground/platform-name.js';

type Told = Pick<PlatformContext, 'log' | 'metrics'>;

/** Told of faults of ours inside commands. */
export const commandFaults =
  ({ log, metrics }: Told, platform: PlatformName): ErrorSink =>
  (error, command) => {
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
