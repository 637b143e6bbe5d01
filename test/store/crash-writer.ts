import { writeSync } from 'node:fs';
import { openSqlite } from '../../src/store/index.js';
import { entry, factsOf, now, opening, pictureBytes } from './samples.js';

/**
 * A program that does nothing but write, to be killed while it does: `FILE NAME [COUNT]`. It says `begin X` before
 * it asks the store to keep X and `done X` when the store says that it has.
 */
const [file, name, count] = process.argv.slice(2) as [string, string, string | undefined];

/** synchronous: a line that is only in this process's memory would die with it */
const say = (line: string) => writeSync(1, `${line}\n`);

/** made once: the kills shall fall into writing, not into arithmetic */
const bytes = pictureBytes(600_000);

say('opening');
const store = await openSqlite(file, { now });
say('ready');
say('begin opening');
await store.append([opening('bench')]);
say('done opening');
for (let n = 0; n < Number(count ?? 1e9); n++) await (n % 9 === 8 ? keepPicture(n) : keepBatch(n));
await store.close();
say('closed');

async function keepBatch(n: number): Promise<void> {
  const batch = [1, 2, 3].map((k) =>
    entry(`${name}.${n}.${k}`, 'bench', 'note', { words: 'x'.repeat(700 * k) }),
  );
  say(`begin batch ${name}.${n}`);
  await store.append(batch);
  say(`done batch ${name}.${n}`);
}

async function keepPicture(n: number): Promise<void> {
  bytes.set(new TextEncoder().encode(`${name}.${n}.`));
  const facts = factsOf(bytes);
  say(`begin picture ${facts.sha256}`);
  await store.putPicture(facts, bytes);
  say(`done picture ${facts.sha256}`);
}
