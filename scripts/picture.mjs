// `npm run picture`: photographs the application with the invented machine for the README.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureBrowser } from './browser.mjs';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { at, fail } from './lib.mjs';

/** Starts the built program on a store of its own; resolves with its address. */
function startShop(store) {
  const child = spawn(process.execPath, [
    at('bin', 'wristpin.js'),
    'serve',
    '--port',
    '0',
    '--store',
    store,
    '--demo',
  ]);
  const address = new Promise((resolve, reject) => {
    child.stdout.on('data', (text) => {
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(String(text));
      if (found) resolve(found[0]);
    });
    child.on('exit', (code) => reject(new Error(`the server ended with ${code}`)));
  });
  return { child, address };
}

const pictures = [
  { file: 'sheet.png', path: (job) => `/job/${job}/assembly`, width: 1440, height: 900, scheme: 'light' },
  {
    file: 'step.png',
    path: (job) => `/job/${job}/tighten/cylinder-head`,
    width: 1440,
    height: 900,
    scheme: 'dark',
    back: 6,
  },
  { file: 'phone.png', path: (job) => `/job/${job}/teardown`, width: 390, height: 844, scheme: 'light' },
];

const dir = mkdtempSync(join(tmpdir(), 'wristpin-picture-'));
let shop;
try {
  await ensureInstalled();
  await ensureBuilt();
  const browserFile = await ensureBrowser();
  if (!browserFile.path) throw new Error(browserFile.missing);
  const { chromium } = await import('playwright-core');
  shop = startShop(join(dir, 'shop.db'));
  const address = await shop.address;
  const { jobs } = await (await fetch(`${address}/api/jobs`)).json();
  const job = jobs.find((j) => j.summary.tag === 17).id;
  const browser = await chromium.launch({
    executablePath: browserFile.path,
    args: ['--no-sandbox', '--disable-background-networking'],
  });
  for (const { file, path, width, height, scheme, back = 0 } of pictures) {
    const page = await browser.newPage({ viewport: { width, height }, colorScheme: scheme });
    await page.goto(address + path(job));
    await page.getByRole('button').first().waitFor();
    for (let i = 0; i < back; i++) await page.getByRole('button', { name: 'Back' }).click();
    await page.waitForTimeout(600);
    await page.screenshot({ path: at('docs', file) });
    console.log(`docs/${file}`);
  }
  await browser.close();
} catch (error) {
  fail(error);
} finally {
  shop?.child.kill();
  rmSync(dir, { recursive: true, force: true });
}
