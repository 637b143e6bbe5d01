import { describe, expect, it } from 'vitest';
import type { Ground } from './ground.js';

const [first, second] = ['a'.repeat(64), 'b'.repeat(64)];

export function deviceLaws({ database, fresh }: Ground): void {
  describe(`devices let in on ${database}`, () => {
    it('are known by the hash of their token until they are shut out again', async () => {
      const store = await fresh();
      await store.pairDevice({ id: 'd1', name: 'Phone in the apron' }, first!);
      await store.pairDevice({ id: 'd2', name: 'Tablet' }, second!);
      expect((await store.devices()).map(({ name }) => name)).toEqual(['Phone in the apron', 'Tablet']);
      expect(await store.deviceOf(first!)).toMatchObject({ id: 'd1', name: 'Phone in the apron' });
      expect(await store.deviceOf('c'.repeat(64))).toBeUndefined();
      expect(await store.unpairDevice('d1')).toBe(true);
      expect(await store.unpairDevice('d1')).toBe(false);
      expect(await store.deviceOf(first!)).toBeUndefined();
      expect((await store.devices()).map(({ id }) => id)).toEqual(['d2']);
    });

    it('are no part of the log: no entry and no problem comes of them', async () => {
      const store = await fresh();
      await store.pairDevice({ id: 'd1', name: 'Phone' }, first!);
      expect(await store.head()).toBe(0);
      expect(await store.verify()).toEqual({ ok: true, entries: 0, jobs: 0, pictures: 0, problems: [] });
    });
  });
}
