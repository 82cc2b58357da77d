import { defineConfig } from 'vitest/config';

export default defineConfig({
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/e2e/**', 'tests/bench/**', '**/node_modules/**'],
    environment: 'node',
    // By default one core is left idle; of two, that is half of them.
    maxWorkers: '100%',
    testTimeout: 20_000,
  },
});
