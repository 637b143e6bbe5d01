import { renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sparing } from '../../src/server/sparing-log.js';
import { jobA, note, openEntry, startServer } from './support.js';

/** Waits until it holds; the looks of the server come twice a second. */
async function until(holds: () => Promise<boolean>): Promise<void> {
  for (let i = 0; !(await holds()); i++) {
    if (i > 200) throw new Error('did not come true');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/** The events of one name that a page hears, as they come. */
async function hear(url: string, name: string) {
  const control = new AbortController();
  const response = await fetch(`${url}/api/events`, { signal: control.signal });
  const heard: unknown[] = [];
  let rest = '';
  void (async () => {
    for await (const chunk of response.body!.pipeThrough(new TextDecoderStream())) {
      const blocks = (rest + chunk).split('\n\n');
      rest = blocks.pop()!;
      for (const block of blocks)
        if (block.includes(`event: ${name}\n`)) heard.push(JSON.parse(/^data: (.*)$/m.exec(block)![1]!));
    }
  })().catch(() => {});
  return { heard, stop: () => control.abort() };
}

test('a store that is taken away while the server runs: writes get 503, pages are told, reading goes on', async () => {
  const server = await startServer();
  const file = join(server.folder, 'shop.db');
  await server.post('/api/entries', { entries: [openEntry(1, 12)] });
  expect((await server.get('/api/store')).json).toEqual({
    kind: 'sqlite',
    keeping: { ok: true },
    backup: null,
  });
  const page = await hear(server.url, 'keeping');
  renameSync(file, `${file}.away`);

  const refused = await server.post('/api/entries', { entries: [note(2, 'into nothing')] });
  expect(refused.status).toBe(503);
  expect(refused.json.error).toMatchObject({
    code: 'gone',
    message: expect.stringMatching(/deleted or moved away/),
  });
  await until(async () => page.heard.length > 0);
  expect(page.heard).toEqual([
    { ok: false, code: 'gone', message: expect.stringMatching(/stays on your device/) },
  ]);
  expect((await server.get('/api/store')).json.keeping).toMatchObject({ ok: false, code: 'gone' });
  expect((await server.get(`/api/jobs/${jobA}/entries`)).json.entries).toHaveLength(1);
  const late = await hear(server.url, 'keeping');
  await until(async () => late.heard.length > 0);

  renameSync(`${file}.away`, file);
  await until(async () => page.heard.length > 1);
  expect(page.heard[1]).toEqual({ ok: true });
  expect((await server.post('/api/entries', { entries: [note(2, 'kept now')] })).status).toBe(200);
  page.stop();
  late.stop();
  await server.close();
});

test('a store that is deleted fills the log with one sentence, not with traces', async () => {
  const server = await startServer();
  await server.post('/api/entries', { entries: [openEntry(1, 12)] });
  rmSync(join(server.folder, 'shop.db'));
  for (let i = 0; i < 50; i++) await server.post('/api/entries', { entries: [note(2, 'into nothing')] });
  expect(server.logged.length).toBeLessThan(5);
  expect(server.logged.join('\n')).not.toMatch(/\n\s+at /);
  await server.close();
});

test('what is said again and again is said once a minute, with how often it came', () => {
  const lines: string[] = [];
  let minutes = 0;
  const log = sparing(
    (line) => lines.push(line),
    () => new Date(Date.UTC(2026, 2, 2, 9, minutes)),
  );
  for (let i = 0; i < 1000; i++) log('away');
  log('other');
  minutes = 1;
  log('away');
  expect(lines).toEqual(['away', 'other', 'away (and 999 times more before)']);
});

test('the day of the last good backup is told', async () => {
  const server = await startServer();
  await server.post('/api/entries', { entries: [openEntry(1, 12)] });
  await server.store.backup(join(server.folder, 'march.db'));
  expect((await server.get('/api/store')).json.backup).toEqual({
    at: '2026-03-02T09:00:00.000Z',
    file: 'march.db',
  });
  await server.close();
});
