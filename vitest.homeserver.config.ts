import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/homeserver/**/*.test.ts'],
    testTimeout: 90_000,
    hookTimeout: 90_000,
    fileParallelism: false,
  },
});
