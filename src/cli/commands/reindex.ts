import { counted } from '../../phrase/index.js';
import { JobNotes } from '../../shopkeep/index.js';
import type { Command, Surroundings } from '../command.js';
import { storeOptions, withStore } from './store-options.js';

export const reindex: Command = {
  usage: 'wristpin reindex [options]',
  options: storeOptions,
  examples: ['wristpin reindex'],
  takes: { least: 0, most: 0 },
  run: async (call, around) => {
    await withStore(call, around, 'must-exist', async ({ store }) => {
      await store.reindex();
      await new JobNotes(store).bringUp(sayBehind(around));
      const { all } = await store.jobCounts();
      around.out(`What lists and searches need of ${counted(all, 'job')} is made anew.`);
    });
  },
};

const worthSaying = 500;

/** Says every few hundred jobs how many are still to be read; nothing where it takes a moment. */
export function sayBehind({ err }: Pick<Surroundings, 'err'>): (behind: number, all: number) => void {
  let said = Number.POSITIVE_INFINITY;
  return (behind, all) => {
    if (behind < worthSaying || said - behind < worthSaying) return;
    said = behind;
    err(`Reading the jobs: ${all - behind} of ${all}.`);
  };
}
