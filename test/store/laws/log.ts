import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RawEntry } from '../../../src/job/index.js';
import type { Store } from '../../../src/store/index.js';
import { entry, now, opening, until } from '../samples.js';
import { type Ground, refusal } from './ground.js';

export function logLaws({ database, freshPlace, openAt, fresh }: Ground): void {
  describe(`the log on ${database}`, () => {
    it('gives entries back as they were sent, in the order they came, with seq and the time of arrival', async () => {
      const store = await fresh();
      const sent = [opening('j1'), entry('b', 'j1'), entry('a', 'j1')];
      expect(await store.append(sent)).toEqual({ stored: ['j1-open', 'b', 'a'], already: [] });
      const kept = await store.entries('j1');
      expect(kept).toEqual(sent.map((e, i) => ({ ...e, seq: i + 1, received: now() })));
      expect(await store.head()).toBe(3);
    });

    it('is not changed by sending an entry again, whole, within one batch, or with its fields in another order', async () => {
      const store = await fresh();
      const note = entry('n', 'j1', 'note', { words: 'pull cord frayed', stage: 'intake' });
      await store.append([opening('j1'), note]);
      const before = await store.since(0);
      expect(await store.append([note, opening('j1')])).toEqual({ stored: [], already: ['n', 'j1-open'] });
      const turned = { ...note, body: { stage: 'intake', words: 'pull cord frayed' } };
      expect(await store.append([turned, turned])).toEqual({ stored: [], already: ['n', 'n'] });
      expect(await store.since(0)).toEqual(before);
      const twice = entry('twice', 'j1');
      expect(await store.append([twice, twice])).toEqual({ stored: ['twice'], already: ['twice'] });
      expect(await store.append([])).toEqual({ stored: [], already: [] });
    });

    it('refuses an id it knows with another content, in every part of the content', async () => {
      const store = await fresh();
      const note = entry('n', 'j1');
      await store.append([opening('j1'), opening('j2'), note]);
      const before = await store.since(0);
      const others: Partial<RawEntry>[] = [
        { job: 'j2' },
        { at: '2026-03-02T10:15:01+01:00' },
        { by: 'yard' },
        { kind: 'remark' },
        { v: 2 },
        { body: { words: 'other' } },
        { body: { words: 'words of n', stage: 'intake' } },
      ];
      for (const other of others)
        await refusal(store.append([{ ...note, ...other }]), 'conflict', /n is already in the log/);
      await refusal(
        store.append([entry('x', 'j1'), { ...entry('x', 'j1'), by: 'yard' }]),
        'conflict',
        /x is already/,
      );
      expect(await store.since(0)).toEqual(before);
    });

    it('stores a batch whole or not at all', async () => {
      const store = await fresh();
      await store.append([opening('j1'), entry('n', 'j1')]);
      const good = [entry('g1', 'j1'), opening('j2'), entry('g2', 'j2')];
      await refusal(
        store.append([...good, { ...entry('n', 'j1'), by: 'yard' }]),
        'conflict',
        /Nothing of this was stored/,
      );
      await refusal(
        store.append([...good, entry('lost', 'nowhere')]),
        'no-such-job',
        /nowhere, which has not been opened/,
      );
      await refusal(store.append([...good, { ...entry('g3', 'j1'), v: 0.5 }]), 'bad-entry', /its v is 0.5/);
      expect((await store.since(0)).map((e) => e.id)).toEqual(['j1-open', 'n']);
      expect((await store.append(good)).stored).toEqual(['g1', 'j2-open', 'g2']);
    });

    it('keeps entries of opened jobs only, and of the shop always', async () => {
      const store = await fresh();
      await refusal(store.append([entry('n', 'j1')]), 'no-such-job', /job j1/);
      await store.append([entry('s', 'shop', 'setting', { key: 'currency', value: 'EUR' })]);
      await store.append([entry('n', 'j1'), opening('j1')]);
      await store.append([entry('m', 'j1')]);
      expect(await store.jobs()).toEqual([
        { job: 'shop', first: 1, last: 1, count: 1 },
        { job: 'j1', first: 2, last: 4, count: 3 },
      ]);
    });

    it('refuses what could not be given back unchanged, and names the entry and the field', async () => {
      const store = await fresh();
      const refused: [Partial<Record<keyof RawEntry, unknown>>, RegExp][] = [
        [{ id: '' }, /its id has 0 characters/],
        [{ job: 'j'.repeat(201) }, /its job has 201 characters/],
        [{ at: undefined }, /its at must be text, not undefined/],
        [{ by: 'a\0b' }, /its by holds a character that is none/],
        [{ by: '\ud83d' }, /its by holds a character that is none/],
        [{ kind: 7 }, /its kind must be text, not number/],
        [{ v: 2 ** 31 }, /its v is 2147483648/],
        [{ body: undefined }, /its body is missing/],
        [{ body: { gap: Number.NaN } }, /its body holds NaN under "gap"/],
        [{ body: { when: new Date(0) } }, /under "when"/],
        [{ body: { list: [() => 1] } }, /under "0"/],
      ];
      for (const [wrong, says] of refused) {
        await refusal(store.append([{ ...entry('e', 'shop'), ...wrong } as RawEntry]), 'bad-entry', says);
      }
      expect(await store.head()).toBe(0);
    });

    it('keeps where a line stands, and refuses a rank that is none', async () => {
      const store = await fresh();
      const marked = { ...entry('e1', 'shop'), rank: 8.64e15 };
      await store.append([marked, entry('e2', 'shop')]);
      const [first, second] = await store.entries('shop');
      expect(first).toMatchObject(marked);
      expect(second).not.toHaveProperty('rank');
      expect(await store.append([marked])).toMatchObject({ already: ['e1'] });
      expect(await store.append([{ ...marked, rank: 7 }])).toMatchObject({ already: ['e1'] });
      expect((await store.entries('shop'))[0]).toMatchObject(marked);
      for (const rank of [1.5, -1, Number.NaN, '7' as never])
        await refusal(store.append([{ ...entry('e3', 'shop'), rank }]), 'bad-entry', /its rank is/);
    });

    it('keeps which lines were said aloud: one that is not marked is another line', async () => {
      const store = await fresh();
      const said = { ...entry('e1', 'shop'), spoken: true as const };
      await store.append([said, entry('e2', 'shop')]);
      const [first, second] = await store.entries('shop');
      expect(first).toMatchObject(said);
      expect(second).not.toHaveProperty('spoken');
      expect(await store.append([said])).toMatchObject({ already: ['e1'] });
      await refusal(store.append([entry('e1', 'shop')]), 'conflict', /e1/);
      for (const spoken of [false, 1, 'yes'] as never[])
        await refusal(store.append([{ ...entry('e3', 'shop'), spoken }]), 'bad-entry', /its spoken is/);
    });

    it('gives back every JSON body and every name in any script', async () => {
      const store = await fresh();
      await store.append([opening('j1')]);
      let n = 0;
      const name = fc.string({ unit: 'binary', maxLength: 40 }).filter((text) => !text.includes('\0'));
      await fc.assert(
        fc.asyncProperty(
          fc.array(fc.tuple(fc.jsonValue(), name), { minLength: 1, maxLength: 5 }),
          async (given) => {
            const sent = given.map(([body, by]) => ({ ...entry(`e${++n}`, 'j1', 'any', asJson(body)), by }));
            const before = await store.head();
            await store.append(sent);
            const kept = (await store.since(before)).map(({ seq: _, received: __, ...rest }) => rest);
            expect(kept).toEqual(sent);
          },
        ),
        { seed: 20260302, numRuns: 60 },
      );
      expect((await store.verify()).problems).toEqual([]);
    });

    it('keeps bodies of a megabyte, and NUL and half characters inside them', async () => {
      const store = await fresh();
      const words = 'Zündkerze 🔧 свеча 火花塞 \u0000 \ud83d "\\ '.repeat(40_000).slice(0, 1_000_000);
      await store.append([opening('j1'), entry('long', 'j1', 'note', { words })]);
      expect((await store.entries('j1'))[1]?.body).toEqual({ words });
    });

    it('behaves like a list to which every new id is added once', async () => {
      const store = await fresh();
      await store.append([opening('j0'), opening('j1')]);
      const model: RawEntry[] = [opening('j0'), opening('j1')];
      const some = fc.array(fc.tuple(fc.nat(60), fc.nat(1)), { maxLength: 8 });
      await fc.assert(
        fc.asyncProperty(some, async (picks) => {
          const batch = picks.map(([id, job]) => entry(`e${id}-${job}`, `j${job}`));
          const known = new Set(model.map((e) => e.id));
          for (const e of batch) if (!known.has(e.id)) known.add(model[model.push(e) - 1]!.id);
          const { stored, already } = await store.append(batch);
          expect(stored.length + already.length).toBe(batch.length);
          expect((await store.since(0)).map((e) => e.id)).toEqual(model.map((e) => e.id));
        }),
        { seed: 7, numRuns: 30 },
      );
      for (const job of ['j0', 'j1']) {
        expect((await store.entries(job)).map((e) => e.id)).toEqual(
          model.filter((e) => e.job === job).map((e) => e.id),
        );
      }
    });

    it('answers what came after a seq, of one job and of all', async () => {
      const store = await fresh();
      expect([await store.head(), await store.since(0), await store.jobs()]).toEqual([0, [], []]);
      await store.append([
        opening('j1'),
        opening('j2'),
        entry('a', 'j1'),
        entry('b', 'j2'),
        entry('c', 'j1'),
      ]);
      expect((await store.since(2)).map((e) => e.id)).toEqual(['a', 'b', 'c']);
      expect((await store.entries('j1', { after: 1 })).map((e) => e.id)).toEqual(['a', 'c']);
      expect(await store.since(5)).toEqual([]);
      expect(await store.entries('j3')).toEqual([]);
    });

    it('takes a thousand entries in one batch', async () => {
      const store = await fresh();
      const batch = [opening('j1'), ...Array.from({ length: 1100 }, (_, i) => entry(`e${i}`, 'j1'))];
      await store.append(batch);
      expect((await store.append(batch)).already.length).toBe(1101);
      expect((await store.entries('j1')).map((e) => e.id)).toEqual(batch.map((e) => e.id));
      expect(await store.verify()).toMatchObject({ ok: true, entries: 1101, jobs: 1 });
    });

    it('shows nothing late: one who follows by seq while two writers write misses no entry', async () => {
      const place = await freshPlace();
      const [one, two, reader] = [await openAt(place), await openAt(place), await openAt(place)];
      await one.append([opening('j1')]);
      const writeAll = async (store: Store, name: string) => {
        for (let i = 0; i < 60; i++)
          await store.append([entry(`${name}${i}a`, 'j1'), entry(`${name}${i}b`, 'j1')]);
      };
      let done = false;
      const writing = Promise.all([writeAll(one, 'x'), writeAll(two, 'y')]).finally(() => {
        done = true;
      });
      const seen: string[] = [];
      for (let last = 0, finalLook = false; !finalLook; ) {
        finalLook = done;
        const news = await reader.since(last);
        seen.push(...news.map((e) => e.id));
        last = news.at(-1)?.seq ?? last;
        await new Promise(setImmediate);
      }
      await writing;
      expect(seen).toEqual((await reader.since(0)).map((e) => e.id));
      expect(seen.length).toBe(241);
    });

    it('tells watchers of every change, made here or through another connection, until they stop', async () => {
      const place = await freshPlace();
      const [here, there] = [await openAt(place), await openAt(place)];
      const heard: number[] = [];
      const stop = here.watch((head) => heard.push(head));
      await here.append([opening('j1'), entry('a', 'j1')]);
      await until(() => heard.includes(2));
      await there.append([entry('b', 'j1')]);
      await until(() => heard.includes(3));
      await refusal(here.append([entry('c', 'j9')]), 'no-such-job', /j9/);
      stop();
      await here.append([entry('d', 'j1')]);
      await new Promise((resolve) => setTimeout(resolve, 50));
      expect(Math.max(...heard)).toBe(3);
    });

    it('finishes what is under way before it closes, and answers nothing afterwards', async () => {
      const place = await freshPlace();
      const store = await openAt(place);
      const last = store.append([opening('j1')]);
      await Promise.all([store.close(), store.close()]);
      expect((await last).stored).toEqual(['j1-open']);
      await refusal(store.append([entry('a', 'j1')]), 'closed', /has been closed/);
      await refusal(store.head(), 'closed', /Open it again/);
      expect((await (await openAt(place)).since(0)).map((e) => e.id)).toEqual(['j1-open']);
    });
  });
}

function asJson(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}
