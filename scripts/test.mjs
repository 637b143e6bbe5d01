// `npm test`: installs if needed, then type check, lint, layering, unit and published checks, and the whole job in a
// real browser. Ends with one plain line, "N passed, N failed".
//   npm test                 everything
//   npm test -- fasten       only the test files whose path contains "fasten", and no more made for it than they need
import { compileCatalog } from './catalog.mjs';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { at, fail, node } from './lib.mjs';
import { outsideValues } from './outside-values.mjs';
import { runTests } from './run-tests.mjs';
import { whichTests } from './which-tests.mjs';

const words = process.argv.slice(2).filter((word) => !word.startsWith('-'));
const flags = process.argv.slice(2).filter((word) => word.startsWith('-'));
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

/** A run of the test runner over one project. A project in which no file is meant is passed over with a word. */
async function tests(title, project, files) {
  const started = Date.now();
  console.log(`\n── ${title}`);
  if (files.length === 0) {
    console.log(`   ${title}: skipped, no test file there has ${quoted(words)} in its path`);
    return;
  }
  const result = await runTests(title, ['--project', project, ...flags, ...(words.length ? files : [])]);
  for (const key of Object.keys(counts)) counts[key] += result[key];
  console.log(`   ${title}: ${result.passed} passed, ${result.failed} failed (${seconds(started)})`);
  const outside = outsideValues(result.tests);
  if (outside) console.log(`   ${outside}`);
}

async function browserTests(files) {
  const { ensureBrowser } = await import('./browser.mjs');
  const browser = files.length ? await ensureBrowser() : {};
  if (browser.missing) {
    counts.failed++;
    console.error(`\n${browser.missing}`);
    return;
  }
  if (browser.path) process.env.CHROMIUM = browser.path;
  await tests('the job in a real browser', 'browser', files);
}

async function checks() {
  const program = (...path) => at('node_modules', ...path);
  await check('type check', () => node(program('typescript', 'bin', 'tsc'), '-p', at('tsconfig.json')));
  await check('lint', () => node(program('@biomejs', 'biome', 'bin', 'biome'), 'check', '.'));
  const cruiser = program('dependency-cruiser', 'bin', 'dependency-cruise.mjs');
  await check('layering', () => node(cruiser, '--config', '.dependency-cruiser.mjs', 'src'));
  await check('no dead code', () => node(program('knip', 'bin', 'knip.js')));
}

/** Beside each other: the build keeps one core busy, the checks of the source the other. */
async function builtAndChecked(check, build) {
  const [built] = await Promise.allSettled([build && ensureBuilt(), check && checks()]);
  if (built.status === 'rejected') throw built.reason;
}

const quoted = (list) => list.map((word) => `“${word}”`).join(' or ');

const meant = whichTests(words);
if (meant.missing.length) {
  counts.failed++;
  console.error(`No test file has ${quoted(meant.missing)} in its path. Paths begin with test/ROOM/.`);
} else {
  try {
    await ensureInstalled();
    await compileCatalog();
    await builtAndChecked(words.length === 0, meant.build);
    await tests('unit and published checks', 'core', meant.core);
    await browserTests(meant.browser);
  } catch (error) {
    counts.failed++;
    fail(error);
  }
}

const skipped = counts.skipped ? `, ${counts.skipped} skipped` : '';
console.log(`\n${counts.passed} passed, ${counts.failed} failed${skipped}`);
process.exitCode = counts.failed === 0 ? 0 : 1;
