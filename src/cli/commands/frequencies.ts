import { exportedFrequencies, ownFrequencies } from '../../job/index.js';
import { type FinishedLine, findJob, JobNotes, PastJobs, shopNow } from '../../shopkeep/index.js';
import type { Store } from '../../store/index.js';
import { type Call, type Command, Failed, flag, type Surroundings, WronglyCalled } from '../command.js';
import { suggestion } from '../nearest.js';
import { sayBehind } from './reindex.js';
import { storeOptions, withStore } from './store-options.js';
import { writeShop } from './write-shop.js';

export const frequencies: Command = {
  usage: 'wristpin frequencies [on | off | leave-out JOB | count JOB] [--json] [options]',
  options: {
    json: {
      type: 'boolean',
      help: 'print the counts and the shifted frequencies as JSON, without any job or owner',
    },
    ...storeOptions,
  },
  examples: [
    'wristpin frequencies',
    'wristpin frequencies --json > ours.json',
    'wristpin frequencies leave-out 12',
  ],
  takes: { least: 0, most: 2 },
  run: async (call, around) => {
    const change = changeAsked(call);
    await withStore(call, around, 'must-exist', async ({ store }) => {
      if (change) await change(store, around);
      const { shop, catalog } = await shopNow(store);
      const past = await pastOf(store, around);
      const told = exportedFrequencies(ownFrequencies(shop, await past.tell(), catalog), catalog);
      if (flag(call, 'json')) return around.out(JSON.stringify(told, null, 2));
      const { jobs } = await past.lines(0);
      around.out(asText(told, jobs).join('\n'));
    });
  },
};

type Change = (store: Store, around: Surroundings) => Promise<void>;

/** Read before the store is opened, so that a slip of the pen changes nothing. */
function changeAsked({ positionals: [act, job] }: Call): Change | undefined {
  if (act === undefined) return undefined;
  if (act === 'on' || act === 'off') {
    if (job !== undefined) throw new WronglyCalled(`“${job}” is too much after ${act}.`);
    return (store, around) => writeShop(store, around, 'setting', { key: 'own-frequencies', value: act });
  }
  if (act === 'leave-out' || act === 'count') {
    if (job === undefined) throw new WronglyCalled(`wristpin frequencies ${act} wants the job.`);
    return (store, around) => countJob(store, around, job, act === 'count');
  }
  const known = ['on', 'off', 'leave-out', 'count'];
  throw new WronglyCalled(`“${act}” is none of ${known.join(', ')}.${suggestion(act, known)}`);
}

async function countJob(store: Store, around: Surroundings, named: string, counted: boolean): Promise<void> {
  const { id, tag } = await findJob(store, named);
  if (!(await (await pastOf(store, around)).isFinished(id))) {
    throw new Failed(
      `Tag ${tag} is not among the jobs that can count: it is invented, not handed over, or no fault was named in it.`,
    );
  }
  await writeShop(store, around, 'learning', { job: id, counted, reason: '' });
}

async function pastOf(store: Store, around: Surroundings): Promise<PastJobs> {
  const notes = new JobNotes(store);
  await notes.bringUp(sayBehind(around));
  return new PastJobs(store, notes);
}

function asText(told: ReturnType<typeof exportedFrequencies>, left: readonly FinishedLine[]): string[] {
  const out = left.length > 0 ? ` Left out: ${left.map((j) => `tag ${j.tag}`).join(', ')}.` : '';
  if (told.jobs === 0)
    return [
      `No finished job counts yet: one counts when it is handed over and a fault was named in it.${out}`,
    ];
  const met = told.frequencies.filter((f) => f.found > 0).sort((a, b) => b.found - a.found);
  return [
    `${told.jobs} of the shop’s own jobs count${told.on ? '' : ', but the own frequencies are off: the catalog speaks alone'}.${out}`,
    `The catalog speaks with the weight of ${told.strength} machines.`,
    '',
    ...met.map(
      (f) =>
        `  ${f.name}, ${f.architecture}: found in ${f.found} of ${f.present + f.absent}; the catalog says ${of100(f.catalog)}, with yours ${of100(f.learned)} of 100`,
    ),
  ];
}

const of100 = (p: number): string => (100 * p).toFixed(p < 0.1 ? 1 : 0);
