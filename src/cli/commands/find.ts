import { type FoundJob, stageNames } from '../../job/index.js';
import { findAnything, JobNotes } from '../../shopkeep/index.js';
import { type Command, flag, WronglyCalled } from '../command.js';
import { printed } from './jobs.js';
import { sayBehind } from './reindex.js';
import { storeOptions, withStore } from './store-options.js';

const mostFound = 50;

export const find: Command = {
  usage: 'wristpin find WORDS [--json] [options]',
  options: { json: { type: 'boolean', help: 'print what is found as JSON' }, ...storeOptions },
  examples: ['wristpin find head bolt 140', 'wristpin find "bag 3"', 'wristpin find Nov 2026'],
  takes: { least: 1, most: 40 },
  run: async (call, around) => {
    const words = call.positionals.join(' ');
    if (!/[\p{L}\p{N}]/u.test(words))
      throw new WronglyCalled('Say what to look for: a letter or a number at least.');
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const notes = new JobNotes(store);
      await notes.bringUp(sayBehind(around));
      const found = await findAnything(store, notes, words, mostFound);
      if (flag(call, 'json')) return around.out(JSON.stringify({ found }, null, 2));
      if (found.length === 0) return around.out('Nothing found. Fewer letters or fewer words find more.');
      for (const line of found.flatMap(foundLines)) around.out(line);
    });
  },
};

function foundLines({ summary, places }: FoundJob): string[] {
  const { tag, machine, title, handedOver } = summary;
  const name = printed(machine || title || 'machine not named yet');
  return [
    `tag ${tag}  ${name}${handedOver ? ' (handed over)' : ''}`,
    ...places.map(({ stage, title: what, value, detail, day }) => {
      const said = [value ? `${what}: ${value}` : what, detail].filter(Boolean).join(' · ');
      return `    ${stageNames[stage]}, ${day}: ${printed(said)}`;
    }),
  ];
}
