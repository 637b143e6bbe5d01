import { JobNotes, type ListedJob } from '../../shopkeep/index.js';
import { type Command, flag } from '../command.js';
import { sayBehind } from './reindex.js';
import { storeOptions, withStore } from './store-options.js';

export const jobs: Command = {
  usage: 'wristpin jobs [--json] [options]',
  options: { json: { type: 'boolean', help: 'print the list as JSON' }, ...storeOptions },
  examples: ['wristpin jobs'],
  takes: { least: 0, most: 0 },
  run: async (call, around) => {
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const notes = new JobNotes(store);
      await notes.bringUp(sayBehind(around));
      const list = await all(notes);
      if (flag(call, 'json')) return around.out(JSON.stringify({ jobs: list }, null, 2));
      if (list.length === 0) return around.out('No job yet. “wristpin serve” opens the bench to begin one.');
      for (const job of list) around.out(jobLine(job));
    });
  },
};

const jobsAPage = 500;

async function all(notes: JobNotes): Promise<ListedJob[]> {
  const list: ListedJob[] = [];
  for (;;) {
    const beyond = list.at(-1)?.first ?? 0;
    const page = await notes.list({ order: 'as opened', beyond, most: jobsAPage });
    list.push(...page);
    if (page.length < jobsAPage) return list;
  }
}

function jobLine({ id, summary }: ListedJob): string {
  const tag = `tag ${summary.tag}`.padEnd(10);
  const marks = [summary.invented && 'invented', summary.handedOver && 'handed over'].filter(Boolean);
  const name = summary.title || summary.machine || 'no title yet';
  return `${tag} ${id}  ${printed(name)}${marks.length > 0 ? ` (${marks.join(', ')})` : ''}`;
}

/** What a person wrote, without the signs by which a terminal would take orders. */
export const printed = (words: string): string => words.replace(/\p{Cc}+/gu, ' ');
