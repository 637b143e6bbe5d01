import { describe, expect, it } from 'vitest';
import type { JobNote } from '../../../src/store/index.js';
import { entry, opening } from '../samples.js';
import type { Ground } from './ground.js';

const note = (job: string, made: number, more: Partial<JobNote> = {}): JobNote => ({
  job,
  made,
  by: 'this',
  tag: made,
  open: true,
  invented: false,
  tokens: '',
  places: new Uint8Array(),
  summary: `{"id":"${job}"}`,
  lesson: '',
  ...more,
});

const listed = { order: 'as opened', most: 100 } as const;

/** What stands beside the log: counted with it, made by whoever folds, made anew at any time. */
export function notesLaws(ground: Ground): void {
  describe(`what is kept beside the log on ${ground.database}`, () => {
    const { fresh } = ground;

    it('falls behind with each line and is made again, the job written to last first', async () => {
      const store = await fresh();
      await store.append([opening('j1'), opening('j2'), entry('s', 'shop', 'setting', {})]);
      expect((await store.behind(9)).map(({ job }) => job)).toEqual(['j2', 'j1']);
      await store.keepNotes([note('j1', 1), note('j2', 2)]);
      expect(await store.behind(9)).toEqual([]);
      await store.append([entry('a', 'j1')]);
      expect(await store.behind(9)).toEqual([{ job: 'j1', first: 1, last: 4, count: 2 }]);
      expect(await store.behind(9, 3)).toEqual([]);
      await store.keepNotes([note('j1', 4)]);
      await store.keepNotes([note('j1', 1, { tag: 99 })]);
      expect((await store.listJobs({ ...listed, tag: 99 })).length).toBe(0);
    });

    it('lists by state and tag, page by page', async () => {
      const store = await fresh();
      await store.append(['j1', 'j2', 'j3', 'j4'].map((job) => opening(job)));
      expect(await store.listJobs(listed)).toEqual([]);
      await store.keepNotes([
        note('j1', 1),
        note('j2', 2, { open: false }),
        note('j3', 3),
        note('j4', 4, { invented: true }),
      ]);
      const ids = async (asked: object) =>
        (await store.listJobs({ ...listed, ...asked })).map(({ job }) => job);
      expect(await ids({})).toEqual(['j1', 'j2', 'j3', 'j4']);
      expect(await ids({ order: 'newest first', most: 2 })).toEqual(['j4', 'j3']);
      expect(await ids({ order: 'newest first', beyond: 3 })).toEqual(['j2', 'j1']);
      expect(await ids({ beyond: 2 })).toEqual(['j3', 'j4']);
      expect(await ids({ open: false })).toEqual(['j2']);
      expect(await ids({ invented: true })).toEqual(['j4']);
      expect(await ids({ tag: 3 })).toEqual(['j3']);
      expect(await store.jobCounts()).toEqual({
        all: 4,
        behind: 0,
        open: 3,
        handedOver: 1,
        invented: 1,
        greatestTag: 3,
      });
    });

    it('finds a job by each of its tokens, open ones first, then those written to last', async () => {
      const store = await fresh();
      await store.append(['j1', 'j2', 'j3', 'j4'].map((job) => opening(job)));
      await store.keepNotes([
        note('j1', 1, { tokens: 'pump bag_3 0.25 2026-11-29', places: Buffer.from('of j1') }),
        note('j2', 2, { open: false, tokens: 'pump bag_31' }),
        note('j3', 3, { tokens: 'mower müller and or not near' }),
        note('j4', 4, { tokens: 'pump bag_3' }),
      ]);
      const whole = (...tokens: string[]) => tokens.map((token) => ({ token, goesOn: false }));
      const begun = (...tokens: string[]) => tokens.map((token) => ({ token, goesOn: true }));
      const found = async (asked: ReturnType<typeof whole>, most = 9) =>
        (await store.findJobs(asked, most)).map(({ job }) => job);
      expect(await found(whole('pump'))).toEqual(['j4', 'j1', 'j2']);
      expect(await found(whole('pump'), 2)).toEqual(['j4', 'j1']);
      expect(await found(whole('bag_3'))).toEqual(['j4', 'j1']);
      expect(await found(begun('bag_3'))).toEqual(['j4', 'j1', 'j2']);
      expect(await found(whole('bag'))).toEqual([]);
      expect(await found([...begun('pu'), ...whole('0.25')])).toEqual(['j1']);
      expect(await found(begun('2026-11'))).toEqual(['j1']);
      expect(await found(whole('not', 'near'))).toEqual(['j3']);
      expect(await found(begun('mül'))).toEqual(['j3']);
      expect(await found(begun(`'"\\*:&|()`))).toEqual([]);
      expect(await found([])).toEqual([]);
      const where = await store.foundWhere(['j1']);
      expect(where.map(({ job, places }) => [job, Buffer.from(places).toString()])).toEqual([
        ['j1', 'of j1'],
      ]);
    });

    it('finds a job by what its note said last, and no more once all is made anew', async () => {
      const store = await fresh();
      await store.append([opening('j1'), opening('try', { invented: true })]);
      const found = async (token: string) =>
        (await store.findJobs([{ token, goesOn: false }], 9)).map(({ job }) => job);
      await store.keepNotes([note('j1', 1, { tokens: 'pump' }), note('try', 2, { tokens: 'pump' })]);
      await store.append([entry('a', 'j1')]);
      await store.keepNotes([note('j1', 3, { tokens: 'mower' }), note('try', 1, { tokens: 'mower' })]);
      expect([await found('pump'), await found('mower')]).toEqual([['try'], ['j1']]);
      await store.removeInvented('try');
      expect(await found('pump')).toEqual([]);
      await store.reindex();
      expect(await found('mower')).toEqual([]);
    });

    it('is made anew for another maker, and out of the log alone', async () => {
      const store = await fresh();
      await store.append([opening('j1'), entry('a', 'j1')]);
      await store.keepNotes([note('j1', 2)]);
      await store.forgetNotes('this');
      expect(await store.behind(9)).toEqual([]);
      await store.forgetNotes('another');
      expect((await store.behind(9)).map(({ job }) => job)).toEqual(['j1']);
      const spans = await store.jobs();
      await store.keepNotes([note('j1', 2)]);
      await store.reindex();
      expect(await store.jobs()).toEqual(spans);
      expect((await store.jobCounts()).behind).toBe(1);
    });

    it('says whether a lesson changed, and another state after each note', async () => {
      const store = await fresh();
      await store.append([opening('j1'), opening('j2')]);
      const before = await store.notesState();
      expect(await store.keepNotes([note('j1', 1), note('j2', 2)])).toBe(false);
      expect(await store.notesState()).not.toBe(before);
      await store.append([entry('a', 'j1')]);
      expect(await store.keepNotes([note('j1', 3, { lesson: 'rings' })])).toBe(true);
      expect(await store.lessons({ after: '', most: 1 })).toEqual([{ job: 'j1', lesson: 'rings' }]);
      expect(await store.lessons({ after: 'j1', most: 9 })).toEqual([{ job: 'j2', lesson: '' }]);
    });

    it('finds the jobs that an opening calls by a tag, and no other', async () => {
      const store = await fresh();
      const tagged = (job: string, tag: number, title = '') =>
        entry(`${job}-open`, job, 'open', { tag, title });
      await store.append([tagged('j1', 12), tagged('j2', 121), tagged('j3', 3, '"tag":12')]);
      expect(await store.opened({ tag: 12 })).toContain('j1');
      expect(await store.opened({ tag: 12 })).not.toContain('j3');
      expect(await store.opened({ tag: 4 })).toEqual([]);
    });
  });

  describe(`entries sent at the same time to ${ground.database}`, () => {
    it('are each taken or refused whole, in one commit or in several', async () => {
      const store = await ground.fresh();
      await store.append([opening('j1')]);
      const sent = Array.from({ length: 60 }, (_, i) =>
        store.append([entry(`a${i}`, 'j1'), entry(`b${i}`, i % 10 === 3 ? 'nowhere' : 'j1')]),
      );
      const ends = await Promise.allSettled(sent);
      expect(ends.map(({ status }) => status)).toEqual(
        sent.map((_, i) => (i % 10 === 3 ? 'rejected' : 'fulfilled')),
      );
      const kept = (await store.since(1)).map(({ id }) => id);
      expect(kept).toEqual(sent.flatMap((_, i) => (i % 10 === 3 ? [] : [`a${i}`, `b${i}`])));
      const spans = await store.jobs();
      await store.reindex();
      expect(await store.jobs()).toEqual(spans);
    });

    it('agree on an id that two of them bring: one stores it, one has it already, another content is refused', async () => {
      const store = await ground.fresh();
      await store.append([opening('j1')]);
      const one = entry('same', 'j1');
      const ends = await Promise.allSettled([
        store.append([one]),
        store.append([one, entry('more', 'j1')]),
        store.append([{ ...one, by: 'yard' }, entry('never', 'j1')]),
      ]);
      expect(ends).toMatchObject([
        { value: { stored: ['same'], already: [] } },
        { value: { stored: ['more'], already: ['same'] } },
        { reason: { code: 'conflict' } },
      ]);
      expect((await store.since(1)).map(({ id }) => id)).toEqual(['same', 'more']);
    });
  });
}
