import { defineConfig } from 'vitest/config';

/** Tests in a real browser against the built product: one file at a time, so that two cores suffice. */
export default defineConfig({
  test: {
    include: ['tests/e2e/**/*.test.ts'],
    environment: 'node',
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
