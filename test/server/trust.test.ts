import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { get, type RequestOptions } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect } from 'node:tls';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keptTrust } from '../../src/server/index.js';
import { rawAsk, startServer, type TestServer } from './support.js';

const folder = mkdtempSync(join(tmpdir(), 'wristpin-trust-'));
const file = join(folder, 'shop.db.authority.pem');
const now = new Date();
const called: string[] = [];
let server: TestServer;
let authority: X509Certificate;

beforeAll(async () => {
  const trust = await keptTrust(file, now);
  authority = new X509Certificate(trust.authority);
  // two addresses of this computer stand for two networks
  const addresses = () => ['127.0.0.2', ...called];
  server = await startServer({
    network: { addresses, name: () => 'wristpin.local', trust },
    clock: () => now,
  });
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A TLS client that trusts the shop's authority alone: OpenSSL judges, not our own code. */
function secured(host: string, path: string, headers: Record<string, string> = {}) {
  return new Promise<{ status: number; body: string; cert: X509Certificate; headers: object }>(
    (resolve, reject) => {
      const ca = authority.toString();
      const options: RequestOptions = {
        host,
        port: server.port,
        path,
        ca,
        servername: host,
        headers,
        agent: false,
      };
      get(options, (answer) => {
        const cert = (answer.socket as import('node:tls').TLSSocket).getPeerX509Certificate()!;
        let body = '';
        answer.on('data', (chunk) => (body += chunk));
        answer.on('end', () => resolve({ status: answer.statusCode!, body, cert, headers: answer.headers }));
      }).on('error', reject);
    },
  );
}

describe('the shop’s own authority', () => {
  test('is made once, and nobody but its owner reads it', async () => {
    const before = readFileSync(file, 'utf8');
    const again = await keptTrust(file, new Date(now.getTime() + 1e9));
    expect(readFileSync(file, 'utf8')).toBe(before);
    expect(new X509Certificate(again.authority).fingerprint256).toBe(authority.fingerprint256);
    expect(statSync(file).mode & 0o777).toBe(0o600);
  });

  test('two that begin at once take the same one', async () => {
    const twice = join(folder, 'twice.pem');
    const [a, b] = await Promise.all([keptTrust(twice, now), keptTrust(twice, now)]);
    expect(a.fingerprint).toBe(b.fingerprint);
  });

  test('is never written over what is something else', async () => {
    const other = join(folder, 'other.pem');
    writeFileSync(other, 'the shop’s holiday plan');
    await expect(keptTrust(other, now)).rejects.toThrow(/other.pem is not the shop’s authority/);
    expect(readFileSync(other, 'utf8')).toBe('the shop’s holiday plan');
  });

  test('says of itself what a phone must know: an authority, and its fingerprint', async () => {
    const trust = await keptTrust(file, now);
    expect(authority.ca).toBe(true);
    expect(authority.checkIssued(authority)).toBe(true);
    expect(authority.verify(authority.publicKey)).toBe(true);
    expect(trust.fingerprint).toBe(authority.fingerprint256); // as Node's own OpenSSL works it out
  });

  // RFC 5280, section 4.2.1.10, judged by OpenSSL
  test('vouches for no site outside the shop', async () => {
    const trust = await keptTrust(file, now);
    const { createServer } = await import('node:tls');
    for (const [name, allowed] of [
      ['wristpin.local', true],
      ['bank.example', false],
      ['192.168.4.7', true],
      ['93.184.216.34', false],
    ] as const) {
      const leaf = await trust.leaf([name], now);
      const listening = createServer(leaf, (line) => line.end());
      await new Promise<void>((ready) => listening.listen(0, '127.0.0.1', ready));
      const { port } = listening.address() as import('node:net').AddressInfo;
      const judged = await new Promise<true | string>((resolve) => {
        const checkServerIdentity = () => undefined;
        const line = connect(
          { host: '127.0.0.1', port, ca: authority.toString(), checkServerIdentity },
          () => {
            resolve(true);
            line.end();
          },
        );
        line.on('error', (error) => resolve(error.message));
      });
      expect(judged, name).toEqual(allowed || expect.stringMatching(/permitted subtree violation/i));
      await new Promise((closed) => listening.close(closed));
    }
  });

  test('gives out certificates that a phone takes: for less than 825 days, from before now on', async () => {
    const { cert } = await secured('127.0.0.1', '/api/health');
    const days = (Date.parse(cert.validTo) - Date.parse(cert.validFrom)) / 86_400_000;
    expect(days).toBeLessThan(398);
    expect(Date.parse(cert.validFrom)).toBeLessThan(now.getTime());
    expect(cert.checkIssued(authority)).toBe(true);
    expect(cert.ca).toBe(false);
  });
});

describe('one port', () => {
  test('speaks encrypted to who trusts it and plain to who does not, by each of its addresses', async () => {
    for (const host of ['127.0.0.1', '127.0.0.2']) {
      const safe = await secured(host, '/trust/', { host: `${host}:${server.port}` });
      expect(safe.status).toBe(200);
      const plain = await rawAsk(`http://${host}:${server.port}/trust/`);
      expect(plain.status).toBe(200);
    }
  });

  test('hands out the authority without being paired, with the fingerprint that the bench shows', async () => {
    const headers = { host: `wristpin.local:${server.port}` };
    const page = await rawAsk(`${server.url}/trust/`, { headers });
    expect(page.body.replaceAll('<wbr />', '')).toContain(authority.fingerprint256);
    expect(page.body).toContain(`https://wristpin.local:${server.port}/`);
    const file = await fetch(`http://127.0.0.2:${server.port}/trust/wristpin-authority.crt`);
    expect(file.headers.get('content-type')).toBe('application/x-x509-ca-cert');
    const got = new X509Certificate(Buffer.from(await file.arrayBuffer()));
    expect(got.fingerprint256).toBe(authority.fingerprint256);
    expect((await server.get('/api/devices')).json.trust).toEqual({ fingerprint: authority.fingerprint256 });
  });

  test('never hands out the key', async () => {
    const key = readFileSync(file, 'utf8').split('-----')[2]!.replaceAll('\n', '');
    for (const path of ['/trust/', '/trust/wristpin-authority.crt', '/api/devices', '/trust/../shop.db'])
      expect((await rawAsk(server.url + path)).body).not.toContain(key.slice(0, 60));
  });

  test('a code works under each address and the name, and a cookie given encrypted stays so', async () => {
    const { links } = (await server.post('/api/devices/code', {})).json;
    const where = links.map((link: string) => new URL(link).hostname);
    expect(where).toEqual(['wristpin.local', '127.0.0.2']);
    for (const link of links as string[]) {
      const { host, pathname } = new URL(link);
      expect((await rawAsk(server.url + pathname, { headers: { host } })).status).toBe(200);
    }
    const { host, pathname } = new URL(links[0]);
    const headers = { host, origin: `http://${host}`, 'content-type': 'application/x-www-form-urlencoded' };
    const paired = await rawAsk(server.url + pathname, { method: 'POST', headers, body: 'name=Phone' });
    expect(paired.status).toBe(303);
    const cookie = paired.headers['set-cookie']![0]!.split(';')[0]!;
    const safe = await secured('127.0.0.1', '/api/devices', { host, cookie });
    expect(JSON.parse(safe.body).here.name).toBe('Phone');
  });

  test('a line that says nothing, or nonsense, costs nobody anything', async () => {
    const { connect: dial } = await import('node:net');
    for (const said of [Buffer.from([22, 3, 1, 0, 1, 0]), Buffer.from([0, 1, 2]), Buffer.from('GET')]) {
      const line = dial(server.port, '127.0.0.1');
      line.on('error', () => {});
      line.write(said);
      line.end();
    }
    expect((await server.get('/api/health')).status).toBe(200);
    expect(server.logged).toEqual([]);
  });
});
