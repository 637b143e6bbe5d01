import { describe, expect, test } from 'vitest';
import { cliWithFolder, ended, startServe } from '../support/built-cli.js';
import { ask, jobA, note, openEntry, startServer } from './support.js';

const { cli, inFolder } = cliWithFolder();

const post = (url: string, entries: unknown[]) =>
  ask(`${url}/api/entries`, { method: 'POST', body: JSON.stringify({ entries }) });

describe.each(['SIGTERM', 'SIGINT'] as const)('asked to stop by %s', (signal) => {
  test('the server answers what is under way, lets its pages go and ends well', async () => {
    const { child, url } = await startServe(cli, ['--store', inFolder('shop.db')]);
    await post(url, [openEntry(1, 12)]);
    const page = await fetch(`${url}/api/events`);
    const reader = page.body!.getReader();
    await reader.read();
    const underWay = Array.from({ length: 8 }, (_, i) => post(url, [note(10 + i, 'under way')]));
    const first = await Promise.any(underWay); // the others are on their way or waiting in the store by now
    child.kill(signal);
    const settled = await Promise.allSettled(underWay);
    while (!(await reader.read()).done) {}
    expect(await ended(child)).toEqual({ code: 0, signal: null });

    expect(first.status).toBe(200);
    const acknowledged = settled.flatMap((s) => (s.status === 'fulfilled' ? s.value.json.stored : []));
    const again = await startServe(cli, ['--store', inFolder('shop.db')]);
    const { entries } = (await ask(`${again.url}/api/jobs/${jobA}/entries`)).json;
    const ids = entries.map((entry: { id: string }) => entry.id);
    for (const id of acknowledged) expect(ids).toContain(id);
    again.child.kill('SIGTERM');
    await ended(again.child);
  });
});

test('a request that is under way when the server stops is answered, and the server listens no more', async () => {
  const server = await startServer();
  await server.post('/api/entries', { entries: [openEntry(1, 12)] });
  const record = server.get(`/api/jobs/${jobA}/record.pdf`);
  await new Promise((later) => setTimeout(later, 20));
  const stopping = server.stop();
  expect((await record).status).toBe(200);
  await stopping;
  await expect(server.get('/api/health')).rejects.toThrow();
  await server.store.close();
});

test('two servers do not share a port: the second is told', async () => {
  const { child, url } = await startServe(cli, ['--store', inFolder('shop.db')]);
  const port = new URL(url).port;
  const second = await cli.run(['serve', '--port', port, '--store', inFolder('other.db')]);
  expect(second).toMatchObject({ code: 1, out: '' });
  expect(second.err).toBe(`wristpin: Port ${port} is taken by another program. Name another with --port.\n`);
  child.kill('SIGTERM');
  await ended(child);
});
