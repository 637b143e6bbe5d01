import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeBundle } from '../../src/record/index.js';
import { entry, jobA, jobB, note, openEntry, startServer, type TestServer, uuid } from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

const stored = async () => (await server.get(`/api/jobs/${jobA}/entries`)).json.entries;

describe('entries that fit', () => {
  test('are acknowledged by id, and are there', async () => {
    const entries = [openEntry(1, 12), note(2, 'No spark at first pull.')];
    const answer = await server.post('/api/entries', { entries });
    expect(answer.status).toBe(200);
    expect(answer.json).toEqual({ stored: entries.map((e) => e.id), already: [], head: 2 });
    expect(await stored()).toEqual([
      { ...entries[0], seq: 1, received: '2026-03-02T09:00:00.000Z' },
      { ...entries[1], seq: 2, received: '2026-03-02T09:00:00.000Z' },
    ]);
  });

  test('sent twice change nothing', async () => {
    const before = await stored();
    const again = note(2, 'No spark at first pull.');
    const answer = await server.post('/api/entries', { entries: [again] });
    expect(answer.json).toEqual({ stored: [], already: [again.id], head: before.length });
    expect(await stored()).toEqual(before);
  });

  test('of a kind this version does not know are kept as they came', async () => {
    const newer = { ...entry(3, 'weather', { sky: ['gray', { wind: 3 }] }), v: 7 };
    expect((await server.post('/api/entries', { entries: [newer] })).status).toBe(200);
    expect((await stored()).at(-1)).toMatchObject(newer);
  });

  test('of the shop’s own log need no opening', async () => {
    const setting = entry(4, 'setting', { key: 'shop-name', value: 'Bench' }, 'shop');
    expect((await server.post('/api/entries', { entries: [setting] })).status).toBe(200);
    expect((await server.get('/api/jobs/shop/entries')).json.entries).toHaveLength(1);
  });
});

describe('what is refused stores nothing of what came with it', () => {
  const good = note(20, 'stands before the bad one');
  const torque = (value: unknown) => ({
    joint: 'head',
    hole: 1,
    pass: 1,
    set: value,
    result: 'clicked',
  });
  const inLb = 0.1129848290276167;

  const bad: readonly [string, unknown, number, string, string | undefined, RegExp][] = [
    [
      'a torque written as a length',
      torque({ written: '140 mm', kind: 'torque', si: 15.8, unit: 'in-lb' }),
      422,
      'bad-entry',
      'entries.1.body.set',
      /140 mm/,
    ],
    [
      'a number that does not say what the words say',
      torque({ written: '140 in-lb', kind: 'torque', si: 140, unit: 'in-lb' }),
      422,
      'bad-entry',
      'entries.1.body.set',
      /140 in-lb.*says otherwise/,
    ],
    ['a missing field', { joint: 'head' }, 422, 'bad-entry', 'entries.1.body.hole', /Entry 2: body\.hole/],
    ['a body that is no object', 'tight', 422, 'bad-entry', 'entries.1.body', /Entry 2/],
  ];

  test.each(bad)('%s', async (_title, body, status, code, field, message) => {
    const before = await stored();
    const answer = await server.post('/api/entries', { entries: [good, entry(21, 'torque', body)] });
    expect(answer.status).toBe(status);
    expect(answer.json.error).toMatchObject({ code, field, message: expect.stringMatching(message) });
    expect(await stored()).toEqual(before);
  });

  test('the same torque, rightly written, is taken', async () => {
    const set = { written: '140 in-lb', kind: 'torque', si: 140 * inLb, unit: 'in-lb' };
    const answer = await server.post('/api/entries', { entries: [entry(22, 'torque', torque(set))] });
    expect(answer.json).toMatchObject({ stored: [uuid(1022)] });
  });

  test('an entry for a job that does not exist', async () => {
    const before = await stored();
    const answer = await server.post('/api/entries', { entries: [good, note(23, 'lost', jobB)] });
    expect(answer.status).toBe(404);
    expect(answer.json.error.code).toBe('no-such-job');
    expect(answer.json.error.message).toContain(jobB);
    expect(await stored()).toEqual(before);
  });

  test('an id that is kept with another content', async () => {
    const before = await stored();
    const answer = await server.post('/api/entries', { entries: [good, note(2, 'It was said otherwise.')] });
    expect(answer.status).toBe(409);
    expect(answer.json.error.code).toBe('conflict');
    expect(await stored()).toEqual(before);
  });

  const envelopes: readonly [string, Record<string, unknown>, string][] = [
    ['an id that is none', { id: '12' }, 'entries.0.id'],
    ['a job that is none', { job: '../shop' }, 'entries.0.job'],
    ['a time without its offset', { at: '2026-03-01T08:00:00' }, 'entries.0.at'],
    ['nobody who wrote it', { by: '' }, 'entries.0.by'],
    ['a version of nought', { v: 0 }, 'entries.0.v'],
  ];
  test.each(envelopes)('%s', async (_title, change, field) => {
    const answer = await server.post('/api/entries', { entries: [{ ...good, ...change }] });
    expect(answer.status).toBe(422);
    expect(answer.json.error).toMatchObject({ code: 'bad-entry', field });
  });
});

describe('a body that cannot be read', () => {
  const bytes = (...values: number[]) => new Uint8Array(values);
  const bodies: readonly [string, BodyInit | Uint8Array, number, string][] = [
    ['garbage', '{"entries": [', 400, 'bad-json'],
    ['nothing', '', 400, 'bad-json'],
    ['bytes that are no text', bytes(0x22, 0xff, 0xfe, 0x22), 400, 'bad-json'],
    ['a list', '[]', 422, 'bad-request-body'],
    ['another shape', '{"entries": "all"}', 422, 'bad-request-body'],
    ['null', 'null', 422, 'bad-request-body'],
    ['an entry that is null', '{"entries":[null]}', 422, 'bad-entry'],
  ];
  test.each(bodies)('%s', async (_title, body, status, code) => {
    const answer = await server.send('POST', '/api/entries', body);
    expect(answer.status).toBe(status);
    expect(answer.json.error.code).toBe(code);
    expect(answer.json.error.message).toMatch(/[.]$/);
  });

  test('JSON nested deeper than any log is refused, and the server goes on', async () => {
    const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`;
    const text = JSON.stringify({ entries: [{ ...note(30, 'x'), kind: 'newer', body: 'HERE' }] });
    const answer = await server.send('POST', '/api/entries', text.replace('"HERE"', deep));
    expect(answer.status).toBe(422);
    expect(answer.json.error.message).toMatch(/deep/);
    expect((await server.get('/api/health')).status).toBe(200);
  });
});

test('many devices at once: each acknowledged entry is there once', async () => {
  const batches = Array.from({ length: 20 }, (_, i) => [note(100 + 2 * i, 'a'), note(101 + 2 * i, 'b')]);
  const answers = await Promise.all(batches.map((entries) => server.post('/api/entries', { entries })));
  expect(answers.every((answer) => answer.json.stored.length === 2)).toBe(true);
  const ids = (await stored()).map((e: { id: string }) => e.id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { id } of batches.flat()) expect(ids).toContain(id);
});

describe('a clearance is held against the engine of its job', () => {
  const twoStroke = uuid(0xc);
  const value = { written: '0.15 mm', kind: 'length', si: 0.00015, unit: 'mm' };
  const clearance = (n: number, body: object = {}, job = twoStroke) =>
    entry(
      n,
      'measurement',
      { measure: 'valve-clearance-side-valve', title: 'Clearance', value, place: 'exhaust', ...body },
      job,
    );
  const intake = (n: number, architecture: string, job = twoStroke) =>
    entry(n, 'intake', { architecture }, job);
  const send = (...entries: unknown[]) => server.post('/api/entries', { entries });
  const noValves = /^Entry 1: body\.measure: this engine has no valves of that kind: .*Nothing was stored\.$/;

  test('at a valve that the engine does not have it is refused by name, and nothing is stored', async () => {
    await send(openEntry(40, 40, twoStroke), intake(41, 'two-stroke'));
    const head = await server.store.head();
    const answer = await send(clearance(42), note(43, 'came with it', twoStroke));
    expect(answer.status).toBe(422);
    expect(answer.json.error).toMatchObject({ code: 'bad-entry', field: 'entries.0.body.measure' });
    expect(answer.json.error.message).toMatch(noValves);
    expect(await server.store.head()).toBe(head);
  });

  test('the facts that come with it count, and those of another job do not', async () => {
    const sideValve = uuid(0xd);
    const refused = await send(
      openEntry(44, 44, sideValve),
      intake(45, 'two-stroke', sideValve),
      clearance(46, {}, sideValve),
    );
    expect(refused.json.error.field).toBe('entries.2.body.measure');
    const taken = [
      openEntry(44, 44, sideValve),
      intake(45, 'side-valve', sideValve),
      clearance(46, {}, sideValve),
    ];
    expect((await send(...taken)).status).toBe(200);
    const nowhere = await send(clearance(47, { place: '' }, sideValve));
    expect(nowhere.json.error).toMatchObject({ field: 'entries.0.body.place' });
    expect(nowhere.json.error.message).toContain('Say which valve: intake or exhaust.');
  });

  test('one that the log holds, or that is struck, passes: it was judged when it was written', async () => {
    const corrected = uuid(0xe);
    await send(
      openEntry(48, 48, corrected),
      intake(49, 'side-valve', corrected),
      clearance(50, {}, corrected),
    );
    await send(intake(51, 'two-stroke', corrected));
    expect((await send(clearance(50, {}, corrected))).json.already).toEqual([uuid(1050)]);
    const struck = entry(53, 'strike', { entry: uuid(1052), reason: 'another machine' }, corrected);
    expect((await send(clearance(52, {}, corrected), struck)).status).toBe(200);
    expect((await send(clearance(54, {}, corrected))).json.error.message).toMatch(noValves);
  });

  test('in a bundle it is refused in the same words, and the job is not taken in', async () => {
    const other = uuid(0xf);
    const entries = [openEntry(60, 60, other), intake(61, 'two-stroke', other), clearance(62, {}, other)];
    const answer = await server.send('POST', '/api/bundles', await writeBundle({ entries, pictures: [] }));
    expect(answer.status).toBe(422);
    expect(answer.json.error.field).toBe('entries.2.body.measure');
    expect(answer.json.error.message).toContain('this engine has no valves of that kind');
    expect(await server.store.entries(other)).toEqual([]);
  });
});
