import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/homeserver/**/*.test.ts'],
    globalSetup: ['test/homeserver/build-bot.ts'],
    // A homeserver that was killed may take minutes to deliver again; see dendrite.ts.
    testTimeout: 480_000,
    hookTimeout: 480_000,
    // One homeserver at a time.
    fileParallelism: false,
    ...(process.env['CI'] === 'true' ? { reporters: ['default', ['json', { outputFile: '.cache/results-homeserver.json' }]] } : {}),
  },
});
