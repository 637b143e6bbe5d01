import { execFileSync } from 'node:child_process';
import { createHash, createPublicKey, X509Certificate } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core';
import { keptTrust, type Network } from '../../src/server/index.js';
import { loadDemo, packaged } from '../../src/shopkeep/index.js';
import { startServer, type TestServer } from '../server/support.js';
import { phone, quietBrowser } from './running.js';

/** A bench in a network of its own: what it is called by there is the test's to say, for this computer's addresses are not. */
export interface BenchInNetwork {
  readonly server: TestServer;
  /** what the shop's network knows it by from now on */
  readonly callIt: (addresses: readonly string[]) => void;
  readonly origin: (called: string) => string;
  readonly pairingLink: (called: string) => Promise<string>;
  /** PEM of the shop's own authority, where it has one */
  readonly authority?: string;
  readonly close: () => Promise<void>;
}

export async function startBench(secure: boolean, first: readonly string[]): Promise<BenchInNetwork> {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-bench-'));
  const trust = secure ? await keptTrust(join(folder, 'authority.pem'), new Date()) : undefined;
  let called = first;
  const network: Network = { addresses: () => called, ...(trust && { trust }) };
  const { web, demo } = packaged();
  const server = await startServer({ network, webRoot: web, demo, clock: () => new Date() });
  await loadDemo(server.store, demo);
  const scheme = secure ? 'https' : 'http';
  const origin = (name: string) => `${scheme}://${name}:${server.port}`;
  return {
    server,
    callIt: (addresses) => {
      called = addresses;
    },
    origin,
    pairingLink: async (name) =>
      `${origin(name)}/pair/${(await server.post('/api/devices/code', {})).json.code}`,
    ...(trust && { authority: new X509Certificate(trust.authority).toString() }),
    close: async () => {
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A phone: a browser with a folder of its own, which is closed and opened again, in networks where some names lead nowhere. */
export class Phone {
  readonly #folder = mkdtempSync(join(tmpdir(), 'wristpin-phone-'));
  readonly #profile = join(this.#folder, 'profile');
  #context: BrowserContext | undefined;

  /** The browser that is open; the one before is closed. `reached` are names of the bench, `gone` those it had. */
  async open(
    { reached, gone = [] }: { reached: readonly string[]; gone?: readonly string[] },
    options: BrowserContextOptions = {},
    more: readonly string[] = [],
  ): Promise<BrowserContext> {
    await this.#context?.close();
    const rules = [
      ...gone.map((name) => `MAP ${name} ~NOTFOUND`),
      ...reached.map((name) => `MAP ${name} 127.0.0.1`),
    ].join(', ');
    this.#context = await chromium.launchPersistentContext(this.#profile, {
      executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
      args: [...quietBrowser, `--host-resolver-rules=${rules}`, ...more],
      env: { ...process.env, HOME: this.#folder },
      ...phone,
      ...options,
    });
    return this.#context;
  }

  /**
   * What a phone needs to take the certificate of a bench that is called so: by `certutil`, where this computer has it, it
   * trusts the authority as a phone would and the browser judges everything else; otherwise the browser is told of the key
   * of the certificate alone, which is another one each time the bench is called otherwise.
   */
  async trust(bench: BenchInNetwork, called: string, gone?: string): Promise<readonly string[]> {
    const shown = await certificateFor(bench.server.port, called, gone);
    this.#judges ??= this.#trustsAuthority(bench.authority!);
    return this.#judges ? [] : [`--ignore-certificate-errors-spki-list=${keyOf(shown)}`];
  }

  #judges: boolean | undefined;

  /** Whether this computer could tell the browser of the authority. */
  #trustsAuthority(authority: string): boolean {
    const store = join(this.#folder, '.pki', 'nssdb');
    const file = join(this.#folder, 'authority.pem');
    mkdirSync(store, { recursive: true });
    writeFileSync(file, authority);
    const certutil = (...args: string[]) =>
      execFileSync(process.env.CERTUTIL ?? 'certutil', ['-d', `sql:${store}`, ...args], { stdio: 'pipe' });
    try {
      certutil('-N', '--empty-password');
      certutil('-A', '-t', 'C,,', '-n', 'shop', '-i', file);
      return true;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
      return false;
    }
  }

  async close(): Promise<void> {
    await this.#context?.close();
    // a browser that was closed may still be writing there
    rmSync(this.#folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
  }
}

/** The certificate that the bench shows, as soon as it is one for this name and for the name that is gone no longer. */
async function certificateFor(port: number, called: string, gone?: string): Promise<X509Certificate> {
  for (let n = 0; n < 300; n += 1) {
    const shown = await certificateAt(port);
    const isFor = (name: string) => (isIP(name) ? shown.checkIP(name) : shown.checkHost(name)) !== undefined;
    if (isFor(called) && !(gone && isFor(gone))) return shown;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Error(`the bench shows no certificate for ${called}`);
}

const certificateAt = (port: number): Promise<X509Certificate> =>
  new Promise((resolve, reject) => {
    const line = connect({ port, host: '127.0.0.1', rejectUnauthorized: false }, () => {
      const shown = line.getPeerX509Certificate()!;
      line.destroy();
      resolve(shown);
    });
    line.on('error', reject);
  });

/** SHA-256 of the public key (SubjectPublicKeyInfo) of a certificate. */
function keyOf({ publicKey }: X509Certificate): string {
  const key = createPublicKey(publicKey.export({ type: 'spki', format: 'pem' }));
  return createHash('sha256')
    .update(key.export({ type: 'spki', format: 'der' }))
    .digest('base64');
}
