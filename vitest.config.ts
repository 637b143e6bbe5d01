import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** What takes ten seconds and more, the longest first; beside one that mostly waits, one that mostly works. */
const long = [
  'e2e/spoken-answers',
  'e2e/screens/every-screen',
  'e2e/away',
  'e2e/screens/every-dialog',
  'e2e/talking',
  'e2e/screens/keyboard',
  'e2e/once',
  'e2e/every-use',
  'e2e/whole-job',
  'e2e/plan',
  'e2e/screens/',
  'e2e/findings-cases',
  'sight/sight',
  'job/case/',
  'cli/store-commands',
  'server/kill',
  'demo/demo-pictures',
  'listen/',
  'record/service-record-pdf',
  'store/',
  'gauge/spread',
];

/** Begun first, so that no core is idle beside a long file at the end; a fresh clone knows no times of earlier runs. */
class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification) => {
      const at = long.findIndex((part) => moduleId.includes(`test/${part}`));
      return at < 0 ? long.length : at;
    };
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b));
  }
}

export default defineConfig({
  test: {
    // the runner leaves one core free by default; on a bench laptop with two that doubles the wait
    maxWorkers: '100%',
    // a fresh worker for each of 250 files, and the program read anew in each, is a third of the whole time; what a
    // file lays over the world (globals, folders, servers) it takes away again
    isolate: false,
    sequence: { sequencer: LongFirst },
    testTimeout: 60_000,
    hookTimeout: 180_000,
    // a bound on what never comes, not a wait: by default a busy machine has one second for it
    expect: { poll: { timeout: 45_000 } },
    projects: [
      { extends: true, test: { name: 'core', include: ['test/**/*.test.ts'], exclude: ['test/e2e/**'] } },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['test/e2e/**/*.test.ts'],
          testTimeout: 300_000,
          // a real browser on a busy machine; what passed only then is named in the outcome
          retry: 1,
        },
      },
    ],
  },
});
