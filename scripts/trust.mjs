// `npm run trust`: the long campaigns of which `npm test` runs a short form: thousands of hostile inputs and kills of a
// writing server, hundreds of seeded networks, benches, baskets and faces, the package installed by a stranger, every
// screen of every width by day and by night. Two hours on a slow laptop; a run that was broken off goes on where it stood.
//   npm run trust -- infer      only the files whose path contains "infer"
//   npm run trust -- --again    from the beginning, whatever was played already
import { readFileSync } from 'node:fs';
import { ensureBrowser } from './browser.mjs';
import { compileCatalog } from './catalog.mjs';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { at, fail } from './lib.mjs';
import { runTests } from './run-tests.mjs';
import { beginTrust, endTrust, figures, programNow, trustFolder } from './trust-state.mjs';
import { whichTests } from './which-tests.mjs';

const given = process.argv.slice(2);
const words = given.filter((word) => word !== '--again');
const isCampaign = (file) => /support\/(campaign|rounds)\.js/.test(readFileSync(at(file), 'utf8'));

try {
  const { core, browser, missing } = whichTests(words);
  const files = [...core, ...browser].filter(isCampaign);
  if (files.length === 0)
    throw new Error(`No campaign has ${(missing.length ? missing : words).join(' or ')} in its path.`);
  await ensureInstalled();
  await compileCatalog();
  await ensureBuilt();
  if (files.some((file) => browser.includes(file))) process.env.CHROMIUM = await browserPath();
  const folder = trustFolder(words);
  const begun = beginTrust({ again: given.includes('--again'), program: programNow(), folder });
  console.log(begun.words);
  const toRun = files.filter((file) => !begun.passed.includes(file));
  const failed = toRun.length > 0 ? await play(toRun, folder) : 0;
  for (const { campaign, next, counts, greatest } of figures(folder))
    console.log(
      `${campaign.name}, seed ${campaign.seed}: ${next} of ${campaign.rounds} rounds`,
      counts,
      greatest,
    );
  if (failed === 0) endTrust(folder);
  process.exitCode = failed === 0 ? 0 : 1;
} catch (error) {
  fail(error);
}

async function browserPath() {
  const { path, missing } = await ensureBrowser();
  if (missing) throw new Error(missing);
  return path;
}

async function play(toRun, folder) {
  process.env.WRISTPIN_TRUST = 'whole';
  process.env.WRISTPIN_TRUST_STATE = folder;
  const projects = ['--project', 'core', '--project', 'browser'];
  const timeouts = ['--testTimeout=7200000', '--hookTimeout=7200000'];
  const reporter = `--reporter=${at('scripts', 'trust-reporter.mjs')}`;
  const { passed, failed } = await runTests('trust', [...projects, reporter, ...timeouts, ...toRun]);
  console.log(`\n${passed} passed, ${failed} failed in ${toRun.length} campaigns`);
  return failed;
}
