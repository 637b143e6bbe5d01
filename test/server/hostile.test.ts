import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { readSpecLines } from '../../src/catalog/makers-sheet/index.js';
import { desk } from '../../src/desk/index.js';
import { foldShop, readShopPack } from '../../src/job/index.js';
import { ListenError, listenToRun, readWav } from '../../src/listen/index.js';
import { type App, createApp } from '../../src/server/app.js';
import { readBundleHere } from '../../src/shopkeep/index.js';
import { readOffersCsv } from '../../src/supply/index.js';
import { campaign } from '../support/campaign.js';
import { playRounds, type Round } from '../support/rounds.js';
import * as hostile from './hostile.js';
import { type Answer, jobA, openEntry, picture, startServer, type TestServer } from './support.js';

const seed = 20261202;
const inputs = (whole: number) => campaign(Math.ceil(whole / 200), whole);

let server: TestServer;
/** The same server's handlers, asked without a line in between. */
let app: App;
let samples: Uint8Array[];
beforeAll(async () => {
  server = await startServer({ network: { addresses: () => [] } });
  await server.post('/api/entries', { entries: [openEntry(1, 12)] });
  app = await createApp(server.parts);
  samples = [await picture('jpeg'), await picture('png', { width: 90, height: 60 }), await picture('webp')];
});
afterAll(async () => {
  app.end();
  await server.close();
});

type Door = (next: hostile.Chance, round: Round) => Promise<Pick<Answer, 'status'> | undefined>;

const bench = { incoming: { socket: { localPort: 4310, remoteAddress: '127.0.0.1' } }, outgoing: {} };

async function ask(method: string, path: string, body?: Uint8Array | string, headers = {}): Promise<Answer> {
  const init = { method, headers, ...(body !== undefined && { body: body as BodyInit }) };
  const request = new Request(`http://127.0.0.1:4310${path}`, init);
  request.headers.set('host', '127.0.0.1:4310');
  const answer = await app.http.fetch(request, bench as never);
  const bytes = new Uint8Array(await answer.arrayBuffer());
  const isJson = answer.headers.get('content-type')?.includes('json');
  const json = isJson ? JSON.parse(new TextDecoder().decode(bytes)) : undefined;
  return { status: answer.status, headers: answer.headers, bytes, json };
}

const post = (path: string, body: Uint8Array | string) => ask('POST', path, body);
const pick = <T>(next: hostile.Chance, from: readonly T[]): T => from[Math.floor(next() * from.length)]!;

/** Each with the number of inputs that come to it in the whole campaign: most where they cost least. */
const doors: Record<string, readonly [number, Door]> = {
  lines: [
    15_000,
    (next) => {
      const entries = Array.from({ length: 1 + Math.floor(next() * 3) }, () => hostile.line(next));
      return post('/api/entries', JSON.stringify({ entries }));
    },
  ],
  'bodies of any form': [
    15_000,
    (next) => {
      const bytes = new TextEncoder().encode(JSON.stringify(hostile.value(next)) ?? '');
      return post('/api/entries', next() < 0.5 ? hostile.mutated(next, bytes) : bytes);
    },
  ],
  pictures: [
    4000,
    (next) => {
      const bytes = hostile.mutated(next, pick(next, samples));
      const name = next() < 0.9 ? hostile.sha256(bytes) : 'f'.repeat(64);
      return ask('PUT', `/api/pictures/${name}`, bytes);
    },
  ],
  'pictures in parts': [
    6000,
    (next) => {
      const bytes = hostile.mutated(next, samples[1]!);
      const number = () => pick(next, ['0', '-1', '1e9', '', '999999999', String(bytes.length), 'NaN', '7']);
      const name = next() < 0.9 ? hostile.sha256(bytes) : 'f'.repeat(64);
      return ask('PUT', `/api/pictures/${name}/parts?at=${number()}&of=${number()}`, bytes);
    },
  ],
  bundles: [1500, (next) => post(`/api/bundles${next() < 0.5 ? '?look' : ''}`, hostile.bundle(next))],
  packs: [
    500,
    async (next) => {
      const body = { pack: 'ours', text: hostile.pack(next) };
      const entry = { ...hostile.line(next), job: 'shop', kind: 'pack', v: 1, body };
      const answer = await post('/api/entries', JSON.stringify({ entries: [entry] }));
      return answer.status >= 500 ? answer : ask('GET', '/api/catalog');
    },
  ],
  worksheets: [
    12_000,
    (next) => {
      const sheet = pick(next, desk);
      const good = sheet.examples[0]!.given as Record<string, string>;
      const given = Object.fromEntries(
        Object.keys(good).map((field) => [
          field,
          next() < 0.7 ? good[field]! : String(hostile.value(next, 9)),
        ]),
      );
      return post(`/api/worksheets/${sheet.id}`, JSON.stringify({ given }));
    },
  ],
  'pairing forms': [
    5000,
    async (next) => {
      const { code } = (await ask('POST', '/api/devices/code')).json;
      const kind = pick(next, ['multipart/form-data', 'multipart/form-data; boundary=x', 'text/plain', form]);
      const body = new TextEncoder().encode(`--x\r\n${String(hostile.value(next, 9))}`);
      return ask('POST', `/pair/${code}`, body, { 'content-type': kind });
    },
  ],
  addresses: [
    12_000,
    (next) => {
      const part = () => encodeURIComponent(String(hostile.value(next, 9)).replace(/\p{Surrogate}/gu, '?'));
      const path = pick(next, [
        '/api/jobs',
        '/api/jobs/',
        '/api/past',
        '/api/pictures/',
        '/api/worksheets/',
        '/',
      ]);
      return ask('GET', `${path}${part()}?${part()}=${part()}`.slice(0, 4000));
    },
  ],
  'the port itself': [2000, (next) => overTheWire(hostile.wire(next))],
};
const form = 'application/x-www-form-urlencoded';

/** The status that came back, if any did: a line that says nothing more is let go. */
function overTheWire(bytes: Uint8Array): Promise<{ status: number } | undefined> {
  return new Promise((resolve) => {
    const line = connect(server.port, '127.0.0.1', () => line.write(bytes));
    const done = (status?: number) => {
      line.destroy();
      resolve(status === undefined ? undefined : { status });
    };
    line.on('data', (said) => done(Number(/^HTTP\/1\.\d (\d{3})/.exec(said.toString('latin1'))?.[1] ?? 999)));
    line.on('error', () => done()).on('close', () => done());
    line.setTimeout(30, () => done());
  });
}

const cpuMs = (since: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1000;
};

/** Processor time, reading threads and all. What took long is sent again, for what other programs took counts in. */
async function measured(round: Round, send: () => Promise<void>): Promise<void> {
  let least = Number.POSITIVE_INFINITY;
  for (let time = 0; time < 3 && least > mostMs; time++) {
    const begun = process.cpuUsage();
    await send();
    least = Math.min(least, cpuMs(begun));
  }
  if (least > mostMs) round.count('that took over two seconds');
  round.most('ms of processor time for one', least);
  round.most('MB of memory', process.memoryUsage.rss() / 2 ** 20);
}
const mostMs = 2000;
const mostMegabytes = 2048;

const heldTo = { timeout: 3_600_000 };

describe(`hostile inputs through each door of the server (seed ${seed})`, () => {
  for (const [name, [whole, door]] of Object.entries(doors))
    test(`${name}: each of ${inputs(whole)} answered, none as a fault of the program`, heldTo, async () => {
      const what = { name: `hostile: ${name}`, seed, rounds: inputs(whole) };
      const { counts, greatest } = await playRounds(what, async (round) => {
        const draws: number[] = [];
        await measured(round, async () => {
          const answer = await door(again(draws, round.chance), round);
          if (answer && answer.status >= 500)
            throw new Error(`${answer.status} ${JSON.stringify(answer)}\n${server.logged.at(-1)}`);
          round.count(`answered ${answer?.status ?? 'by silence'}`);
        });
      });
      expect(counts['that took over two seconds']).toBeUndefined();
      expect(greatest['MB of memory']).toBeLessThan(mostMegabytes);
      expect((await server.get('/api/health')).status).toBe(200);
    });

  test(
    'what was let in can be read, printed and taken away again, and the store is whole',
    heldTo,
    async () => {
      for (const path of [
        ...['entries', 'tables/parts.csv', 'tables/measurements.csv', 'tables/torques.csv'],
        ...['record.pdf', 'bundle.zip', 'calendar.ics', 'bag-labels.pdf'],
      ]) {
        const answer = await server.get(`/api/jobs/${jobA}/${path}`);
        expect(answer.status, `${path}: ${server.logged.at(-1)}`).toBe(200);
      }
      expect((await server.get('/api/jobs')).status).toBe(200);
      expect((await server.store.verify()).problems).toEqual([]);
    },
  );
});

/** The same draws once more when what was drawn is sent again. */
function again(draws: number[], chance: () => number): hostile.Chance {
  let at = 0;
  return () => {
    if (at === draws.length) draws.push(chance());
    return draws[at++]!;
  };
}

describe(`hostile inputs to what a page reads by itself (seed ${seed})`, () => {
  const catalog = builtInCatalog();
  const readers: Record<string, readonly [number, (next: hostile.Chance) => unknown]> = {
    'packs as they are typed': [
      1500,
      (next) =>
        tolerant(() => readShopPack(foldShop([]), { file: 'x', text: hostile.pack(next) }), 'CatalogError'),
    ],
    'bundles as they are read': [
      6000,
      (next) => tolerant(() => readBundleHere(hostile.bundle(next)), 'RecordError', 'ShopkeepError'),
    ],
    'maker’s sheets': [10_000, (next) => readSpecLines(catalog, hostile.sheet(next))],
    'tables of offers': [
      12_000,
      (next) =>
        tolerant(
          () => readOffersCsv(hostile.table(next), { parts: [], suppliers: [] } as never),
          'SupplyError',
        ),
    ],
    sounds: [
      9000,
      (next) =>
        tolerant(() => {
          const heard = readWav(hostile.sound(next));
          if (heard.samples.length > 0) listenToRun(heard, { strokes: 4, cylinders: 1 } as never);
        }, ListenError.name),
    ],
  };
  for (const [name, [whole, read]] of Object.entries(readers))
    test(`${name}: each of ${inputs(whole)} read or refused in words`, heldTo, async () => {
      const what = { name: `hostile: ${name}`, seed, rounds: inputs(whole) };
      const { counts, greatest } = await playRounds(what, async (round) => {
        const draws: number[] = [];
        await measured(round, async () => void (await read(again(draws, round.chance))));
      });
      expect(counts['that took over two seconds']).toBeUndefined();
      expect(greatest['MB of memory']).toBeLessThan(mostMegabytes);
    });

  /** An error in the room's own words is an answer; any other is a fault. */
  async function tolerant(work: () => unknown, ...own: readonly string[]): Promise<void> {
    try {
      await work();
    } catch (error) {
      if (!(error instanceof Error) || !own.includes(error.name)) throw error;
    }
  }
});
