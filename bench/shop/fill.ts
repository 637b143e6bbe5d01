import { JobNotes } from '../../src/shopkeep/index.js';
import type { Store } from '../../src/store/index.js';
import { linesOf } from './years.js';

const jobsATime = 10;

/** Through the store's own door; gives the number of lines. */
export async function fill(store: Store, jobs: number): Promise<number> {
  let lines = 0;
  for (let n = 0; n < jobs; n += jobsATime) {
    const batch = Array.from({ length: Math.min(jobsATime, jobs - n) }, (_, i) => linesOf(n + i)).flat();
    lines += (await store.append(batch)).stored.length;
    if (n % 1000 === 0) process.stderr.write(`\r  ${n} jobs `);
  }
  await new JobNotes(store).bringUp((behind) => process.stderr.write(`\r  ${behind} to read `));
  process.stderr.write('\r');
  return lines;
}
