import { counted } from '../../phrase/index.js';
import { importBundle } from '../../shopkeep/index.js';
import type { Command } from '../command.js';
import { readWhole } from './in-file.js';
import { storeOptions, withStore } from './store-options.js';

export const importCommand: Command = {
  usage: 'wristpin import FILE [options]',
  options: storeOptions,
  examples: ['wristpin import pump-engine.zip'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const bytes = await readWhole(call.positionals[0]!);
    await withStore(call, around, 'may-begin', async ({ store }) => {
      const { jobs, stored, already, pictures } = await importBundle(store, bytes);
      around.out(
        `${jobs.length === 1 ? `Job ${jobs[0]}` : `${jobs.length} jobs`}: ${counted(stored.length, 'entry', 'entries')} taken in, ${already.length} were here already, ${counted(pictures, 'picture')}.`,
      );
    });
  },
};
