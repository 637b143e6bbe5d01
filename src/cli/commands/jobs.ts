import { type ListedJob, Summaries } from '../../shopkeep/index.js';
import { type Command, flag } from '../command.js';
import { storeOptions, withStore } from './store-options.js';

export const jobs: Command = {
  usage: 'wristpin jobs [--json] [options]',
  options: { json: { type: 'boolean', help: 'print the list as JSON' }, ...storeOptions },
  examples: ['wristpin jobs'],
  takes: { least: 0, most: 0 },
  run: async (call, around) => {
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const list = await new Summaries(store).list();
      if (flag(call, 'json')) return around.out(JSON.stringify({ jobs: list }, null, 2));
      if (list.length === 0) return around.out('No job yet. “wristpin serve” opens the bench to begin one.');
      for (const job of list) around.out(jobLine(job));
    });
  },
};

function jobLine({ id, summary }: ListedJob): string {
  const tag = `tag ${summary.tag}`.padEnd(10);
  const marks = [summary.invented && 'invented', summary.handedOver && 'handed over'].filter(Boolean);
  const name = summary.title || summary.machine || 'no title yet';
  return `${tag} ${id}  ${name}${marks.length > 0 ? ` (${marks.join(', ')})` : ''}`;
}
