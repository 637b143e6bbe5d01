// Mutation of one room, see scripts/mutate.mjs, which says which (MUTATE_ROOM).
const room = process.env.MUTATE_ROOM ?? 'quantity';
const results = `test-results/mutate/${room}`;
const sampled = Boolean(process.env.MUTATE_SAMPLE);

export default {
  mutate: [`src/${room}/**/*.ts`, '!src/**/index.ts', '!src/**/*.gen.ts'],
  testRunner: 'vitest',
  vitest: { configFile: 'vitest.mutate.config.ts', related: true },
  dryRunTimeoutMinutes: 60,
  coverageAnalysis: 'perTest',
  // a table or a sentence made once when its file is loaded would have every test run again for each of its cells
  ignoreStatic: true,
  concurrency: Number(process.env.MUTATE_WORKERS ?? 2),
  plugins: ['@stryker-mutator/vitest-runner', ...(sampled ? ['./scripts/mutate-sample.mjs'] : [])],
  timeoutMS: 10_000,
  timeoutFactor: 2,
  incremental: true,
  incrementalFile: `${results}/incremental.json`,
  reporters: ['clear-text', 'progress-append-only', 'json', 'html', ...(sampled ? ['sample'] : [])],
  jsonReporter: { fileName: `${results}/report.json` },
  htmlReporter: { fileName: `${results}/report.html` },
  clearTextReporter: { logTests: false, reportTests: false, allowColor: false, reportMutants: false },
  // a sample that falls short by chance is judged by its interval, in scripts/mutate.mjs
  thresholds: { high: 85, low: 85, break: sampled ? null : 85 },
  tempDirName: 'test-results/mutate/sandbox',
  // with their slash: without it, folders of these names inside a room are left out too, and its tests cannot load
  ignorePatterns: ['/dist', '/docs', '/coverage', '/test-results', '/bench'],
  allowEmpty: false,
};
