import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contents, fill } from '../filled.js';
import { entry, factsOf, opening, photograph, pictureBytes } from '../samples.js';
import { type Ground, refusal } from './ground.js';

export function backupLaws({ database, fresh, newFile }: Ground): void {
  describe(`backup of ${database}`, () => {
    it('restored into an empty log is the same log, and goes on where that one ended', async () => {
      const store = await fresh();
      await fill(store);
      const file = newFile();
      const report = await store.backup(file);
      expect(report).toEqual({ ok: true, entries: 607, jobs: 3, pictures: 2, problems: [] });
      const restored = await fresh();
      expect(await restored.restore(file)).toEqual(report);
      expect(await contents(restored)).toEqual(await contents(store));
      await restored.append([entry('next', 'j1')]);
      expect(await restored.head()).toBe((await store.head()) + 1);
    });

    it('is one file that restoring does not change', async () => {
      const store = await fresh();
      await fill(store);
      const file = newFile();
      await store.backup(file);
      const before = readFileSync(file);
      await (await fresh()).restore(file);
      expect(readFileSync(file).equals(before)).toBe(true);
    });

    it('of an empty log restores to an empty log that numbers from 1', async () => {
      const file = newFile();
      expect(await (await fresh()).backup(file)).toEqual({
        ok: true,
        entries: 0,
        jobs: 0,
        pictures: 0,
        problems: [],
      });
      const restored = await fresh();
      await restored.restore(file);
      await restored.append([opening('j1')]);
      expect(await restored.head()).toBe(1);
    });

    it('never replaces a file, and is restored into an empty log only', async () => {
      const store = await fresh();
      await store.append([opening('j1')]);
      const file = newFile();
      writeFileSync(file, 'a letter');
      await refusal(store.backup(file), 'exists', /already a file/);
      expect(readFileSync(file, 'utf8')).toBe('a letter');
      await refusal(
        store.backup(join(dirname(newFile()), 'none', 'b.wristpin')),
        'cannot-open',
        /b\.wristpin/,
      );
      const made = newFile();
      await store.backup(made);
      await refusal(store.restore(made), 'not-empty', /already holds something/);
      const bytes = pictureBytes(10);
      const pictured = await fresh();
      await pictured.putPicture(factsOf(bytes), bytes);
      await refusal(pictured.restore(made), 'not-empty', /already holds something/);
      expect(await pictured.head()).toBe(0);
    });

    it('refuses to restore what is no backup, and stays empty', async () => {
      const store = await fresh();
      const letter = newFile();
      writeFileSync(letter, 'a letter');
      await refusal(store.restore(letter), 'not-a-log', /is not a Wristpin log/);
      await refusal(store.restore(newFile()), 'cannot-open', /no file/);
      const damaged = newFile();
      const whole = await fresh();
      await fill(whole);
      await whole.backup(damaged);
      const bytes = readFileSync(damaged);
      bytes.fill(0xa5, bytes.length / 2, bytes.length / 2 + 8192);
      writeFileSync(damaged, bytes);
      await refusal(store.restore(damaged), 'corrupt', /is damaged/);
      expect([await store.head(), await store.jobs()]).toEqual([0, []]);
    });

    it('taken while others write holds every batch whole', async () => {
      const store = await fresh();
      await fill(store);
      let writing = true;
      const writer = (async () => {
        for (let i = 0; writing; i++) await store.append([1, 2, 3].map((k) => entry(`w${i}-${k}`, 'j1')));
      })();
      const file = newFile();
      const report = await store.backup(file);
      writing = false;
      await writer;
      expect(report.problems).toEqual([]);
      expect((report.entries - 607) % 3).toBe(0);
      const restored = await fresh();
      await restored.restore(file);
      const kept = await restored.since(0);
      expect(kept).toEqual((await store.since(0)).slice(0, kept.length));
    });

    it('of a log that lacks a picture is made all the same, and says so', async () => {
      const store = await fresh();
      await store.append([opening('j1'), photograph('p', 'j1', 'f'.repeat(64))]);
      const file = newFile();
      const report = await store.backup(file);
      expect(report.problems).toEqual([`entry p shows picture ${'f'.repeat(64)}, which is not here`]);
      expect(await (await fresh()).restore(file)).toEqual(report);
    });
  });
}
