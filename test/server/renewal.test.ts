import { X509Certificate } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { keptTrust } from '../../src/server/index.js';
import { startServer, type TestServer } from './support.js';

const dayMs = 24 * 3600_000;
const today = new Date();
/** Long enough ago that a certificate of then is near its end today, which OpenSSL judges by the real clock. */
const begun = new Date(today.getTime() - 171 * dayMs);

const folder = mkdtempSync(join(tmpdir(), 'wristpin-renewal-'));
let now = begun;
let addresses = ['127.0.0.2'];
let server: TestServer;
let authority: string;
let cannot = false;

beforeAll(async () => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
  const trust = await keptTrust(join(folder, 'authority.pem'), begun);
  authority = new X509Certificate(trust.authority).toString();
  const leaf: typeof trust.leaf = async (...asked) => {
    if (cannot) throw new Error('no chance to be had');
    return trust.leaf(...asked);
  };
  const network = { addresses: () => addresses, trust: { ...trust, leaf } };
  server = await startServer({ network, clock: () => now });
});
afterAll(async () => {
  vi.useRealTimers();
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

/** What a phone that trusts the authority is shown, and takes: by OpenSSL's judgment. */
function shown(host = '127.0.0.1'): Promise<X509Certificate> {
  return new Promise((resolve, reject) => {
    const line = connect({ host, port: server.port, ca: authority }, () => {
      resolve(line.getPeerX509Certificate()!);
      line.end();
    });
    line.on('error', reject);
  });
}

/** The bench looks after its certificate every ten seconds; a key is made in a moment of its own. */
async function look(): Promise<void> {
  await vi.advanceTimersByTimeAsync(10_000);
  await new Promise((resolve) => setTimeout(resolve, 200));
}

const daysLeft = (cert: X509Certificate) => (Date.parse(cert.validTo) - now.getTime()) / dayMs;

test('the bench’s certificate is left as it is while it is good for a month and more', async () => {
  const first = await shown();
  expect(daysLeft(first)).toBeCloseTo(200, 0);
  now = new Date(begun.getTime() + 169 * dayMs);
  await look();
  expect((await shown()).serialNumber).toBe(first.serialNumber);
});

test('it is made anew in its last month, by the same authority, without the server being started anew', async () => {
  const before = await shown();
  cannot = true;
  now = today;
  await look();
  expect((await shown()).serialNumber).toBe(before.serialNumber);
  expect(server.logged.at(-1)).toContain('could not be made anew, and it is tried again');
  cannot = false;
  await look();
  const after = await shown();
  expect(after.serialNumber).not.toBe(before.serialNumber);
  expect(daysLeft(after)).toBeCloseTo(200, 0);
  expect(after.checkIssued(new X509Certificate(authority))).toBe(true);
});

test('it is made anew as soon as the bench has another address', async () => {
  addresses = ['127.0.0.3'];
  await expect(shown('127.0.0.3')).rejects.toThrow(/does not match/);
  await look();
  expect((await shown('127.0.0.3')).subjectAltName).toContain('127.0.0.3');
  await expect(shown('127.0.0.2')).rejects.toThrow(/does not match/);
});
