import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/homeserver/**', 'node_modules/**'],
    testTimeout: 30_000,
    // .ci/run adds these up over all suites.
    ...(process.env['CI'] === 'true'
      ? { reporters: ['default', ['json', { outputFile: `.cache/results-${process.env['SUITE'] ?? 'main'}.json` }]] }
      : {}),
  },
});
