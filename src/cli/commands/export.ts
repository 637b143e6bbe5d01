import { counted } from '../../phrase/index.js';
import { exportJob, findJob } from '../../shopkeep/index.js';
import { type Command, flag, text } from '../command.js';
import { forceOption, requireFree, writeWhole } from './out-file.js';
import { storeOptions, withStore } from './store-options.js';

export const exportCommand: Command = {
  usage: 'wristpin export JOB [--out FILE.zip] [options]   (JOB: the number on the tag, or the job’s id)',
  options: {
    out: { type: 'string', value: 'FILE', help: 'where to write it (else job-tag-N.zip here)' },
    force: forceOption,
    ...storeOptions,
  },
  examples: ['wristpin export 12 --out pump-engine.zip'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const { id, tag } = await findJob(store, call.positionals[0]!);
      const path = requireFree(text(call, 'out') || `job-tag-${tag}.zip`, flag(call, 'force'));
      const { bytes, missing, lines, digest } = await exportJob(store, id);
      writeWhole(path, bytes, flag(call, 'force'));
      around.out(`Job ${id} is in ${path}`);
      around.out(`The digest of its ${counted(lines, 'line')} is ${digest}`);
      for (const sha256 of missing) around.err(`Without picture ${sha256}: the store does not have it.`);
    });
  },
};
