import { createHash } from 'node:crypto';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { entry, jobA, jobB, note, openEntry, picture, startServer, type TestServer } from './support.js';

let server: TestServer;
let sha256: string;
beforeAll(async () => {
  server = await startServer();
  const bytes = await picture('png');
  sha256 = createHash('sha256').update(bytes).digest('hex');
  const shown = { sha256, mime: 'image/png', bytes: bytes.length, width: 640, height: 480 };
  const photograph = { picture: shown, caption: 'Drawn', stage: 'intake', when: 'before' };
  folder = join(server.folder, 'demo');
  mkdirSync(join(folder, 'pictures'), { recursive: true });
  writeFileSync(join(folder, 'pictures', 'drawn.png'), bytes);
  good = JSON.stringify({ entries: [openEntry(1, 101, jobA, true), entry(2, 'photograph', photograph)] });
});
afterAll(() => server.close());

let folder: string;
let good: string;
const job = (text: string) => {
  rmSync(join(folder, 'jobs'), { recursive: true, force: true });
  mkdirSync(join(folder, 'jobs'), { recursive: true });
  writeFileSync(join(folder, 'jobs', 'invented.json'), text);
};
beforeEach(() => job(good));

const load = () => server.send('POST', '/api/demo');
const remove = () => server.send('DELETE', '/api/demo');
const jobs = async () => (await server.get('/api/jobs')).json.jobs.map((each: { id: string }) => each.id);

test('the invented job is loaded by one act, and again changes nothing', async () => {
  const first = await load();
  expect(first.json).toMatchObject({ jobs: [jobA], already: [], head: 2 });
  expect(first.json.stored).toHaveLength(2);
  expect((await load()).json).toMatchObject({ stored: [], head: 2 });
  expect((await server.get(`/api/pictures/${sha256}`)).status).toBe(200);
});

test('it is removed by one act, with all that was written to it, and no real job with it', async () => {
  await server.post('/api/entries', { entries: [note(3, 'tried by hand'), openEntry(4, 7, jobB)] });
  const answer = await remove();
  expect(answer.json).toMatchObject({ jobs: [jobA], entries: 3, pictures: 1 });
  expect(await jobs()).toEqual([jobB]);
  expect((await server.get(`/api/pictures/${sha256}`)).status).toBe(404);
  expect((await remove()).json).toMatchObject({ jobs: [], entries: 0, pictures: 0 });
});

test('it can be loaded again after that', async () => {
  expect((await load()).json.stored).toHaveLength(2);
  expect(await jobs()).toEqual([jobB, jobA]);
  await remove();
});

test('a job once opened as invented and once as real is a record, and stays', async () => {
  const both = '01900000-0000-7000-8000-0000000000bb';
  await server.store.append([openEntry(10, 70, both), openEntry(11, 70, both, true)]);
  expect((await remove()).json.jobs).toEqual([]);
  expect(await jobs()).toContain(both);
});

test('a demonstration that does not say that it is invented is not loaded', async () => {
  job(JSON.stringify({ entries: [openEntry(1, 101, jobA)] }));
  const answer = await load();
  expect(answer.status).toBe(500);
  expect(answer.json.error.message).toMatch(/does not say that it is invented/);
  expect(await jobs()).not.toContain(jobA);
});

test('a demonstration that lacks one of its pictures is not loaded', async () => {
  job(good.replaceAll(sha256, 'd'.repeat(64)));
  const answer = await load();
  expect(answer.status).toBe(500);
  expect(answer.json.error.message).toContain('d'.repeat(64));
  expect(await jobs()).not.toContain(jobA);
});

test('a program without its demonstration says so', async () => {
  rmSync(join(folder, 'jobs'), { recursive: true });
  const answer = await load();
  expect(answer.status).toBe(404);
  expect(answer.json.error.code).toBe('no-demo');
});
