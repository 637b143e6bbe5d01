import { createHash } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { catalogOf, foldShop } from '../../src/job/index.js';
import {
  readBundleApart,
  readLines,
  readPacksApart,
  readPacksBy,
  TooMuch,
} from '../../src/shopkeep/index.js';
import {
  type Answer,
  builtReader,
  entry,
  jobA,
  note,
  openEntry,
  startServer,
  type TestServer,
} from './support.js';

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
});
afterAll(() => server.close());

/** How many other requests were answered until this one was. */
async function answeredMeanwhile(asked: Promise<Answer>): Promise<{ answer: Answer; others: number }> {
  let answer: Answer | undefined;
  const done = asked.then((got) => {
    answer = got;
  });
  let others = 0;
  while (answer === undefined) {
    expect((await server.get('/api/health')).status).toBe(200);
    others += 1;
  }
  await done;
  return { answer, others };
}

function bundleOf(log: Uint8Array, entries: number): Uint8Array {
  const logSha256 = createHash('sha256').update(log).digest('hex');
  const about = { format: 'wristpin bundle', version: 1, entries, pictures: 0, logSha256 };
  return zipSync({ 'about.json': strToU8(JSON.stringify(about)), 'log.jsonl': log });
}

/** Fits until its last line. */
function longBundle(): Uint8Array {
  const lines = Array.from({ length: 40_000 }, (_, i) => JSON.stringify(note(i + 10, 'w'.repeat(200))));
  const log = strToU8(`${JSON.stringify(openEntry(1, 12))}\n${lines.join('\n')}\n{"id":"x"}\n`);
  return bundleOf(log, lines.length + 2);
}

const ours = (n: number, text: string) => entry(n + 100, 'pack', { pack: `ours-${n}`, text }, 'shop');
/** Can be read, and fits no catalog: the whole has to be gone through to say so. */
const dangling = (n: number) =>
  ours(
    n,
    `pack: { id: ours-${n}, title: Ours }\nfaults:\n  - { id: f${n}, name: f, causes: [{ fault: none, chance: 0.1 }] }\n`,
  );

describe('while what comes from outside is read, others are answered', () => {
  test('a bundle of 40,000 lines that is refused at its last', async () => {
    const { answer, others } = await answeredMeanwhile(
      server.send('POST', '/api/bundles?look', longBundle()),
    );
    expect([answer.status, answer.json.error.field]).toEqual([422, 'entries.40001.id']);
    expect(others).toBeGreaterThan(4);
  });

  test('twenty packs that each fit no catalog', async () => {
    const packs = Array.from({ length: 20 }, (_, n) => dangling(n));
    const { answer, others } = await answeredMeanwhile(server.post('/api/entries', { entries: packs }));
    expect(answer.status).toBe(200);
    expect(others).toBeGreaterThan(4);
    const catalog = await answeredMeanwhile(server.get('/api/catalog'));
    expect(catalog.answer.json.hash).toBe(hashOf(builtInCatalog()));
  });
});

const hashOf = (value: unknown) => createHash('sha256').update(JSON.stringify(value)).digest('hex');

test('the catalog that another thread made is, sign by sign, the one that a page makes', async () => {
  const text =
    'pack: { id: ours, title: Ours }\nagents:\n  - { id: tea, name: black tea, kind: water-based }\n';
  const added = ours(30, text.replace('id: ours', 'id: ours-30'));
  const shop = foldShop([added]);
  const made = await readPacksApart(await builtReader(), shop.packs);
  expect(hashOf(made.catalog)).toBe(hashOf(catalogOf(shop)));
});

describe('one reading', () => {
  const file = () => join(server.folder, 'given.zip');

  test('that takes longer than it may is ended, and so is one that wants more memory', async () => {
    const program = await builtReader();
    writeFileSync(file(), longBundle());
    const refusal = (limits: Parameters<typeof readBundleApart>[2]) =>
      readBundleApart(program, file(), limits).catch((error: unknown) => error);
    const late = await refusal({ ms: 50, megabytes: 512 });
    expect(late).toBeInstanceOf(TooMuch);
    expect(String(late)).toContain('could not be read within 0.05 seconds');
    expect(String(await refusal({ ms: 60_000, megabytes: 24 }))).toContain('24 MB of memory');
  });

  test('gives what the bundle holds, its pictures one by one, and the reason where it is none', async () => {
    await server.post('/api/entries', { entries: [openEntry(1, 12), note(2, 'kept')] });
    const { bytes } = await server.get(`/api/jobs/${jobA}/bundle.zip`);
    writeFileSync(file(), bytes);
    const read = await readBundleApart(await builtReader(), file());
    expect(read.entries.map(({ kind }) => kind)).toEqual(['open', 'note']);
    await read.end();
    writeFileSync(file(), 'no ZIP');
    await expect(readBundleApart(await builtReader(), file())).rejects.toMatchObject({
      name: 'RecordError',
      message: expect.stringContaining('not a ZIP'),
    });
  });
});

test('a pack that cannot be read in good time is refused, and not kept', async () => {
  readPacksBy(server.store, async () => {
    throw new TooMuch('could not be read within 20 seconds');
  });
  await expect(readLines(server.store, [note(60, 'x'), dangling(61)])).rejects.toMatchObject({
    message:
      'Entry 2: with this pack the shop’s catalog could not be read within 20 seconds. Nothing was stored.',
    field: 'entries.1.body.text',
  });
});
