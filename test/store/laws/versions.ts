import { describe, expect, it } from 'vitest';
import { migrate, schemaVersion } from '../../../src/store/migrate.js';
import { type Migration, migrations } from '../../../src/store/migrations.js';
import { entry, now, opening } from '../samples.js';
import { type Ground, refusal } from './ground.js';

export function versionLaws({ database, freshPlace, openAt, underOf }: Ground): void {
  describe(`the versions of the tables on ${database}`, () => {
    it('refuses a log that a newer Wristpin wrote, and leaves it as it is', async () => {
      const place = await freshPlace();
      const store = await openAt(place);
      await store.append([opening('j1')]);
      const under = await underOf(place);
      const newer = { version: migrations.length + 1, name: 'of tomorrow', applied: now() };
      await under.db.insertInto('schema_version').values(newer).execute();
      await refusal(place.open(), 'newer', /written by a newer Wristpin/);
      expect(await schemaVersion(under.db, under.dialect)).toBe(migrations.length + 1);
      expect((await store.since(0)).length).toBe(1);
    });

    it('refuses a log with a gap in its versions', async () => {
      const place = await freshPlace();
      const under = await underOf(place);
      const far = { version: migrations.length + 2, name: 'of the day after', applied: now() };
      await under.db.insertInto('schema_version').values(far).execute();
      await refusal(place.open(), 'corrupt', /without a gap/);
    });

    const bare = async () => {
      const under = await underOf(await freshPlace());
      if (under.dialect === 'sqlite') await under.db.schema.dropTable('job_words').execute();
      for (const table of [
        'job_finds',
        'store_state',
        'removed_lines',
        'job_notes',
        'devices',
        'picture_chunks',
        'pictures',
        'entries',
        'schema_version',
      ]) {
        await under.db.schema.dropTable(table).execute();
      }
      return under;
    };

    it.each(migrations.map((step) => step.version))(
      'brings a log of version %i up to today with all that is in it',
      async (version) => {
        const under = await bare();
        await migrate(under.db, under.dialect, now, migrations.slice(0, version));
        const { spoken: _, ...line } = entry('j1-open', 'j1', 'open');
        const row = { ...line, body: '{"tag":1}', received: now() };
        await under.db.insertInto('entries').values(row).execute();
        await migrate(under.db, under.dialect, now);
        expect(await schemaVersion(under.db, under.dialect)).toBe(migrations.length);
        expect(await under.db.selectFrom('entries').select(['id', 'body']).execute()).toEqual([
          { id: 'j1-open', body: '{"tag":1}' },
        ]);
      },
    );

    const step = (version: number, column: string): Migration => ({
      version,
      name: column,
      up: (db) => db.schema.alterTable('entries').addColumn(column, 'text').execute(),
    });
    const following = (count: number) =>
      Array.from({ length: count }, (_, i) => step(migrations.length + 1 + i, `extra${i}`));

    it('takes further steps in order, each once, from wherever a log stands', async () => {
      for (const from of [0, 1, 2]) {
        const under = await bare();
        const all = [...migrations, ...following(2)];
        await migrate(under.db, under.dialect, now, all.slice(0, migrations.length + from));
        await migrate(under.db, under.dialect, now, all);
        await migrate(under.db, under.dialect, now, all);
        expect(await schemaVersion(under.db, under.dialect)).toBe(all.length);
        const names = await under.db.selectFrom('schema_version').select('name').orderBy('version').execute();
        expect(names.map((row) => row.name)).toEqual(all.map((s) => s.name));
      }
    });

    it('stays at its version when a step fails in the middle', async () => {
      const under = await bare();
      await migrate(under.db, under.dialect, now);
      const failing: Migration = {
        version: migrations.length + 2,
        name: 'fails',
        up: () => Promise.reject(new Error('power cut')),
      };
      const all = [...migrations, ...following(1), failing];
      await expect(migrate(under.db, under.dialect, now, all)).rejects.toThrow('power cut');
      expect(await schemaVersion(under.db, under.dialect)).toBe(migrations.length);
      await migrate(under.db, under.dialect, now, [...migrations, ...following(1)]);
      expect(await schemaVersion(under.db, under.dialect)).toBe(migrations.length + 1);
    });

    it('has no gap in its steps', async () => {
      const under = await underOf(await freshPlace());
      const gap = [...migrations, step(migrations.length + 2, 'late')];
      await expect(migrate(under.db, under.dialect, now, gap)).rejects.toThrow(RangeError);
    });
  });
}
