// Loaded before the bot under load: on SIGUSR2 it collects all garbage and writes what is left alive, in bytes.
import { writeSync } from 'node:fs';

process.on('SIGUSR2', () => {
  globalThis.gc?.();
  globalThis.gc?.();
  const { heapUsed, external } = process.memoryUsage();
  writeSync(2, `heap-probe ${heapUsed + external}\n`);
});
