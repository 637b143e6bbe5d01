import { describe, expect, it } from 'vitest';
import { chunkBytes } from '../../../src/store/pictures.js';
import { entry, factsOf, opening, pictureBytes } from '../samples.js';
import { type Ground, refusal } from './ground.js';

export function pictureLaws({ database, fresh }: Ground): void {
  describe(`pictures on ${database}`, () => {
    it('come back byte for byte, whatever their size: one byte, around a piece, 3 MB', async () => {
      const store = await fresh();
      for (const length of [1, chunkBytes - 1, chunkBytes, chunkBytes + 1, 3_000_000]) {
        const bytes = pictureBytes(length, length);
        const facts = factsOf(bytes);
        expect(await store.hasPicture(facts.sha256)).toBe(false);
        expect(await store.putPicture(facts, bytes)).toEqual({ stored: true });
        expect(await store.putPicture(facts, bytes)).toEqual({ stored: false });
        expect(await store.hasPicture(facts.sha256)).toBe(true);
        const kept = await store.picture(facts.sha256);
        expect(kept).toMatchObject({ mime: 'image/jpeg', width: 4000, height: 3000 });
        expect(Buffer.compare(kept!.bytes, bytes)).toBe(0);
      }
      expect(await store.picture('0'.repeat(64))).toBeUndefined();
      expect(await store.verify()).toMatchObject({ ok: true, pictures: 5 });
    });

    it('are refused when the bytes are others than named, or the facts are none', async () => {
      const store = await fresh();
      const bytes = pictureBytes(1000);
      const facts = factsOf(bytes);
      const other = pictureBytes(1000, 2);
      await refusal(
        store.putPicture(facts, other),
        'bad-picture',
        new RegExp(`hash to ${factsOf(other).sha256}`),
      );
      await refusal(
        store.putPicture(factsOf(new Uint8Array()), new Uint8Array()),
        'bad-picture',
        /its bytes is 0/,
      );
      await refusal(store.putPicture({ ...facts, width: 0 }, bytes), 'bad-picture', /its width is 0/);
      await refusal(store.putPicture({ ...facts, mime: 'text/html' }, bytes), 'bad-picture', /"text\/html"/);
      expect(await store.hasPicture(facts.sha256)).toBe(false);
      await store.putPicture(facts, bytes);
      await refusal(store.putPicture({ ...facts, height: 4000 }, bytes), 'conflict', /height 3000.*4000/);
    });

    it('lie beside sounds, which have neither width nor height, and are counted apart from them', async () => {
      const store = await fresh();
      const bytes = pictureBytes(600_000, 4);
      const sound = { ...factsOf(bytes), mime: 'audio/wav', width: 0, height: 0 };
      await refusal(store.putPicture({ ...sound, width: 3 }, bytes), 'bad-picture', /its width is 3/);
      await store.putPicture(sound, bytes);
      const said = { sha256: sound.sha256, mime: 'audio/wav', bytes: bytes.length, seconds: 18 };
      await store.append([opening('real'), entry('said', 'real', 'spoken-note', { sound: said })]);
      expect(await store.picture(sound.sha256)).toMatchObject({ mime: 'audio/wav', width: 0 });
      expect(await store.verify()).toMatchObject({ ok: true, pictures: 0, sounds: 1 });
      await store.append([
        entry('lost', 'real', 'spoken-note', { sound: { ...said, sha256: 'ab'.repeat(32) } }),
      ]);
      expect((await store.verify()).problems).toEqual([
        `entry lost shows picture ${'ab'.repeat(32)}, which is not here`,
      ]);
    });

    it('may be a view into a larger memory', async () => {
      const store = await fresh();
      const view = pictureBytes(2000).subarray(500, 1500);
      const facts = factsOf(view);
      await store.putPicture(facts, view);
      expect((await store.picture(facts.sha256))?.bytes).toEqual(new Uint8Array(view));
    });
  });
}
