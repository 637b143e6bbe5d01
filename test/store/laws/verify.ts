import { describe, expect, it } from 'vitest';
import { chunkBytes } from '../../../src/store/pictures.js';
import { fill, largePicture } from '../filled.js';
import { factsOf } from '../samples.js';
import { type Ground, refusal } from './ground.js';

export function verifyLaws({ database, freshPlace, openAt, underOf }: Ground): void {
  describe(`verification of ${database}`, () => {
    const damaged = async () => {
      const place = await freshPlace();
      const store = await openAt(place);
      await fill(store);
      expect((await store.verify()).ok).toBe(true);
      return { store, under: await underOf(place) };
    };
    const large = factsOf(largePicture).sha256;

    it('finds one flipped bit in a picture, and the picture is not given out', async () => {
      const { store, under } = await damaged();
      const piece = under.db
        .selectFrom('picture_chunks')
        .select('data')
        .where('sha256', '=', large)
        .where('n', '=', 1);
      const data = Buffer.from((await piece.executeTakeFirstOrThrow()).data);
      data[1234]! ^= 0x10;
      await under.db
        .updateTable('picture_chunks')
        .set({ data })
        .where('sha256', '=', large)
        .where('n', '=', 1)
        .execute();
      expect(await store.verify()).toMatchObject({
        ok: false,
        problems: [`picture ${large}: its bytes do not hash to its name`],
      });
      await refusal(store.picture(large), 'corrupt', /does not hash to its name/);
    });

    it.each([
      [0, 'piece 0 is missing'],
      [1, 'piece 1 is missing'],
      [2, `${2 * chunkBytes} of ${3 * chunkBytes - 5} bytes are there`],
    ])('finds that piece %i of a picture is gone', async (n, says) => {
      const { store, under } = await damaged();
      await under.db.deleteFrom('picture_chunks').where('sha256', '=', large).where('n', '=', n).execute();
      expect((await store.verify()).problems).toEqual([`picture ${large}: ${says}`]);
      await refusal(store.picture(large), 'corrupt', /damaged/);
    });

    it('finds a picture that an entry shows and nobody has', async () => {
      const { store, under } = await damaged();
      await under.db.deleteFrom('picture_chunks').where('sha256', '=', large).execute();
      await under.db.deleteFrom('pictures').where('sha256', '=', large).execute();
      expect((await store.verify()).problems).toEqual([
        `entry p-large shows picture ${large}, which is not here`,
      ]);
    });

    it('finds a body that is no JSON any more; the other jobs stay readable', async () => {
      const { store, under } = await damaged();
      await under.db.updateTable('entries').set({ body: '{"words":"cut' }).where('id', '=', 'n5').execute();
      const report = await store.verify();
      expect(report).toMatchObject({
        ok: false,
        entries: 607,
        problems: ['entry n5 of job j1: its body is not JSON'],
      });
      await refusal(store.entries('j1'), 'corrupt', /body of entry n5 of job j1/);
      expect((await store.entries('j2')).length).toBe(4);
    });

    it('finds lines counted otherwise beside the log; nothing is lost, and they are counted anew', async () => {
      const { store, under } = await damaged();
      await under.db.updateTable('job_notes').set({ count: 3 }).where('job', '=', 'j2').execute();
      await under.db.deleteFrom('job_notes').where('job', '=', 'j1').execute();
      expect(await store.verify()).toMatchObject({ ok: true, problems: [], miscounted: ['j1', 'j2'] });
      await store.reindex();
      expect(await store.verify()).not.toHaveProperty('miscounted');
    });

    it('finds a job that nothing opens', async () => {
      const { store, under } = await damaged();
      await under.db.deleteFrom('entries').where('id', '=', 'j2-open').execute();
      // since lines carry digests, the one after the gap is named too
      expect((await store.verify()).problems).toEqual([
        expect.stringMatching(/^entry p-large of job j2: .* a line before it is gone/),
        'job j2 has entries, and none that opens it',
      ]);
    });
  });
}
