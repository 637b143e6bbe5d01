import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { outsideValues } from '../../scripts/outside-values.mjs';
import { testFiles, whichTests } from '../../scripts/which-tests.mjs';

const files = [
  'test/fasten/torque.test.ts',
  'test/fasten/wrench.test.ts',
  'test/e2e/measure.test.ts',
  'test/job/answers/measure/bore.test.ts',
  'test/package.test.ts',
];

describe('npm test -- WORD', () => {
  test('means the files whose path contains the word, and builds nothing that they do not need', () => {
    expect(whichTests(['fasten'], files)).toEqual({
      core: ['test/fasten/torque.test.ts', 'test/fasten/wrench.test.ts'],
      browser: [],
      build: false,
      missing: [],
    });
  });

  test('builds when a test of the browser or of the package is meant', () => {
    expect(whichTests(['measure'], files)).toMatchObject({
      core: ['test/job/answers/measure/bore.test.ts'],
      browser: ['test/e2e/measure.test.ts'],
      build: true,
    });
    expect(whichTests(['package'], files).build).toBe(true);
  });

  test('takes several words, and says which of them mean nothing', () => {
    expect(whichTests(['torque', 'torqe'], files)).toMatchObject({
      core: ['test/fasten/torque.test.ts'],
      missing: ['torqe'],
    });
  });

  test('without a word means everything', () => {
    const { core, browser, build, missing } = whichTests([], files);
    expect([...core, ...browser].sort()).toEqual([...files].sort());
    expect({ build, missing }).toEqual({ build: true, missing: [] });
  });

  test('knows the test files of this repository', () => {
    expect(testFiles()).toContain('test/scripts/which-tests.test.ts');
    expect(testFiles().filter((path) => !path.endsWith('.test.ts'))).toEqual([]);
  });

  test('a word that no path contains fails with words, before anything is installed or built', () => {
    const script = join(resolve(import.meta.dirname, '../..'), 'scripts', 'test.mjs');
    const { status, stdout, stderr } = spawnSync(process.execPath, [script, 'no-such-word'], {
      encoding: 'utf8',
    });
    expect(status).toBe(1);
    expect(stderr).toContain('No test file has “no-such-word” in its path.');
    expect(stdout.trim()).toBe('0 passed, 1 failed');
  });
});

describe('the outside values that a run compared', () => {
  const outside = (source: string, mark: string, values: number) => ({ outside: { source, mark, values } });

  test('are added up over sources and marks, of passed tests only', () => {
    const tests = [
      { status: 'passed', meta: outside('A', 'seen', 30) },
      { status: 'passed', meta: outside('B', 'from memory', 12) },
      { status: 'passed', meta: outside('A', 'from memory', 1) },
      { status: 'failed', meta: outside('C', 'seen', 500) },
      { status: 'passed', meta: {} },
    ];
    expect(outsideValues(tests)).toBe('43 outside values from 2 sources compared: 30 seen, 13 from memory');
  });

  test('are not mentioned where none was compared', () => {
    expect(outsideValues([{ status: 'passed', meta: {} }])).toBeUndefined();
  });
});
