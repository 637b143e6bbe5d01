import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // the runner leaves one core free by default; on a bench laptop with two that doubles the wait
    maxWorkers: '100%',
    testTimeout: 60_000,
    hookTimeout: 180_000,
    projects: [
      { extends: true, test: { name: 'core', include: ['test/**/*.test.ts'], exclude: ['test/e2e/**'] } },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['test/e2e/**/*.test.ts'],
          testTimeout: 180_000,
        },
      },
    ],
  },
});
