import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/homeserver/**/*.test.ts'],
    globalSetup: ['test/homeserver/build-bot.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    // Each file has a homeserver of its own, on a free port; mostly they wait, so that two at once cost little.
    maxWorkers: 2,
    // The members' client tells of every step it takes.
    onConsoleLog: (line, type) =>
      type === 'stdout' && /^(?:NO |first answer|messages under|\d+ encrypted|250 numbers|flood of)/u.test(line),
    ...(process.env['CI'] === 'true'
      ? { reporters: ['default', ['json', { outputFile: '.cache/results-homeserver.json' }]] }
      : {}),
  },
});
