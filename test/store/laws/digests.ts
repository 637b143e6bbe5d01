import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { Backend } from '../../../src/store/backend.js';
import { fill, largePicture } from '../filled.js';
import { entry, factsOf, opening, random } from '../samples.js';
import type { Ground } from './ground.js';

const flips = 100;
const seed = 20261201;

/** What the log keeps in words, a table and its columns; the pictures' bytes come beside. */
const kept = {
  entries: ['id', 'job', 'at', 'by', 'kind', 'body', 'received', 'digest'],
  pictures: ['sha256', 'mime', 'received', 'digest'],
  job_notes: ['job', 'by', 'words', 'summary', 'lesson', 'digest'],
} as const;
const numbers = {
  entries: ['v'],
  pictures: ['bytes', 'width', 'height'],
  job_notes: ['first', 'last', 'count', 'made', 'tag', 'open', 'invented'],
} as const;
const keys = { entries: 'id', pictures: 'sha256', job_notes: 'job' } as const;

export function digestLaws({ database, fresh, freshPlace, openAt, underOf }: Ground): void {
  describe(`the digests of ${database}`, () => {
    const whole = async () => {
      const place = await freshPlace();
      const store = await openAt(place);
      await fill(store);
      await store.keepNotes(
        (await store.jobs()).map(({ job, last }) => ({
          ...{ job, made: last, by: 'test', tag: 7, open: true, invented: false },
          ...{ tokens: 'tiller engine', places: new Uint8Array(), summary: '{"tag":7}', lesson: '{}' },
        })),
      );
      expect(await store.verify()).toMatchObject({ ok: true, problems: [] });
      return { store, under: await underOf(place) };
    };

    it(`find each of ${flips} single flipped bits, whether in a line, a picture or a summary (seed ${seed})`, async () => {
      const { store, under } = await whole();
      const next = random(seed);
      const unseen: string[] = [];
      for (let i = 0; i < flips; i++) {
        const { what, undo } = await flipSomewhere(under, next);
        const report = await store.verify();
        if (report.ok && report.miscounted === undefined) unseen.push(what);
        await undo();
      }
      expect(unseen).toEqual([]);
      expect(await store.verify()).toMatchObject({ ok: true });
    });

    it('name a line that says another torque than was written, and no other line', async () => {
      const { store, under } = await whole();
      await store.append([
        entry('t', 'j1', 'torque', { joint: 'head', set: { written: '18 ft-lb', si: 24.4 } }),
      ]);
      await store.append([entry('after', 'j1')]);
      const body = '{"joint":"head","set":{"written":"98 ft-lb","si":24.4}}';
      await under.db.updateTable('entries').set({ body }).where('id', '=', 't').execute();
      expect((await store.verify()).problems).toEqual([
        expect.stringMatching(/^entry t of job j1: it is not what was written/),
      ]);
    });

    it('notice a line taken out of the middle, two that changed places, and one off the end', async () => {
      const { store, under } = await whole();
      const take = (id: string) => under.db.deleteFrom('entries').where('id', '=', id).execute();
      await take('n7');
      expect((await store.verify()).problems).toEqual([expect.stringMatching(/^entry n8 of job j1/)]);
      await take('last');
      expect((await store.verify()).problems).toContainEqual(
        'the log does not end with the line that was written last',
      );
    });

    it('are SHA-256 over the digest before, the number, the time of arrival and the line with its fields in order', async () => {
      const { under } = await whole();
      const rows = await under.db.selectFrom('entries').selectAll().orderBy('seq').limit(2).execute();
      const said = (row: (typeof rows)[0]) =>
        `{"at":"${row.at}","body":{"tag":7,"title":"tiller engine"},"by":"bench","id":"${row.id}","job":"j1","kind":"open","v":1}`;
      const first = createHash('sha256')
        .update(`\n${rows[0]!.seq}\n${rows[0]!.received}\n${said(rows[0]!)}`)
        .digest('hex');
      expect(rows[0]!.digest).toBe(first);
      expect(rows[1]!.digest).not.toBe(first);
    });

    it('go on over an invented job that was taken out, wherever it stood', async () => {
      const store = await fresh();
      await store.append([opening('j1')]);
      await store.append([opening('try', { invented: true }), entry('t1', 'try'), entry('t2', 'try')]);
      await store.append([entry('a', 'j1')]);
      await store.append([opening('last', { invented: true }), entry('l1', 'last')]);
      await store.removeInvented('try');
      await store.removeInvented('last');
      expect((await store.verify()).problems).toEqual([]);
      await store.append([entry('b', 'j1')]);
      expect((await store.verify()).problems).toEqual([]);
    });
  });
}

interface Flipped {
  readonly what: string;
  readonly undo: () => Promise<unknown>;
}

async function flipSomewhere(under: Backend, next: () => number): Promise<Flipped> {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(next() * from.length)]!;
  const table = pick(['entries', 'entries', 'entries', 'pictures', 'job_notes', 'picture_chunks'] as const);
  if (table === 'picture_chunks') return flipInPicture(under, next);
  const rows = await under.db.selectFrom(table).selectAll().orderBy(keys[table]).execute();
  const row = pick(rows) as Record<string, string | number>;
  const column = pick([...kept[table], ...numbers[table]].filter((each) => row[each] !== ''));
  const before = row[column]!;
  const after =
    typeof before === 'number' ? before ^ (1 << Math.floor(next() * 12)) : flippedText(before, next);
  const name = row[keys[table]] as string;
  const set = (value: string | number, at: string) =>
    under.db
      .updateTable(table as 'entries')
      .set({ [column]: value })
      .where(keys[table] as 'id', '=', at)
      .execute();
  // the pieces of a picture refer to it by its name: the database itself refuses another one
  if (table === 'pictures' && column === 'sha256') return flipSomewhere(under, next);
  try {
    await set(after, name);
  } catch {
    return flipSomewhere(under, next); // it names another row by now, and no two may have one name
  }
  const undo = () => set(before, column === keys[table] ? String(after) : name);
  return { what: `${table}.${column} of ${name}: ${before} -> ${after}`, undo };
}

/** One bit of one sign; such that the database still takes it for text. */
function flippedText(text: string, next: () => number): string {
  for (;;) {
    const at = Math.floor(next() * text.length);
    const code = text.charCodeAt(at) ^ (1 << Math.floor(next() * 7));
    if (code >= 32 && code < 127) return text.slice(0, at) + String.fromCharCode(code) + text.slice(at + 1);
  }
}

async function flipInPicture(under: Backend, next: () => number): Promise<Flipped> {
  const { sha256 } = factsOf(largePicture);
  const piece = await under.db
    .selectFrom('picture_chunks')
    .select('data')
    .where('sha256', '=', sha256)
    .where('n', '=', 1)
    .executeTakeFirstOrThrow();
  const data = Buffer.from(piece.data);
  const at = Math.floor(next() * data.length);
  const set = () =>
    under.db
      .updateTable('picture_chunks')
      .set({ data })
      .where('sha256', '=', sha256)
      .where('n', '=', 1)
      .execute();
  const bit = 1 << Math.floor(next() * 8);
  data[at]! ^= bit;
  await set();
  const undo = () => {
    data[at]! ^= bit;
    return set();
  };
  return { what: `byte ${at} of the large picture`, undo };
}
