import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rawAsk, startServer, type TestServer } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
  writeFileSync(join(server.folder, 'secret.txt'), 'not for the page');
  mkdirSync(join(server.folder, 'web', 'icons'));
  writeFileSync(join(server.folder, 'web', 'assets', 'small-1a2b3c.js'), 'export {};');
  writeFileSync(join(server.folder, 'web', 'assets', 'small-1a2b3c.js.br'), 'small');
  writeFileSync(join(server.folder, 'web', 'assets', 'small-1a2b3c.js.gz'), 'smaller');
  writeFileSync(join(server.folder, 'web', 'index.html.br'), 'page');
  writeFileSync(join(server.folder, 'web', 'icons', 'pin.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
});
afterAll(() => server.close());

describe('the pages', () => {
  test.each(['/', '/job/12/assembly', '/desk/convert', '/index.html'])(
    '%s opens the application',
    async (path) => {
      const answer = await server.get(path);
      expect(answer.status).toBe(200);
      expect(answer.headers.get('content-type')).toMatch(/^text\/html/);
      expect(new TextDecoder().decode(answer.bytes)).toContain('<title>Wristpin</title>');
      expect(answer.headers.get('cache-control')).toBe('no-cache');
    },
  );

  test('an asset whose name carries its hash is kept for ever, with its type', async () => {
    const answer = await server.get('/assets/app-1a2b3c.js');
    expect(answer.headers.get('content-type')).toMatch(/^(text|application)\/javascript/);
    expect(answer.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
  });

  test.each([
    ['br, gzip', 'br', 'small'],
    ['gzip', 'gzip', 'smaller'],
    ['identity', undefined, 'export {};'],
  ])('a browser that takes %s gets the file that the build made for it', async (accepted, encoding, body) => {
    const answer = await rawAsk(server.url, {
      path: '/assets/small-1a2b3c.js',
      headers: { 'accept-encoding': accepted },
    });
    expect(answer.headers['content-encoding']).toBe(encoding);
    expect(answer.headers['content-type']).toMatch(/javascript/);
    if (encoding) expect(answer.headers.vary).toMatch(/accept-encoding/i);
    expect(answer.body).toBe(body);
  });

  test('the application itself comes compressed, whatever path opens it', async () => {
    const answer = await rawAsk(server.url, { path: '/job/12', headers: { 'accept-encoding': 'br' } });
    expect(answer.headers['content-encoding']).toBe('br');
    expect(answer.body).toBe('page');
  });

  test('a file without a hash is asked for again each time', async () => {
    const answer = await server.get('/icons/pin.svg');
    expect(answer.headers.get('content-type')).toMatch(/^image\/svg\+xml/);
    expect(answer.headers.get('cache-control')).toBe('no-cache');
  });

  test.each(['/assets/app-000000.js', '/icons/none.svg'])(
    '%s, which is missing, is not the application',
    async (path) => {
      const answer = await server.get(path);
      expect(answer.status).toBe(404);
      expect(answer.headers.get('cache-control')).not.toContain('immutable');
      expect(answer.json.error.code).toBe('not-found');
    },
  );

  test.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%5c..%5csecret.txt',
    '//etc/passwd',
  ])('no path leads out of the folder: %s', async (path) => {
    // not by fetch, which tidies a path before it sends it
    const answer = await rawAsk(server.url, { path });
    expect(answer.body).not.toContain('not for the page');
    expect(answer.body).not.toContain('root:');
  });

  test('run only what this server sends', async () => {
    const { headers } = await server.get('/');
    const policy = headers.get('content-security-policy')!.split('; ');
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(policy).toContain("img-src 'self' blob: data:");
    expect(policy).toContain("style-src 'self' 'unsafe-inline'");
    expect(policy).toContain("connect-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('strict-transport-security')).toBeNull();
  });
});

describe('what is not there', () => {
  test.each([
    ['GET', '/api/nothing'],
    ['POST', '/api/health'],
    ['PUT', '/api/entries'],
    ['GET', '/api'],
    ['DELETE', '/api/jobs'],
    ['POST', '/'],
  ])('%s %s is told so', async (method, path) => {
    const answer = await server.send(method, path);
    expect(answer.status).toBe(404);
    expect(answer.json.error.code).toBe('not-found');
    expect(answer.json.error.message).toContain(`${method} ${path}`);
  });
});

test('pages that are not built yet say how to build them', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-no-pages-'));
  const bare = await startServer({ webRoot: join(folder, 'web') });
  const answer = await bare.get('/');
  expect(answer.status).toBe(503);
  expect(answer.json.error.message).toContain('npm run build');
  expect((await bare.get('/api/health')).status).toBe(200);
  await bare.close();
  rmSync(folder, { recursive: true });
});
