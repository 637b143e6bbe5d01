// `npm test`: installs if needed, then type check, lint, layering, unit and published checks, and the whole job in a
// real browser. Ends with one plain line, "N passed, N failed".
//   npm test                 everything
//   npm test -- fasten       only the test files whose path contains "fasten"
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { ensureBrowser } from './browser.mjs';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { at, fail, node } from './lib.mjs';

const only = process.argv.slice(2);
if (!process.stdout.isTTY) process.env.NO_COLOR = '1';
const counts = { passed: 0, failed: 0, skipped: 0 };
const seconds = (since) => `${((Date.now() - since) / 1000).toFixed(0)} s`;

/** A step that is one check: it passes or it fails, and the next one runs all the same. */
async function check(title, act) {
  const started = Date.now();
  console.log(`\n── ${title}`);
  try {
    await act();
    counts.passed++;
    console.log(`   ${title}: passed (${seconds(started)})`);
  } catch (error) {
    counts.failed++;
    console.error(`   ${title}: FAILED (${seconds(started)}) ${error.message}`);
  }
}

/** A run of the test runner: its own counts are added up from its report. */
async function tests(title, ...args) {
  const started = Date.now();
  const report = at('test-results', `${title.replaceAll(' ', '-')}.json`);
  mkdirSync(at('test-results'), { recursive: true });
  rmSync(report, { force: true });
  console.log(`\n── ${title}`);
  const vitest = at('node_modules', 'vitest', 'vitest.mjs');
  const outcome = await node(
    vitest,
    'run',
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...args,
  ).then(
    () => undefined,
    (error) => error,
  );
  if (!existsSync(report)) {
    counts.failed++;
    console.error(`   ${title}: the test runner left no report. ${outcome?.message ?? ''}`);
    return;
  }
  const result = JSON.parse(readFileSync(report, 'utf8'));
  // a file that cannot be loaded counts no test of its own, yet it has failed
  const brokenFiles = result.testResults.filter(
    (f) => f.status === 'failed' && f.assertionResults.length === 0,
  ).length;
  counts.passed += result.numPassedTests;
  counts.failed += result.numFailedTests + brokenFiles;
  counts.skipped += result.numPendingTests;
  if (outcome && result.numFailedTests + brokenFiles === 0) counts.failed++;
  if (result.numTotalTests === 0 && only.length === 0) counts.failed++;
  console.log(
    `   ${title}: ${result.numPassedTests} passed, ${result.numFailedTests} failed (${seconds(started)})`,
  );
}

try {
  await ensureInstalled();
  await ensureBuilt();
  if (only.length === 0) {
    await check('type check', () =>
      node(at('node_modules', 'typescript', 'bin', 'tsc'), '-p', at('tsconfig.json')),
    );
    await check('lint', () => node(at('node_modules', '@biomejs', 'biome', 'bin', 'biome'), 'check', '.'));
    await check('layering', () =>
      node(
        at('node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs'),
        '--config',
        '.dependency-cruiser.mjs',
        'src',
      ),
    );
    await check('no dead code', () => node(at('node_modules', 'knip', 'bin', 'knip.js')));
  }
  await tests('unit and published checks', '--project', 'core', ...only);
  const browser = await ensureBrowser();
  if (browser.path) {
    process.env.CHROMIUM = browser.path;
    await tests('the job in a real browser', '--project', 'browser', ...only);
  } else {
    counts.failed++;
    console.error(`\n${browser.missing}`);
  }
} catch (error) {
  counts.failed++;
  fail(error);
}

const skipped = counts.skipped ? `, ${counts.skipped} skipped` : '';
console.log(`\n${counts.passed} passed, ${counts.failed} failed${skipped}`);
process.exitCode = counts.failed === 0 ? 0 : 1;
