import { defineConfig } from 'vitest/config';

// What `npm run mutate -- ROOM` runs over each mutant: the room's own tests, the published checks and, where a room
// has worksheets, their examples. Other tests pass through the same code from far away, and slowly.
const room = process.env.MUTATE_ROOM ?? 'quantity';

export default defineConfig({
  test: {
    name: 'mutate',
    include: [room, 'published', 'desk'].map((folder) => `test/${folder}/**/*.test.ts`),
    setupFiles: ['test/support/seed.ts'],
    // Stryker ends what takes too long; a first run beside other work on the machine may take its time
    testTimeout: 900_000,
    hookTimeout: 900_000,
    // a fresh worker for each of fifty files is three quarters of the time that a mutant takes
    isolate: false,
  },
});
