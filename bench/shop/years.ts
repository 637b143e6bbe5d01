import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type RawEntry, readEntry } from '../../src/job/index.js';
import { packaged } from '../../src/shopkeep/index.js';

/** The invented pump's log, written again and again as if it were another machine each time. */
const file = join(packaged().demo, 'jobs', 'market-garden-pump.json');
const pattern = (JSON.parse(readFileSync(file, 'utf8')) as { entries: unknown[] }).entries.map((line) =>
  readEntry(line),
);

const uuid = (kind: number, n: number): string =>
  `0190${kind.toString(16).padStart(4, '0')}-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;

export const jobOf = (n: number): string => uuid(1, n);

/** In nineteen of twenty the whole log to the hand-over, in the others the first half: those are open. */
export function linesOf(n: number): RawEntry[] {
  const open = n % 20 === 1;
  const own = open ? pattern.slice(0, Math.ceil(pattern.length / 2)) : pattern;
  const id = new Map(own.map((entry, i) => [entry.id, uuid(2, n * 1000 + i)]));
  const lines = own.map((entry) => ({
    ...entry,
    id: id.get(entry.id)!,
    job: jobOf(n),
    body: bodyOf(entry, n, id),
  }));
  const more = n === 0 ? Array.from({ length: 500 - lines.length }, (_, i) => lineFor(jobOf(0), -1 - i)) : [];
  return [...lines, ...more];
}

/** Other lines are named by their ids inside a body; the tag, the owner and the mark of an invented job are its own. */
function bodyOf(entry: RawEntry, n: number, id: ReadonlyMap<string, string>): unknown {
  const text = JSON.stringify(entry.body).replace(/"[0-9a-f-]{36}"/g, (name) => {
    const own = id.get(name.slice(1, -1));
    return own === undefined ? name : `"${own}"`;
  });
  const body = JSON.parse(text) as Record<string, unknown>;
  if (entry.kind === 'open') return { tag: n + 1, title: body.title };
  if (entry.kind === 'photograph') delete body.picture;
  return 'owner' in body ? { ...body, owner: `Owner ${n}` } : body;
}

/** The i-th note of a job, of which there are as many as are asked for. */
export function lineFor(job: string, i: number): RawEntry {
  const id = uuid(3, Number.parseInt(job.slice(-9), 16) * 1_000_000 + i + 500_000);
  const body = { words: `Looked at again, ${i}.` };
  return { id, job, at: '2026-03-02T10:00:00+01:00', by: 'bench', kind: 'note', v: 1, body };
}
