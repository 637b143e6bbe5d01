import { counted } from '../../phrase/index.js';
import { loadDemo, packaged, removeDemo } from '../../shopkeep/index.js';
import { type Command, WronglyCalled } from '../command.js';
import { suggestion } from '../nearest.js';
import { storeOptions, withStore } from './store-options.js';

export const demo: Command = {
  usage: 'wristpin demo load|remove [options]',
  options: storeOptions,
  examples: ['wristpin demo load', 'wristpin demo remove'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const [act] = call.positionals;
    if (act === 'load') {
      await withStore(call, around, 'may-begin', async ({ store }) => {
        const { jobs, stored } = await loadDemo(store, packaged().demo);
        const fresh = stored.length > 0 ? `${stored.length} entries` : 'nothing new, all of it was here';
        around.out(
          `${jobs.length === 1 ? 'The invented job' : `${jobs.length} invented jobs`} loaded: ${fresh}.`,
        );
      });
    } else if (act === 'remove') {
      await withStore(call, around, 'must-exist', async ({ store }) => {
        const { jobs, entries, pictures } = await removeDemo(store);
        around.out(
          `${counted(jobs.length, 'invented job')} removed: ${counted(entries, 'entry', 'entries')}, ${counted(pictures, 'picture')}.`,
        );
      });
    } else {
      throw new WronglyCalled(`“${act}” is neither load nor remove.${suggestion(act!, ['load', 'remove'])}`);
    }
  },
};
