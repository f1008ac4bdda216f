import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/homeserver/**/*.test.ts'],
    globalSetup: ['test/homeserver/build-bot.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // One homeserver at a time.
    fileParallelism: false,
    // The members' encryption library tells every step.
    onConsoleLog: (line) => !/matrix_sdk_crypto|matrix_sdk_common/u.test(line),
    ...(process.env['CI'] === 'true'
      ? { reporters: ['default', ['json', { outputFile: '.cache/results-homeserver.json' }]] }
      : {}),
  },
});
