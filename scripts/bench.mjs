// `npm run bench [name]`: runs bench/*.ts, each printing ratios against a reference measured in the same run.
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { findBrowser } from './browser.mjs';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { at, fail } from './lib.mjs';

try {
  await ensureInstalled();
  await ensureBuilt();
  const { build } = await import('vite');
  process.env.CHROMIUM ??= findBrowser() ?? '';
  const wanted = process.argv[2] ?? '';
  const outDir = at('node_modules', '.cache', 'wristpin-bench');
  rmSync(outDir, { recursive: true, force: true });
  mkdirSync(outDir, { recursive: true });
  const names = readdirSync(at('bench')).filter((f) => f.endsWith('.ts') && f.includes(wanted));
  if (names.length === 0)
    throw new Error(`No benchmark is called “${wanted}”. There are: ${readdirSync(at('bench')).join(', ')}`);
  for (const name of names) {
    await build({
      configFile: false,
      logLevel: 'warn',
      build: { ssr: at('bench', name), outDir, emptyOutDir: false, target: 'node20' },
    });
    console.log(`\n── ${name}`);
    await import(pathToFileURL(`${outDir}/${name.replace(/\.ts$/, '.js')}`).href);
  }
} catch (error) {
  fail(error);
}
