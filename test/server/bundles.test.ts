import { createHash } from 'node:crypto';
import { request } from 'node:http';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readBundle, writeBundle } from '../../src/record/index.js';
import {
  entry,
  jobA,
  jobB,
  note,
  openEntry,
  picture,
  startServer,
  type TestServer,
  uuid,
} from './support.js';

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

async function fill(): Promise<{ sha256: string; bytes: Uint8Array }> {
  const bytes = await picture('jpeg');
  const sha256 = hash(bytes);
  const { json } = await here.send('PUT', `/api/pictures/${sha256}`, bytes);
  const photograph = { picture: json, caption: 'Flywheel key', stage: 'teardown', when: 'before' };
  const entries = [
    openEntry(1, 12),
    entry(2, 'photograph', photograph),
    note(3, 'said in error'),
    entry(4, 'strike', { entry: uuid(1003), reason: 'wrong machine' }),
    { ...entry(5, 'newer-kind', { a: [1, 2] }), v: 9 },
    openEntry(6, 13, jobB),
  ];
  expect((await here.post('/api/entries', { entries })).status).toBe(200);
  return { sha256, bytes };
}

const tell = async (server: TestServer) =>
  (await server.get(`/api/jobs/${jobA}/entries`)).json.entries.map(
    ({ seq: _, received: __, ...rest }: Record<string, unknown>) => rest,
  );

test('a job taken to another shop and back is the same job, struck lines and pictures and all', async () => {
  const { sha256, bytes } = await fill();
  const bundle = await here.get(`/api/jobs/${jobA}/bundle.zip`);
  expect(bundle.headers.get('content-type')).toBe('application/zip');
  expect(bundle.headers.get('wristpin-missing-pictures')).toBe('0');
  const taken = await there.send('POST', '/api/bundles', bundle.bytes);
  expect(taken.status).toBe(200);
  expect(taken.json).toMatchObject({ jobs: [jobA], already: [], pictures: 1 });
  expect(taken.json.stored).toHaveLength(5);
  expect(await tell(there)).toEqual(await tell(here));
  const there2 = await there.get(`/api/pictures/${sha256}`);
  expect(Buffer.compare(there2.bytes, bytes)).toBe(0);

  const back = await there.get(`/api/jobs/${jobA}/bundle.zip`);
  expect(Buffer.compare(back.bytes, bundle.bytes)).toBe(0);
  const again = await here.send('POST', '/api/bundles', back.bytes);
  expect(again.json).toMatchObject({ stored: [], jobs: [jobA] });
  expect(again.json.already).toHaveLength(5);
});

describe('a bundle is shown before it is taken in, and touches only jobs of its own', () => {
  const mine = uuid(70);
  const own = uuid(71);
  const bundle = () =>
    writeBundle({
      entries: [
        openEntry(70, 70, own),
        note(71, 'a line of its own', own),
        entry(72, 'intake', { owner: 'Somebody else' }, mine),
        entry(73, 'setting', { key: 'shop-name', value: 'Another’s name' }, 'shop'),
      ],
      pictures: [],
    });
  let server: TestServer;
  beforeAll(async () => {
    server = await startServer();
    await server.post('/api/entries', { entries: [openEntry(74, 7, mine)] });
  });
  afterAll(() => server.close());
  const lines = async (job: string) => (await server.get(`/api/jobs/${job}/entries`)).json.entries.length;

  test('the look says what it would do, and stores nothing', async () => {
    const head = await server.store.head();
    const look = await server.send('POST', '/api/bundles?look', await bundle());
    expect(look.status).toBe(200);
    expect(look.json).toMatchObject({
      jobs: [
        { job: own, tag: 70, title: 'Tag 70', fresh: 2, known: 0, here: false },
        { job: mine, fresh: 1, known: 0, here: true, asKept: false },
      ],
      shopLines: { fresh: 1, known: 0 },
      pictures: 0,
    });
    expect(await server.store.head()).toBe(head);
  });

  test('without a yes neither the shop nor a job that is here is touched, and both are named', async () => {
    const { json } = await server.send('POST', '/api/bundles', await bundle());
    expect(json.stored).toHaveLength(2);
    expect(json.leftOut).toEqual([
      { job: mine, lines: 1 },
      { job: 'shop', lines: 1 },
    ]);
    expect([await lines(mine), await lines('shop'), await lines(own)]).toEqual([1, 0, 2]);
  });

  test('each is taken by a yes of its own', async () => {
    const into = await server.send('POST', `/api/bundles?into=${mine}`, await bundle());
    expect(into.json.leftOut).toEqual([{ job: 'shop', lines: 1 }]);
    expect([await lines(mine), await lines('shop')]).toEqual([2, 0]);
    expect((await server.send('POST', '/api/bundles?shop=yes', await bundle())).json.leftOut).toEqual([]);
    expect(await lines('shop')).toBe(1);
  });

  test('lines handed over earlier are shown to be the ones that were kept, or not to be', async () => {
    const { bytes } = await server.get(`/api/jobs/${own}/bundle.zip`);
    await server.post('/api/entries', { entries: [note(75, 'after the hand-over', own)] });
    const look = async (given: Uint8Array) =>
      (await server.send('POST', '/api/bundles?look', given)).json.jobs[0].asKept;
    expect(await look(bytes)).toBe(true);
    const changed = [openEntry(70, 70, own), note(71, 'another line than was kept', own)];
    expect(await look(await writeBundle({ entries: changed, pictures: [] }))).toBe(false);
  });
});

test('six bundles at once: while two come in, the others are told to come again, and lie nowhere', async () => {
  const many = Array.from({ length: 3000 }, (_, i) => note(8000 + i, 'w'.repeat(200), uuid(80)));
  const bundle = await writeBundle({ entries: [openEntry(80, 80, uuid(80)), ...many], pictures: [] });
  const two: ReturnType<typeof comingIn>[] = [];
  const begin = () => {
    const one = comingIn(bundle);
    two.push(one);
    // told to come again because another was quicker: one more begins in its place
    void one.status.then((status) => status === 429 && two.splice(two.indexOf(one), 1));
  };
  const more = () => there.send('POST', '/api/bundles', bundle);
  const both = async () => {
    while (two.length < 2) begin();
    await setTimeout(200); // a new connection is slower than one that stands; refused all the same, it begins once more
    return (await more()).status;
  };
  await expect.poll(both).toBe(429);
  const others = await Promise.all(Array.from({ length: 4 }, more));
  expect(others.map(({ status }) => status)).toEqual([429, 429, 429, 429]);
  expect(others[0]!.json.error.message).toMatch(/again in a moment/);
  for (const { end } of two) end();
  expect(await Promise.all(two.map(({ status }) => status))).toEqual([200, 200]);
  expect((await there.get(`/api/jobs/${uuid(80)}/entries`)).json.entries).toHaveLength(3001);
});

/** A bundle that has begun to come, and whose end comes when it is told to. */
function comingIn(bytes: Uint8Array): { readonly status: Promise<number>; readonly end: () => void } {
  const sent = request(`${there.url}/api/bundles`, { method: 'POST' });
  const status = new Promise<number>((resolve, reject) => {
    sent.on('error', reject).on('response', (answer) => {
      answer.resume().on('end', () => resolve(answer.statusCode!));
    });
  });
  sent.write(bytes.subarray(0, 100));
  return { status, end: () => sent.end(bytes.subarray(100)) };
}

describe('a bundle that must not be believed', () => {
  const refused = async (bytes: Uint8Array, status: number, message: RegExp) => {
    const before = await there.store.head();
    const answer = await there.send('POST', '/api/bundles', bytes);
    expect(answer.status).toBe(status);
    expect(answer.json.error.message).toMatch(message);
    expect(await there.store.head()).toBe(before);
  };

  test('a text', () => refused(new TextEncoder().encode('not a ZIP'), 422, /not a ZIP/));
  test('nothing', () => refused(new Uint8Array(0), 422, /not a ZIP/));

  test('one with a single byte changed in its log', async () => {
    const { bytes } = await here.get(`/api/jobs/${jobA}/bundle.zip`);
    const log = Buffer.from(bytes).indexOf('log.jsonl') + 60;
    bytes[log] = bytes[log]! ^ 0xff;
    await refused(bytes, 422, /damaged|unpacked|hash/i);
  });

  test('one with an entry that breaks the rules', async () => {
    const entries = [openEntry(50, 50, uuid(50)), entry(51, 'note', { words: '' }, uuid(50))];
    await refused(await writeBundle({ entries, pictures: [] }), 422, /Entry 2: body\.words/);
  });

  test('one whose picture is a text', async () => {
    const bytes = new TextEncoder().encode('no picture at all');
    const pictures = [{ sha256: hash(bytes), mime: 'image/jpeg' as const, bytes }];
    const bundle = await writeBundle({ entries: [openEntry(52, 52, uuid(52))], pictures });
    await refused(bundle, 422, /not a picture/);
  });

  test('one with entries of a job that it does not open', async () => {
    const bundle = await writeBundle({ entries: [note(53, 'lost', uuid(53))], pictures: [] });
    await refused(bundle, 404, /has not been opened/);
  });

  test('one that says otherwise what is already known', async () => {
    const bundle = await writeBundle({ entries: [openEntry(1, 77)], pictures: [] });
    await refused(bundle, 409, /different content/);
  });
});

test('a picture that the store lost is counted, and the rest can still be taken out', async () => {
  const lost = { sha256: 'e'.repeat(64), mime: 'image/jpeg', bytes: 10, width: 1, height: 1 };
  const photograph = { picture: lost, caption: 'gone', stage: 'teardown', when: 'after' };
  await here.store.append([openEntry(60, 60, uuid(60)), entry(61, 'photograph', photograph, uuid(60))]);
  const { status, headers, bytes } = await here.get(`/api/jobs/${uuid(60)}/bundle.zip`);
  expect(status).toBe(200);
  expect(headers.get('wristpin-missing-pictures')).toBe('1');
  expect((await readBundle(bytes)).entries).toHaveLength(2);
});

test('a job that does not exist cannot be taken out', async () => {
  expect((await here.get(`/api/jobs/${uuid(99)}/bundle.zip`)).status).toBe(404);
});
