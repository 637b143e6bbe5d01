import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { readSpecLines } from '../../src/catalog/makers-sheet/index.js';
import { desk } from '../../src/desk/index.js';
import { seeded } from '../../src/infer/index.js';
import { foldShop, readShopPack } from '../../src/job/index.js';
import { ListenError, listenToRun, readWav } from '../../src/listen/index.js';
import { readOffersCsv } from '../../src/supply/index.js';
import { campaign } from '../support/campaign.js';
import * as hostile from './hostile.js';
import { type Answer, ask, jobA, openEntry, picture, startServer, type TestServer } from './support.js';

const seed = 20261202;
/** of each kind */
const inputs = campaign(60, 9_000);

let server: TestServer;
let samples: Uint8Array[];
beforeAll(async () => {
  server = await startServer({ network: { addresses: () => [] } });
  await server.post('/api/entries', { entries: [openEntry(1, 12)] });
  samples = [await picture('jpeg'), await picture('png', { width: 90, height: 60 }), await picture('webp')];
});
afterAll(() => server.close());

type Door = (next: hostile.Chance) => Promise<Answer>;

const post = (path: string, body: BodyInit | Uint8Array) => server.send('POST', path, body);
const doors: Record<string, Door> = {
  lines: (next) => {
    const entries = Array.from({ length: 1 + Math.floor(next() * 3) }, () => hostile.line(next));
    return post('/api/entries', JSON.stringify({ entries }));
  },
  'bodies of any form': (next) => {
    const bytes = new TextEncoder().encode(JSON.stringify(hostile.value(next)) ?? '');
    return post('/api/entries', next() < 0.5 ? hostile.mutated(next, bytes) : bytes);
  },
  pictures: (next) => {
    const bytes = hostile.mutated(next, samples[Math.floor(next() * samples.length)]!);
    const name = next() < 0.9 ? hostile.sha256(bytes) : 'f'.repeat(64);
    return server.send('PUT', `/api/pictures/${name}`, bytes);
  },
  bundles: (next) => post(`/api/bundles${next() < 0.5 ? '?look' : ''}`, hostile.bundle(next)),
  packs: async (next) => {
    const body = { pack: 'ours', text: hostile.pack(next) };
    const entry = { ...hostile.line(next), job: 'shop', kind: 'pack', v: 1, body };
    const answer = await post('/api/entries', JSON.stringify({ entries: [entry] }));
    return answer.status >= 500 ? answer : server.get('/api/catalog');
  },
  worksheets: (next) => {
    const sheet = desk[Math.floor(next() * desk.length)]!;
    const good = sheet.examples[0]!.given as Record<string, string>;
    const given = Object.fromEntries(
      Object.keys(good).map((field) => [field, next() < 0.7 ? good[field]! : String(hostile.value(next, 9))]),
    );
    return post(`/api/worksheets/${sheet.id}`, JSON.stringify({ given }));
  },
  'pairing forms': async (next) => {
    const { code } = (await server.send('POST', '/api/devices/code')).json;
    const headers = {
      'content-type': [
        'multipart/form-data',
        'multipart/form-data; boundary=x',
        'application/x-www-form-urlencoded',
        'text/plain',
      ][Math.floor(next() * 4)]!,
    };
    const body = new TextEncoder().encode(`--x\r\n${String(hostile.value(next, 9))}`);
    return ask(`${server.url}/pair/${code}`, {
      method: 'POST',
      headers,
      body: body as BodyInit,
      redirect: 'manual',
    });
  },
  addresses: (next) => {
    const part = () => encodeURIComponent(String(hostile.value(next, 9)).replace(/\p{Surrogate}/gu, '?'));
    const path = ['/api/jobs', '/api/jobs/', '/api/past', '/api/pictures/', '/api/worksheets/', '/'][
      Math.floor(next() * 6)
    ]!;
    return server.get(`${path}${part()}?${part()}=${part()}`.slice(0, 4000));
  },
};

describe(`${inputs} hostile inputs through each door of the server (seed ${seed})`, () => {
  for (const [name, door] of Object.entries(doors))
    test(`${name}: each answered, none as a fault of the program`, { timeout: 3_600_000 }, async () => {
      const next = seeded(seed);
      const statuses: Record<number, number> = {};
      let slowestMs = 0;
      for (let i = 0; i < inputs; i++) {
        const begun = process.cpuUsage();
        const answer = await door(next);
        const { user, system } = process.cpuUsage(begun);
        slowestMs = Math.max(slowestMs, (user + system) / 1000);
        statuses[answer.status] = (statuses[answer.status] ?? 0) + 1;
        if (answer.status >= 500)
          throw new Error(
            `input ${i}: ${answer.status} ${JSON.stringify(answer.json)}\n${server.logged.at(-1)}`,
          );
      }
      console.info(
        `${name}: ${JSON.stringify(statuses)}, at most ${slowestMs.toFixed(0)} ms of processor time for one`,
      );
      expect((await server.get('/api/health')).status).toBe(200);
    });

  test('what was let in can be read, printed and taken away again, and the store is whole', {
    timeout: 600_000,
  }, async () => {
    for (const path of [
      'entries',
      'tables/parts.csv',
      'tables/measurements.csv',
      'tables/torques.csv',
      'record.pdf',
      'bundle.zip',
      'calendar.ics',
      'bag-labels.pdf',
    ]) {
      const answer = await server.get(`/api/jobs/${jobA}/${path}`);
      expect(answer.status, `${path}: ${server.logged.at(-1)}`).toBe(200);
    }
    expect((await server.get('/api/jobs')).status).toBe(200);
    expect((await server.store.verify()).problems).toEqual([]);
    expect(process.memoryUsage().rss / 2 ** 20).toBeLessThan(2048);
  });
});

describe(`${inputs} hostile inputs to what a page reads by itself (seed ${seed})`, () => {
  const catalog = builtInCatalog();
  const readers: Record<string, (next: hostile.Chance) => void> = {
    'packs as they are typed': (next) =>
      void tolerant(
        () => readShopPack(foldShop([]), { file: 'x', text: hostile.pack(next) }),
        'CatalogError',
      ),
    'maker’s sheets': (next) => void readSpecLines(catalog, hostile.sheet(next)),
    'tables of offers': (next) =>
      void tolerant(
        () => readOffersCsv(hostile.table(next), { parts: [], suppliers: [] } as never),
        'SupplyError',
      ),
    sounds: (next) =>
      void tolerant(() => {
        const heard = readWav(hostile.sound(next));
        if (heard.samples.length > 0) listenToRun(heard, { strokes: 4, cylinders: 1 } as never);
      }, ListenError.name),
  };
  for (const [name, read] of Object.entries(readers))
    test(`${name}: read or refused in words`, { timeout: 3_600_000 }, () => {
      const next = seeded(seed);
      let slowestMs = 0;
      for (let i = 0; i < inputs; i++) {
        const begun = process.cpuUsage();
        read(next);
        slowestMs = Math.max(slowestMs, process.cpuUsage(begun).user / 1000);
      }
      console.info(`${name}: at most ${slowestMs.toFixed(0)} ms of processor time for one`);
    });

  /** An error in the room's own words is an answer; any other is a fault. */
  function tolerant(work: () => unknown, own: string): void {
    try {
      work();
    } catch (error) {
      if (!(error instanceof Error) || error.name !== own) throw error;
    }
  }
});
