import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/homeserver/**/*.test.ts'],
    globalSetup: ['test/homeserver/build-bot.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // One homeserver at a time.
    fileParallelism: false,
    // What the members' client tells of every step it takes.
    onConsoleLog: (line) =>
      !/matrix_sdk_|\[Perf\]|pendingEvent|remote echo|encryption\] |Stopping queue|SyncApi|Sync no longer|Error decrypting/u.test(
        line,
      ),
    ...(process.env['CI'] === 'true'
      ? { reporters: ['default', ['json', { outputFile: '.cache/results-homeserver.json' }]] }
      : {}),
  },
});
