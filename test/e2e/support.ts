import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from 'playwright-core';
import { expect } from 'vitest';

/** The built program on a store of its own, as a person would start it. */
export interface RunningShop {
  readonly address: string;
  readonly store: string;
  stop(): Promise<void>;
}

export async function startShop(...args: string[]): Promise<RunningShop> {
  const dir = mkdtempSync(join(tmpdir(), 'wristpin-e2e-'));
  const store = join(dir, 'shop.db');
  const child = spawn(
    process.execPath,
    ['bin/wristpin.js', 'serve', '--port', '0', '--store', store, ...args],
    {
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  let said = '';
  const address = await new Promise<string>((resolve, reject) => {
    const listen = (chunk: Buffer) => {
      said += chunk;
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
      if (found) resolve(found[0]);
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    child.on('exit', (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
  });
  return {
    address,
    store,
    stop: async () => {
      const gone = new Promise((resolve) => child.once('exit', resolve));
      child.kill('SIGTERM');
      await gone;
      rmSync(dir, { recursive: true, force: true });
    },
  };
}

/** Without these, Chromium looks for hosts that a closed network does not have. */
const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export function startBrowser(more: readonly string[] = []): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [...quiet, ...more],
  });
}

export const wide: BrowserContextOptions = { viewport: { width: 1440, height: 900 } };
export const phone: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true };

/** A page that fails the test when the application throws or logs an error. */
export async function openPage(
  context: BrowserContext,
  address: string,
): Promise<{ page: Page; errors: string[] }> {
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('pageerror', (e) => errors.push(e.message));
  page.on('console', (m) => {
    if (m.type() === 'error') errors.push(m.text());
  });
  page.setDefaultTimeout(15_000);
  await page.goto(address);
  return { page, errors };
}

/** No serious or critical finding of the accessibility checker on what is shown now. */
export async function expectAccessible(
  page: Page,
  where: string,
  except: readonly string[] = [],
): Promise<void> {
  const builder = except.reduce((b, part) => b.exclude(part), new AxeBuilder({ page }));
  const { violations } = await builder.analyze();
  const bad = violations
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map(
      (v) =>
        `${where}: ${v.id} ${v.help} — ${v.nodes
          .map((n) => n.target.join(' '))
          .slice(0, 4)
          .join(' | ')}`,
    );
  expect(bad).toEqual([]);
}

export async function allSaved(page: Page): Promise<void> {
  await page.getByRole('status').filter({ hasText: 'all saved' }).first().waitFor({ state: 'attached' });
}
