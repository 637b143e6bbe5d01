import { describe, expect, it } from 'vitest';
import { entry, factsOf, opening, photograph, pictureBytes } from '../samples.js';
import { type Ground, refusal } from './ground.js';

export function removingLaws({ database, fresh }: Ground): void {
  describe(`removing a job on ${database}`, () => {
    it('takes an invented job and the pictures that it alone shows, and nothing else', async () => {
      const store = await fresh();
      const [own, shared] = [pictureBytes(600_000, 1), pictureBytes(600_000, 2)];
      const [ownFacts, sharedFacts] = [factsOf(own), factsOf(shared)];
      await store.putPicture(ownFacts, own);
      await store.putPicture(sharedFacts, shared);
      await store.append([opening('real'), photograph('p1', 'real', sharedFacts.sha256)]);
      await store.append([
        opening('demo', { invented: true }),
        photograph('p2', 'demo', ownFacts.sha256),
        photograph('p3', 'demo', sharedFacts.sha256),
      ]);
      expect(await store.removeInvented('demo')).toEqual({ entries: 3, pictures: 1 });
      expect((await store.since(0)).map((e) => e.id)).toEqual(['real-open', 'p1']);
      expect(await store.hasPicture(ownFacts.sha256)).toBe(false);
      expect(Buffer.compare((await store.picture(sharedFacts.sha256))!.bytes, shared)).toBe(0);
      expect(await store.verify()).toEqual({ ok: true, entries: 2, jobs: 1, pictures: 1, problems: [] });
    });

    it('takes the sound that it alone plays too, and leaves one that another job plays', async () => {
      const store = await fresh();
      const [own, shared] = [pictureBytes(900, 5), pictureBytes(900, 6)].map((bytes) => ({
        bytes,
        facts: { ...factsOf(bytes), mime: 'audio/wav', width: 0, height: 0 },
      }));
      const said = (id: string, job: string, { facts }: typeof own & {}) =>
        entry(id, job, 'spoken-note', { sound: { sha256: facts.sha256 } });
      for (const { facts, bytes } of [own!, shared!]) await store.putPicture(facts, bytes);
      await store.append([opening('real'), said('s1', 'real', shared!)]);
      await store.append([
        opening('demo', { invented: true }),
        said('s2', 'demo', own!),
        said('s3', 'demo', shared!),
      ]);
      expect(await store.removeInvented('demo')).toEqual({ entries: 3, pictures: 1 });
      expect(await store.hasPicture(own!.facts.sha256)).toBe(false);
      expect(await store.hasPicture(shared!.facts.sha256)).toBe(true);
    });

    it('is refused for a real job, for one ever opened as real, for the shop, and for none', async () => {
      const store = await fresh();
      await store.append([opening('real'), opening('both', { invented: true })]);
      await store.append([entry('again', 'both', 'open', { tag: 8, title: '' }), entry('s', 'shop')]);
      for (const job of ['real', 'both', 'shop'])
        await refusal(store.removeInvented(job), 'not-invented', /never removed/);
      await refusal(store.removeInvented('none'), 'no-such-job', /no job none/);
      expect((await store.since(0)).length).toBe(4);
    });

    it('never gives a seq out again', async () => {
      const store = await fresh();
      await store.append([opening('real'), opening('demo', { invented: true }), entry('d', 'demo')]);
      await store.removeInvented('demo');
      expect(await store.head()).toBe(1);
      await store.append([entry('n', 'real')]);
      expect((await store.entries('real')).map((e) => e.seq)).toEqual([1, 4]);
    });
  });
}
