import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** Minutes of simulated walks, real pictures and whole evenings: a suite of its own, so that the usual one stays quick. */
const LONG = [
  'test/bench-of-faults/**',
  'test/club/no-public-difference.test.ts',
  'test/pictures/picture-reader.test.ts',
  'test/pictures/screens.test.ts',
  'test/reading/screens.test.ts',
  'test/stories/**',
  'test/triage/simulation.test.ts',
];
const suite = process.env['SUITE'] ?? 'main';

export default defineConfig({
  test: {
    include: suite === 'long' ? LONG.map((path) => path.replace(/\*\*$/u, '**/*.test.ts')) : ['test/**/*.test.ts'],
    exclude: ['test/homeserver/**', 'node_modules/**', ...(suite === 'main' ? LONG : [])],
    globalSetup: ['test/whole-program.ts'],
    setupFiles: ['test/same-draws.ts'],
    testTimeout: 30_000,
    // One loading of the catalogue and the fault model a worker, not a file: tests leave no state behind (no mocks of modules).
    // Processes, not threads: pictures and the store are native code, and one long suite looks at its own child processes.
    pool: 'forks',
    isolate: false,
    // Much of it waits (for retries, for processes it started): one more than there are cores.
    maxWorkers: availableParallelism() + 1,
    // .ci/run adds these up over all suites.
    ...(process.env['CI'] === 'true'
      ? { reporters: ['default', ['json', { outputFile: `.cache/results-${suite}.json` }]] }
      : {}),
  },
});
