import { resolve } from 'node:path';
import { shopLog } from '../../job/index.js';
import { counted, joined, picturesAndSounds } from '../../phrase/index.js';
import type { ImportPlan, PlannedJob } from '../../record/index.js';
import { fileSource, openImport, readBundleHere } from '../../shopkeep/index.js';
import { type Command, Failed, flag, type Surroundings, text } from '../command.js';
import { printed } from './jobs.js';
import { reasonOf } from './out-file.js';
import { storeOptions, withStore } from './store-options.js';

export const importCommand: Command = {
  usage: 'wristpin import FILE [--look] [--into JOB,JOB] [--with-shop] [options]',
  options: {
    look: { type: 'boolean', help: 'say what it would do, and do nothing' },
    into: { type: 'string', value: 'JOBS', help: 'ids of jobs that are here and may be added to' },
    'with-shop': { type: 'boolean', help: 'take the lines of the shop itself too: its name, tools, packs' },
    ...storeOptions,
  },
  examples: ['wristpin import pump-engine.zip --look', 'wristpin import pump-engine.zip'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const source = await opened(call.positionals[0]!);
    try {
      await withStore(call, around, 'may-begin', async ({ store }) => {
        const { plan, take } = await openImport(store, await readBundleHere(source));
        if (flag(call, 'look')) return sayPlan(plan, around);
        const into = (text(call, 'into') ?? '').toLowerCase().split(',').filter(Boolean);
        const { jobs, stored, already, pictures, sounds, leftOut } = await take({
          into,
          shop: flag(call, 'with-shop'),
        });
        around.out(
          `${jobs.length === 1 ? `Job ${jobs[0]}` : counted(jobs.length, 'job')}: ${counted(stored.length, 'entry', 'entries')} taken in, ${already.length} were here already, ${picturesAndSounds(pictures, sounds)}.`,
        );
        for (const { job, lines } of leftOut) around.err(leftOutWords(job, lines));
      });
    } finally {
      await source.close();
    }
  },
};

async function opened(file: string) {
  const path = resolve(file);
  try {
    return await fileSource(path);
  } catch (error) {
    if (error instanceof Error && error.name === 'ShopkeepError') throw error;
    const reason = reasonOf(error) === 'there is no such folder' ? 'there is no such file' : reasonOf(error);
    throw new Failed(`${path} cannot be read: ${reason}.`, { cause: error });
  }
}

function leftOutWords(job: string, lines: number): string {
  const what = counted(lines, 'line');
  return job === shopLog
    ? `Left out: ${what} of the shop itself. --with-shop takes them too.`
    : `Left out: ${what} for job ${job}, which is here already. --into ${job} adds them to it.`;
}

function sayPlan({ jobs, shopLines, pictures, sounds, digest }: ImportPlan, { out }: Surroundings): void {
  for (const job of jobs) out(jobWords(job));
  if (shopLines.fresh > 0)
    out(
      `The shop itself: ${counted(shopLines.fresh, 'line')} that would change it, taken only by --with-shop.`,
    );
  out(`${picturesAndSounds(pictures, sounds)}. The digest of its lines is ${digest}. Nothing was stored.`);
}

function jobWords({ job, tag, title, fresh, known, here, asKept }: PlannedJob): string {
  const name = printed(joined([`job ${job}`, tag !== undefined && `tag ${tag}`, title], ', '));
  if (!here) return `New: ${name}: ${counted(fresh, 'line')}.`;
  if (asKept)
    return `Here already: ${name}: its ${counted(known, 'line')} are the very ones that were kept here.`;
  if (fresh === 0) return `Here already: ${name}: ${counted(known, 'line')}, none of them new.`;
  return `Here already: ${name}: ${counted(fresh, 'line')} new, ${known} known; added only by --into ${job}.`;
}
