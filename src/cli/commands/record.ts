import { localTime } from '../../job/index.js';
import { findJob, packaged, printRecord } from '../../shopkeep/index.js';
import { type Call, type Command, flag, text, WronglyCalled } from '../command.js';
import { forceOption, requireFree, writeWhole } from './out-file.js';
import { storeOptions, withStore } from './store-options.js';

export const record: Command = {
  usage:
    'wristpin record JOB --pdf FILE [--brief | --full] [options]   (JOB: the number on the tag, or the job’s id; without a form: every word if two pages hold them, else brief)',
  options: {
    pdf: { type: 'string', value: 'FILE', help: 'where to write it' },
    brief: { type: 'boolean', help: 'what fits an owner’s two pages' },
    full: { type: 'boolean', help: 'every word that was logged' },
    force: forceOption,
    ...storeOptions,
  },
  examples: ['wristpin record 12 --pdf record-12.pdf', 'wristpin record 12 --full --pdf record-12.pdf'],
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const pdf = text(call, 'pdf');
    if (!pdf) throw new WronglyCalled('--pdf FILE says where to write the record; it is missing.');
    const detail = detailOf(call);
    const path = requireFree(pdf, flag(call, 'force'));
    await withStore(call, around, 'must-exist', async ({ store }) => {
      const { id } = await findJob(store, call.positionals[0]!);
      const printing = { fonts: packaged().fonts, printedAt: localTime(around.now()), detail };
      writeWhole(path, (await printRecord(store, id, printing)).bytes, flag(call, 'force'));
      around.out(`The service record is in ${path}`);
    });
  },
};

function detailOf(call: Call): 'brief' | 'full' | undefined {
  const brief = flag(call, 'brief');
  const full = flag(call, 'full');
  if (brief && full)
    throw new WronglyCalled('--brief and --full are two forms of the record; give one of them.');
  return brief ? 'brief' : full ? 'full' : undefined;
}
