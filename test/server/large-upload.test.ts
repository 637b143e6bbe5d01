import type { ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { request } from 'node:http';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { cliWithFolder, ended, startServe } from '../support/built-cli.js';
import { ask } from './support.js';

const megabyte = 1024 * 1024;
const hugeBytes = 200 * megabyte;

const { cli, inFolder } = cliWithFolder('the file');
let child: ChildProcess;
let url: string;
beforeAll(async () => {
  ({ child, url } = await startServe(cli, ['--store', inFolder('shop.db')]));
});
afterAll(async () => {
  child.kill('SIGTERM');
  await ended(child);
});

/** Memory that the process really holds, from the kernel; only Linux tells it in this way. */
function residentBytes(): number {
  const status = readFileSync(`/proc/${child.pid}/status`, 'utf8');
  return Number(/VmRSS:\s+(\d+) kB/.exec(status)![1]) * 1024;
}

interface Upload {
  readonly status: number;
  readonly body: string;
  readonly sent: number;
  readonly peak: number;
}

/** Sends as a browser does: piece by piece, as fast as the other side takes it, reading the answer as it comes. */
function upload(method: string, path: string, headers: Record<string, string>): Promise<Upload> {
  const piece = Buffer.alloc(megabyte, 'x');
  return new Promise((resolve, reject) => {
    let sent = 0;
    let peak = 0;
    let answered: { status: number; body: string } | undefined;
    const out = request(url + path, { method, headers }, (answer) => {
      let body = '';
      answer.on('data', (chunk) => (body += chunk));
      answer.on('end', () => (answered = { status: answer.statusCode!, body }));
      answer.on('close', () => answered && resolve({ ...answered, sent, peak }));
    });
    out.on('error', (error) => (answered ? resolve({ ...answered, sent, peak }) : reject(error)));
    const push = () => {
      while (sent < hugeBytes) {
        peak = Math.max(peak, residentBytes());
        sent += piece.length;
        if (!out.write(piece)) return void out.once('drain', push);
      }
      out.end();
    };
    push();
  });
}

const known = { 'content-length': String(hugeBytes) };
const unknown = { 'transfer-encoding': 'chunked' };
const picturePath = `/api/pictures/${'0'.repeat(64)}`;

describe.skipIf(process.platform !== 'linux')('200 MB (memory is read from /proc: Linux only)', () => {
  test.each([
    ['a picture that says its length', 'PUT', picturePath, known, 25],
    ['a picture of unknown length', 'PUT', picturePath, unknown, 25],
    ['entries that say their length', 'POST', '/api/entries', known, 2],
    ['entries of unknown length', 'POST', '/api/entries', unknown, 2],
  ])(
    '%s: refused with a sentence, while the memory stays flat',
    async (_title, method, path, headers, limit) => {
      const before = residentBytes();
      const { status, body, peak } = await upload(method, path, headers as Record<string, string>);
      expect(status).toBe(413);
      expect(JSON.parse(body).error).toMatchObject({
        code: 'too-large',
        message: expect.stringContaining(`at most ${limit} MB`),
      });
      const grown = (peak - before) / megabyte;
      // what is kept of it is at most the limit, twice while the buffer grows; the rest is the runtime's own slack
      expect(grown, `grew by ${grown.toFixed(0)} MB`).toBeLessThan(2 * limit + 48);
    },
  );

  test('a client that sends all of it before it looks gets the sentence too', async () => {
    const before = residentBytes();
    let peak = 0;
    const watching = setInterval(() => (peak = Math.max(peak, residentBytes())), 5);
    const answer = await ask(url + picturePath, {
      method: 'PUT',
      body: new Blob([new Uint8Array(hugeBytes)]),
    });
    clearInterval(watching);
    expect(answer.status).toBe(413);
    expect(answer.json.error.code).toBe('too-large');
    expect((peak - before) / megabyte).toBeLessThan(48);
  });

  test('and the server goes on as if nothing had been', async () => {
    expect((await ask(`${url}/api/health`)).json).toMatchObject({ ok: true, head: 0 });
    expect(child.exitCode).toBeNull();
  });
});
