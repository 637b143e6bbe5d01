import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, expect, test } from 'vitest';
import { openSqlite, type Store } from '../../src/store/index.js';
import { keep } from '../../src/store/keep.js';
import { sqliteBackend } from '../../src/store/sqlite.js';
import { type Answer, jobA, note, openEntry, picture, startServer, type TestServer } from './support.js';

const folder = mkdtempSync(join(tmpdir(), 'wristpin-full-'));
const disk = join(folder, 'disk');
const now = () => '2026-03-02T09:15:00.000Z';

/** A store whose disk can be filled up, and given room again. */
interface Disk {
  readonly store: Store;
  readonly fill: () => Promise<unknown>;
  readonly free: () => Promise<unknown>;
}

/** A file system of eight megabytes in memory; only who may mount one has it. */
const mounted = (() => {
  try {
    execFileSync('mkdir', [disk]);
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=8m', 'tmpfs', disk], { stdio: 'ignore' });
    return true;
  } catch {
    console.warn('The real full disk is left out: this user may not mount a file system.');
    return false;
  }
})();
afterAll(() => {
  if (mounted) execFileSync('umount', [disk]);
  rmSync(folder, { recursive: true, force: true });
});

async function realDisk(): Promise<Disk> {
  const ballast = join(disk, 'ballast');
  const store = await openSqlite(join(disk, 'shop.db'), { now });
  return {
    store,
    fill: async () => {
      const { bavail, bsize } = statfsSync(disk);
      writeFileSync(ballast, new Uint8Array(Math.max(0, bavail * bsize - 600_000)));
    },
    free: async () => rmSync(ballast),
  };
}

/** SQLite refuses to grow the file past a number of pages with the error that a full disk gives. */
async function fewPages(): Promise<Disk> {
  const backend = await sqliteBackend(join(folder, 'pages.db'), now);
  const limit = (pages: number) => sql.raw(`pragma max_page_count = ${pages}`).execute(backend.db);
  const pagesNow = async () => {
    const { rows } = await sql<{ page_count: number }>`pragma page_count`.execute(backend.db);
    return rows[0]!.page_count;
  };
  return {
    store: keep(backend),
    fill: async () => limit((await pagesNow()) + 150),
    free: () => limit(1_000_000),
  };
}

/** What was sent, and whether it was acknowledged. */
class Sender {
  readonly #server: TestServer;
  readonly lines = new Set<string>();
  readonly pictures = new Set<string>();
  #n = 10;

  constructor(server: TestServer) {
    this.#server = server;
  }

  line = async (): Promise<() => Promise<Answer>> => {
    const entry = note(this.#n++, 'w'.repeat(20_000));
    return async () => {
      const answer = await this.#server.post('/api/entries', { entries: [entry] });
      if (answer.status === 200) this.lines.add(entry.id);
      return answer;
    };
  };

  picture = async (inParts: boolean): Promise<() => Promise<Answer>> => {
    const bytes = await picture('png', { width: 120, height: 90, seed: this.#n++ });
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const path = `/api/pictures/${sha256}${inParts ? `/parts?at=0&of=${bytes.length}` : ''}`;
    return async () => {
      const answer = await this.#server.send('PUT', path, bytes);
      if (answer.status === 200) this.pictures.add(sha256);
      return answer;
    };
  };

  /** Sends on until so one is refused, and gives that one to be sent again. */
  async untilRefused(make: () => Promise<() => Promise<Answer>>): Promise<() => Promise<Answer>> {
    for (let i = 0; i < 400; i++) {
      const send = await make();
      const answer = await send();
      if (answer.status === 200) continue;
      expect([answer.status, answer.json.error.code]).toEqual([507, 'disk-full']);
      expect(answer.json.error.message).toMatch(
        /no room left on its disk.*What was saved before is as it was/,
      );
      return send;
    }
    throw new Error('the disk was never full');
  }
}

const forms = { 'of its own that is really full': realDisk, 'that may take no more pages': fewPages };

for (const [what, make] of Object.entries(forms))
  test.skipIf(make === realDisk && !mounted)(
    `a disk ${what}: lines and pictures are refused with its name, none that was acknowledged is lost, and work goes on when there is room`,
    async () => {
      const { store, fill, free } = await make();
      const server = await startServer({ store });
      const sender = new Sender(server);
      try {
        expect((await server.post('/api/entries', { entries: [openEntry(1, 12)] })).status).toBe(200);
        for (let time = 0; time < 3; time++) {
          for (const send of [await sender.line(), await sender.picture(false)])
            expect((await send()).status).toBe(200);
          await fill();
          const refused = [
            await sender.untilRefused(() => sender.picture(time % 2 === 0)),
            await sender.untilRefused(() => sender.picture(time % 2 === 1)),
            await sender.untilRefused(sender.line),
          ];
          await expectAllThere(server, sender);
          await free();
          for (const send of refused) expect((await send()).status).toBe(200);
          await expectAllThere(server, sender);
        }
        expect(sender.lines.size).toBeGreaterThan(3);
        expect(sender.pictures.size).toBeGreaterThan(6);
        expect(await store.verify()).toMatchObject({ ok: true, problems: [] });
      } finally {
        await server.close();
      }
    },
  );

async function expectAllThere(server: TestServer, { lines, pictures }: Sender): Promise<void> {
  const { entries } = (await server.get(`/api/jobs/${jobA}/entries`)).json;
  const there = entries.map(({ id }: { id: string }) => id);
  expect(new Set(there).size).toBe(there.length);
  expect(there.length).toBe(1 + lines.size); // what was refused is not there
  expect([...lines].filter((id) => !there.includes(id))).toEqual([]);
  for (const sha256 of pictures) {
    const { bytes } = await server.get(`/api/pictures/${sha256}`);
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(sha256);
  }
}

test.skipIf(!mounted)('a backup onto a disk that is full leaves nothing there, and says why', async () => {
  const store = await openSqlite(join(folder, 'elsewhere.db'), { now });
  await store.append([
    openEntry(1, 12),
    ...Array.from({ length: 60 }, (_, i) => note(i + 10, 'w'.repeat(9000))),
  ]);
  const ballast = join(disk, 'ballast');
  const { bavail, bsize } = statfsSync(disk);
  writeFileSync(ballast, new Uint8Array(bavail * bsize - 200_000));
  const before = execFileSync('ls', [disk], { encoding: 'utf8' });
  await expect(store.backup(join(disk, 'backup.wristpin'))).rejects.toMatchObject({ code: 'disk-full' });
  expect(execFileSync('ls', [disk], { encoding: 'utf8' })).toBe(before);
  rmSync(ballast);
  expect(await store.backup(join(disk, 'backup.wristpin'))).toMatchObject({ ok: true });
  await store.close();
});
