import { type BenchProblem, type BenchSchedule, benchSchedule } from '../../plan/index.js';
import { type Call, type Command, flag, text, WronglyCalled } from '../command.js';
import { table } from '../help.js';
import { readJson } from './in-json.js';
import { inShape } from './in-shape.js';
import { seconds } from './seconds.js';

/** With the start of the program it stays within a second. */
const usualSeconds = 0.75;

/** One mechanic, one tank; a carburetor soaks while the head is lapped. Times are minutes. */
const example = {
  resources: [
    { id: 'mechanic', capacity: 1 },
    { id: 'soak tank', capacity: 1 },
  ],
  activities: [
    { id: 'carburetor off', minutes: 20, uses: { mechanic: 1 } },
    { id: 'soak', minutes: 120, uses: { 'soak tank': 1 }, after: [{ id: 'carburetor off' }] },
    { id: 'lap the head', minutes: 40, uses: { mechanic: 1 } },
    { id: 'carburetor on', minutes: 30, uses: { mechanic: 1 }, after: [{ id: 'soak' }], due: 240 },
  ],
};

export const benchCommand: Command = {
  usage: 'wristpin bench FILE.json [--seconds N] [--seed N] [--json]',
  options: {
    seconds: { type: 'string', value: 'N', help: `how long to search at most, usually ${usualSeconds}` },
    seed: { type: 'string', value: 'N', help: 'another whole number searches along another path' },
    json: { type: 'boolean', help: 'print {start, makespan, bound, optimal, late, lateBound} as JSON' },
  },
  examples: ['wristpin bench thursday.json --json'],
  file: example,
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const given = await readJson(call.positionals[0]!);
    const options = { budgetMs: 1000 * seconds(call, usualSeconds), seed: seed(call) };
    const schedule = scheduled(call.positionals[0]!, given, { ...options, clock: () => performance.now() });
    around.out(flag(call, 'json') ? asJson(schedule) : asText(schedule));
  },
};

function seed(call: Call): number {
  const given = text(call, 'seed') ?? '1';
  if (/^\d{1,9}$/.test(given)) return Number(given);
  throw new WronglyCalled(`--seed takes a whole number of up to nine digits, not “${given}”.`);
}

function scheduled(
  file: string,
  given: unknown,
  options: Parameters<typeof benchSchedule>[1],
): BenchSchedule {
  // the room checks what it is given, whoever wrote it
  return inShape(file, example, () => benchSchedule(given as BenchProblem, options));
}

function asJson({ start, makespan, bound, optimal, late, lateBound }: BenchSchedule): string {
  return JSON.stringify({ start, makespan, bound, optimal, late, lateBound }, null, 2);
}

function asText(schedule: BenchSchedule): string {
  const { start, makespan, bound, optimal, late, lateBound } = schedule;
  const rows = Object.entries(start)
    .sort(([, a], [, b]) => a - b)
    .map(([id, minute]) => [String(minute), id] as const);
  const end = optimal ? 'nothing is sooner' : `nothing is sooner than ${bound}`;
  const behind = late === 0 ? 'Nothing is late.' : `${late} minutes late in sum, at least ${lateBound}.`;
  return [...table(rows), `Finished at minute ${makespan}; ${end}. ${behind}`].join('\n');
}
