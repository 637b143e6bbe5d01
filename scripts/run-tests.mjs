// One run of the test runner, its counts added up from its report.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { at, node } from './lib.mjs';

/** What the outcome must not hide: a test that failed at first, by name and with the first line of why. */
export const secondTries = (tests) =>
  tests
    .filter(({ status, failureMessages }) => status === 'passed' && failureMessages.length > 0)
    .map(({ fullName, failureMessages }) => `${fullName}: ${failureMessages[0].split('\n')[0]}`);

/**
 * { passed, failed, skipped, tests } of `vitest run` with these arguments; says what passed only at the second try. The
 * report stays in test-results/.
 */
export async function runTests(title, args) {
  const report = at('test-results', `${title.replaceAll(' ', '-')}.json`);
  mkdirSync(at('test-results'), { recursive: true });
  rmSync(report, { force: true });
  const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${report}`];
  const vitest = at('node_modules', 'vitest', 'vitest.mjs');
  const outcome = await node(vitest, 'run', ...reporters, ...args).then(
    () => undefined,
    (error) => error,
  );
  if (!existsSync(report)) {
    console.error(`   ${title}: the test runner left no report. ${outcome?.message ?? ''}`);
    return { passed: 0, failed: 1, skipped: 0, tests: [] };
  }
  const counts = countsOf(JSON.parse(readFileSync(report, 'utf8')), outcome !== undefined);
  for (const name of secondTries(counts.tests)) console.log(`   passed only at the second try: ${name}`);
  return counts;
}

function countsOf(report, endedBadly) {
  // a file that cannot be loaded counts no test of its own, yet it has failed
  const brokenFiles = report.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  ).length;
  let failed = report.numFailedTests + brokenFiles;
  if (failed === 0 && (endedBadly || report.numTotalTests === 0)) failed = 1;
  return {
    passed: report.numPassedTests,
    failed,
    skipped: report.numPendingTests,
    tests: report.testResults.flatMap((file) => file.assertionResults),
  };
}
