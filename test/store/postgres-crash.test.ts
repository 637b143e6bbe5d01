import { afterAll, describe, expect, it } from 'vitest';
import { openPostgres } from '../../src/store/index.js';
import { startPostgres, type TestPostgres } from '../support/postgres.js';
import { entry, now, opening, until } from './samples.js';

// a server of its own, nearly empty: after a crash PostgreSQL flushes every file it has before it lets anyone in
const found = await startPostgres();

if ('reason' in found) it.skip(`a PostgreSQL server that dies is left out: ${found.reason}`);
else onServer(found);

function onServer(server: TestPostgres): void {
  afterAll(() => server.stop());

  describe('a PostgreSQL server that dies', () => {
    it('has kept all that was said to be saved; the store says it is gone, goes on, and watchers hear what they missed', async () => {
      const url = await server.newDatabase();
      const store = await openPostgres(url, { now });
      await store.append([opening('j1')]);
      const heard: number[] = [];
      const stop = store.watch((head) => heard.push(head));
      const saved: string[] = [];
      const refused: unknown[] = [];
      let crash: Promise<unknown> | undefined;
      for (let i = 0; refused.length === 0; i++) {
        await store.append([entry(`e${i}`, 'j1')]).then(
          () => saved.push(`e${i}`),
          (error: unknown) => refused.push(error),
        );
        if (saved.length === 8) crash ??= server.crash();
      }
      await crash;
      expect(refused[0]).toMatchObject({ name: 'StoreError', code: 'unreachable' });
      await expect(store.head()).rejects.toMatchObject({ code: 'unreachable' });
      await server.start();
      const kept = (await store.entries('j1')).map((e) => e.id);
      expect(saved.filter((id) => !kept.includes(id))).toEqual([]);
      expect(saved.length).toBeGreaterThan(5);
      const other = await openPostgres(url, { now });
      await other.append([entry('afterwards', 'j1')]);
      const head = await other.head();
      await until(() => heard.includes(head));
      expect((await store.verify()).problems).toEqual([]);
      stop();
      await other.close();
      await store.close();
    });
  });
}
