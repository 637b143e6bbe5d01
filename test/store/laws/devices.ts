import { describe, expect, it } from 'vitest';
import type { Ground } from './ground.js';

const tokens = (sign: string) => ({ token: sign.repeat(64), carry: sign.toUpperCase().repeat(64) });
const first = 'a'.repeat(64);

export function deviceLaws({ database, fresh }: Ground): void {
  describe(`devices let in on ${database}`, () => {
    it('are known by the hash of their token until they are shut out again', async () => {
      const store = await fresh();
      await store.pairDevice({ id: 'd1', name: 'Phone in the apron' }, tokens('a'));
      await store.pairDevice({ id: 'd2', name: 'Tablet' }, tokens('b'));
      expect((await store.devices()).map(({ name }) => name)).toEqual(['Phone in the apron', 'Tablet']);
      expect(await store.deviceOf(first)).toMatchObject({ id: 'd1', name: 'Phone in the apron' });
      expect(await store.deviceOf('c'.repeat(64))).toBeUndefined();
      expect(await store.unpairDevice('d1')).toBe(true);
      expect(await store.unpairDevice('d1')).toBe(false);
      expect(await store.deviceOf(first)).toBeUndefined();
      expect((await store.devices()).map(({ id }) => id)).toEqual(['d2']);
    });

    it('have names of their own, and one that is paired anew is there once', async () => {
      const store = await fresh();
      for (const id of ['d1', 'd2', 'd3']) await store.pairDevice({ id, name: 'Phone' }, tokens(id.at(-1)!));
      expect((await store.devices()).map(({ name }) => name)).toEqual(['Phone', 'Phone 2', 'Phone 3']);
      await store.pairDevice({ id: 'd4', name: 'phone' }, tokens('4'), 'd1');
      expect((await store.devices()).map(({ id, name }) => `${id} ${name}`)).toEqual([
        ...['d2 Phone 2', 'd3 Phone 3', 'd4 phone'],
      ]);
      expect(await store.deviceOf(tokens('1').token)).toBeUndefined();
    });

    it('say when they were last seen, and go on with other tokens as the device they were', async () => {
      const store = await fresh();
      await store.pairDevice({ id: 'd1', name: 'Phone' }, tokens('a'));
      expect((await store.devices())[0]).not.toHaveProperty('seen');
      await store.sawDevice('d1', '2026-03-02T09:15:00.000Z');
      expect(await store.deviceOf(first)).toMatchObject({ seen: '2026-03-02T09:15:00.000Z' });
      expect(await store.carrierOf(tokens('a').carry)).toMatchObject({ id: 'd1' });
      expect(await store.carrierOf('')).toBeUndefined();
      expect(await store.renewDevice('d1', tokens('b'))).toBe(true);
      expect(await store.deviceOf(first)).toBeUndefined();
      expect(await store.deviceOf(tokens('b').token)).toMatchObject({ id: 'd1', name: 'Phone' });
      expect(await store.renewDevice('d9', tokens('c'))).toBe(false);
    });

    it('are no part of the log: no entry and no problem comes of them', async () => {
      const store = await fresh();
      await store.pairDevice({ id: 'd1', name: 'Phone' }, tokens('a'));
      expect(await store.head()).toBe(0);
      expect(await store.verify()).toEqual({ ok: true, entries: 0, jobs: 0, pictures: 0, problems: [] });
    });
  });
}
