import { defineConfig } from 'vitest/config';

/** Tests in a real browser against the built product: two files at a time, since they wait more than they work. */
export default defineConfig({
  test: {
    include: ['tests/e2e/**/*.test.ts'],
    environment: 'node',
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
