import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeWav } from '../../src/listen/index.js';
import { entry, jobA, openEntry, startServer, type TestServer } from './support.js';

let here: TestServer;
let there: TestServer;
beforeAll(async () => {
  here = await startServer();
  there = await startServer();
});
afterAll(async () => {
  await here.close();
  await there.close();
});

const hash = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const talk = (seconds: number, hz = 180) =>
  writeWav({
    samples: Float32Array.from(
      { length: seconds * 16_000 },
      (_, n) => 0.3 * Math.sin((2 * Math.PI * hz * n) / 16_000),
    ),
    sampleRate: 16_000,
  });
const put = (bytes: Uint8Array) => here.send('PUT', `/api/pictures/${hash(bytes)}`, bytes);

test('a spoken note goes in parts, is gone on with after a break, and comes back sample for sample', async () => {
  const bytes = talk(40);
  const name = hash(bytes);
  const part = (from: number, to: number) =>
    here.send('PUT', `/api/pictures/${name}/parts?at=${from}&of=${bytes.length}`, bytes.subarray(from, to));
  expect((await part(0, 900_000)).json).toEqual({ whole: false, have: 900_000 });
  expect((await here.get(`/api/pictures/${name}/parts`)).json).toEqual({ whole: false, have: 900_000 });
  expect((await part(900_000, bytes.length)).json).toEqual({ whole: true, have: bytes.length });
  const kept = await here.get(`/api/pictures/${name}`);
  expect(kept.headers.get('content-type')).toBe('audio/wav');
  expect(Buffer.compare(kept.bytes, bytes)).toBe(0);
  expect((await here.get(`/api/pictures/${name}?width=320`)).status).toBe(422);
});

test.each([
  ['cut off', () => talk(2).subarray(0, 30_000), /cut off/],
  ['longer than a note may be', () => talk(151), /lasts 151 s; a spoken note may last 150 s/],
  ['compressed inside', () => talk(1).fill(85, 20, 21), /compressed inside/],
  ['without a sample', () => talk(0), /holds no samples/],
])('a sound that is %s is refused in words and not kept', async (_, made, why) => {
  const bytes = made();
  const answer = await put(bytes);
  expect(answer.status).toBe(422);
  expect(answer.json.error.message).toMatch(why);
  expect(await here.store.hasPicture(hash(bytes))).toBe(false);
});

test('a job with a spoken note goes to another shop with its sound', async () => {
  const bytes = talk(3, 220);
  await put(bytes);
  const sound = { sha256: hash(bytes), mime: 'audio/wav', bytes: bytes.length, seconds: 3 };
  const said = entry(2, 'spoken-note', { sound, stage: 'assembly', about: 'Cylinder head, bolt 3' });
  expect((await here.post('/api/entries', { entries: [openEntry(1, 12), said] })).status).toBe(200);
  const bundle = await here.get(`/api/jobs/${jobA}/bundle.zip`);
  expect(bundle.headers.get('wristpin-missing-pictures')).toBe('0');
  const look = await there.send('POST', '/api/bundles?look', bundle.bytes);
  expect(look.json).toMatchObject({ pictures: 0, sounds: 1 });
  expect((await there.send('POST', '/api/bundles', bundle.bytes)).json).toMatchObject({
    pictures: 0,
    sounds: 1,
  });
  expect(Buffer.compare((await there.get(`/api/pictures/${sound.sha256}`)).bytes, bytes)).toBe(0);
});
