import { type Kysely, sql } from 'kysely';
import { digestAll } from './digest-all.js';
import { rebuild } from './job-notes.js';
import type { Db, Dialect } from './tables.js';

export interface Migration {
  /** 1, 2, 3 … without a gap */
  readonly version: number;
  readonly name: string;
  readonly up: (db: Kysely<unknown>, dialect: Dialect) => Promise<void>;
}

/** A published step is never edited: a log in some shop already stands on it. Add the next number. */
export const migrations: readonly Migration[] = [
  { version: 1, name: 'entries and pictures', up: firstTables },
  { version: 2, name: 'paired devices', up: createDevices },
  { version: 3, name: 'notes beside the log', up: createNotes },
  { version: 4, name: 'digests of lines', up: createDigests },
  { version: 5, name: 'where a line stands', up: addRank },
  { version: 6, name: 'when devices were seen', up: addSeen },
  { version: 7, name: 'what jobs are found by', up: createFinds },
  { version: 8, name: 'what was said aloud', up: addSpoken },
  { version: 9, name: 'notes read by their indexes', up: indexNotes },
];

/** From this version on lines carry digests. */
export const digestsSince = 4;

async function firstTables(db: Kysely<unknown>, dialect: Dialect): Promise<void> {
  await createEntries(db, dialect);
  await createPictures(db, dialect);
}

/** SQLite keeps a text in a number column without a word unless the table is strict. */
const strict = (dialect: Dialect) => (dialect === 'sqlite' ? sql`strict` : sql``);

async function createEntries(db: Kysely<unknown>, dialect: Dialect): Promise<void> {
  await db.schema
    .createTable('entries')
    .addColumn('seq', dialect === 'sqlite' ? 'integer' : 'bigint', (c) =>
      // autoincrement: a number freed by a removal must not come back, or `since` would pass over the new entry
      dialect === 'sqlite' ? c.primaryKey().autoIncrement() : c.primaryKey().generatedByDefaultAsIdentity(),
    )
    .addColumn('id', 'text', (c) => c.notNull().unique())
    .addColumn('job', 'text', (c) => c.notNull())
    .addColumn('at', 'text', (c) => c.notNull())
    .addColumn('by', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('v', 'integer', (c) => c.notNull())
    .addColumn('body', 'text', (c) => c.notNull())
    .addColumn('received', 'text', (c) => c.notNull())
    .modifyEnd(strict(dialect))
    .execute();
  await db.schema.createIndex('entries_job_seq').on('entries').columns(['job', 'seq']).execute();
  await db.schema.createIndex('entries_kind_job').on('entries').columns(['kind', 'job']).execute();
}

async function createPictures(db: Kysely<unknown>, dialect: Dialect): Promise<void> {
  await db.schema
    .createTable('pictures')
    .addColumn('sha256', 'text', (c) => c.primaryKey().notNull())
    .addColumn('mime', 'text', (c) => c.notNull())
    .addColumn('bytes', 'integer', (c) => c.notNull())
    .addColumn('width', 'integer', (c) => c.notNull())
    .addColumn('height', 'integer', (c) => c.notNull())
    .addColumn('received', 'text', (c) => c.notNull())
    .modifyEnd(strict(dialect))
    .execute();
  await db.schema
    .createTable('picture_chunks')
    .addColumn('sha256', 'text', (c) => c.notNull().references('pictures.sha256'))
    .addColumn('n', 'integer', (c) => c.notNull())
    .addColumn('data', dialect === 'sqlite' ? 'blob' : 'bytea', (c) => c.notNull())
    .addPrimaryKeyConstraint('picture_chunks_key', ['sha256', 'n'])
    .modifyEnd(strict(dialect))
    .execute();
}

async function createDevices(db: Kysely<unknown>, dialect: Dialect): Promise<void> {
  await db.schema
    .createTable('devices')
    .addColumn('id', 'text', (c) => c.primaryKey().notNull())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('token_sha256', 'text', (c) => c.notNull().unique())
    .addColumn('paired', 'text', (c) => c.notNull())
    .modifyEnd(strict(dialect))
    .execute();
}

async function createNotes(db: Kysely<unknown>, dialect: Dialect): Promise<void> {
  const number = dialect === 'sqlite' ? 'integer' : 'bigint';
  await db.schema
    .createTable('job_notes')
    .addColumn('job', 'text', (c) => c.primaryKey().notNull())
    .addColumn('first', number, (c) => c.notNull())
    .addColumn('last', number, (c) => c.notNull())
    .addColumn('count', 'integer', (c) => c.notNull())
    .addColumn('made', number, (c) => c.notNull().defaultTo(0))
    .addColumn('by', 'text', (c) => c.notNull().defaultTo(''))
    .addColumn('tag', 'integer', (c) => c.notNull().defaultTo(0))
    .addColumn('open', 'integer', (c) => c.notNull().defaultTo(1))
    .addColumn('invented', 'integer', (c) => c.notNull().defaultTo(0))
    .addColumn('words', 'text', (c) => c.notNull().defaultTo(''))
    .addColumn('summary', 'text', (c) => c.notNull().defaultTo(''))
    .addColumn('lesson', 'text', (c) => c.notNull().defaultTo(''))
    .modifyEnd(strict(dialect))
    .execute();
  await sql`create index job_notes_behind on job_notes (last) where made < last`.execute(db);
  await db.schema.createIndex('job_notes_first').on('job_notes').columns(['open', 'first']).execute();
  await db.schema.createIndex('job_notes_last').on('job_notes').columns(['open', 'last']).execute();
  await db.schema.createIndex('job_notes_tag').on('job_notes').column('tag').execute();
  await db.schema
    .createIndex('job_notes_counts')
    .on('job_notes')
    .columns(['open', 'invented', 'made', 'last', 'tag'])
    .execute();
  await rebuild(db as Db);
}

async function createDigests(db: Kysely<unknown>, dialect: Dialect): Promise<void> {
  for (const table of ['entries', 'pictures', 'job_notes'])
    await db.schema
      .alterTable(table)
      .addColumn('digest', 'text', (c) => c.notNull().defaultTo(''))
      .execute();
  await db.schema
    .createTable('removed_lines')
    .addColumn('seq', dialect === 'sqlite' ? 'integer' : 'bigint', (c) => c.primaryKey().notNull())
    .addColumn('digest', 'text', (c) => c.notNull())
    .modifyEnd(strict(dialect))
    .execute();
  await db.schema
    .createTable('store_state')
    .addColumn('store', 'text', (c) => c.primaryKey().notNull())
    .addColumn('head', 'text', (c) => c.notNull())
    .addColumn('backup_at', 'text', (c) => c.notNull())
    .addColumn('backup_file', 'text', (c) => c.notNull())
    .modifyEnd(strict(dialect))
    .execute();
  await digestAll(db as Db);
}

async function addRank(db: Kysely<unknown>, dialect: Dialect): Promise<void> {
  await db.schema
    .alterTable('entries')
    .addColumn('rank', dialect === 'sqlite' ? 'integer' : 'bigint')
    .execute();
}

async function addSpoken(db: Kysely<unknown>): Promise<void> {
  await db.schema.alterTable('entries').addColumn('spoken', 'integer').execute();
}

async function addSeen(db: Kysely<unknown>): Promise<void> {
  for (const column of ['seen', 'carry_sha256'])
    await db.schema
      .alterTable('devices')
      .addColumn(column, 'text', (c) => c.notNull().defaultTo(''))
      .execute();
}

/** The notes are made anew, and with them what jobs are found by. */
async function createFinds(db: Kysely<unknown>, dialect: Dialect): Promise<void> {
  await db.schema
    .createTable('job_finds')
    .addColumn('n', dialect === 'sqlite' ? 'integer' : 'bigint', (c) =>
      dialect === 'sqlite' ? c.primaryKey() : c.primaryKey().generatedByDefaultAsIdentity(),
    )
    .addColumn('job', 'text', (c) => c.notNull().unique())
    .addColumn('places', dialect === 'sqlite' ? 'blob' : 'bytea', (c) => c.notNull())
    .modifyEnd(strict(dialect))
    .execute();
  if (dialect === 'postgres') {
    await sql`alter table job_finds add column tokens tsvector`.execute(db);
    await sql`create index job_finds_tokens on job_finds using gin (tokens) with (fastupdate = off)`.execute(
      db,
    );
  } else
    await sql`create virtual table job_words using fts5 (tokens, content = '', contentless_delete = 1,
      detail = none, prefix = '1 2 3', tokenize = "unicode61 remove_diacritics 0 tokenchars '_.-'")`.execute(
      db,
    );
  await sql`update job_notes set made = 0, digest = '', words = ''`.execute(db);
}

/** What is asked after each change goes through an index alone: a row of the notes holds pages of text. */
async function indexNotes(db: Kysely<unknown>): Promise<void> {
  await db.schema.dropIndex('job_notes_counts').execute();
  await db.schema
    .createIndex('job_notes_counts')
    .on('job_notes')
    .columns(['open', 'invented', 'made', 'last', 'tag', 'job'])
    .execute();
  await db.schema.createIndex('job_notes_written').on('job_notes').columns(['last', 'job']).execute();
  await db.schema.createIndex('job_notes_by').on('job_notes').columns(['by', 'made', 'job']).execute();
}
