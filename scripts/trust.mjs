// `npm run trust`: the long campaigns of which `npm test` runs a short form: hundreds of seeded networks, benches,
// baskets and faces, kills of a writing server, the package installed by a stranger. An hour on a slow laptop.
//   npm run trust -- infer    only the files whose path contains "infer"
import { readFileSync } from 'node:fs';
import { compileCatalog } from './catalog.mjs';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { at, fail } from './lib.mjs';
import { runTests } from './run-tests.mjs';
import { whichTests } from './which-tests.mjs';

const words = process.argv.slice(2);
const isCampaign = (file) => readFileSync(at(file), 'utf8').includes('support/campaign.js');

try {
  const { core, missing } = whichTests(words);
  const files = core.filter(isCampaign);
  if (files.length === 0)
    throw new Error(`No campaign has ${(missing.length ? missing : words).join(' or ')} in its path.`);
  await ensureInstalled();
  await compileCatalog();
  await ensureBuilt();
  process.env.WRISTPIN_TRUST = 'whole';
  const timeouts = ['--testTimeout=3600000', '--hookTimeout=3600000'];
  const { passed, failed } = await runTests('trust', ['--project', 'core', ...timeouts, ...files]);
  console.log(`\n${passed} passed, ${failed} failed in ${files.length} campaigns`);
  process.exitCode = failed === 0 ? 0 : 1;
} catch (error) {
  fail(error);
}
