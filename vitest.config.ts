import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    // the runner leaves one core free by default; on a bench laptop with two that doubles the wait
    maxWorkers: '100%',
    // a fresh worker for each of 250 files, and the program read anew in each, is a third of the whole time; what a
    // file lays over the world (globals, folders, servers) it takes away again
    isolate: false,
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
