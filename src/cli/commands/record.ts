import { localTime } from '../../job/index.js';
import { findJob, packaged, printRecord } from '../../shopkeep/index.js';
import { type Command, flag, text, WronglyCalled } from '../command.js';
import { forceOption, requireFree, writeWhole } from './out-file.js';
import { storeOptions, withStore } from './store-options.js';

export const record: Command = {
  usage: 'wristpin record JOB --pdf FILE [options]   (JOB: the number on the tag, or the job’s id)',
  options: {
    pdf: { type: 'string', value: 'FILE', help: 'where to write it' },
    force: forceOption,
    ...storeOptions,
  },
  examples: ['wristpin record 12 --pdf record-12.pdf'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const pdf = text(call, 'pdf');
    if (!pdf) throw new WronglyCalled('--pdf FILE says where to write the record; it is missing.');
    const path = requireFree(pdf, flag(call, 'force'));
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const { id } = await findJob(store, call.positionals[0]!);
      const printing = { fonts: packaged().fonts, printedAt: localTime(around.now()) };
      writeWhole(path, (await printRecord(store, id, printing)).bytes, flag(call, 'force'));
      around.out(`The service record is in ${path}`);
    });
  },
};
