import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium } from 'playwright-core';

/** Run in a page: a program's hands are quicker than a person's; hands.test.ts holds what a bouncing finger may not do. */
export const quickHands = 'globalThis.quickHands = { bounceMs: 0, freshMs: 0 }';

export interface RunningShop {
  readonly address: string;
  readonly store: string;
  stop(): Promise<void>;
}

/** The built program on a store of its own, as a person would start it. */
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
export const quietBrowser = [
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
    args: [...quietBrowser, ...more],
  });
}

export const wide: BrowserContextOptions = { viewport: { width: 1440, height: 900 } };
export const phone: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true };
