import { counted } from '../../phrase/index.js';
import { type Basket, type BasketProblem, basket, type IntegerSolver } from '../../supply/index.js';
import { type Command, flag } from '../command.js';
import { table } from '../help.js';
import { readJson } from './in-json.js';
import { inShape } from './in-shape.js';
import { seconds } from './seconds.js';

/** Two parts, two suppliers, one of them with a kit of both. */
const example = {
  need: { 'head gasket': 1, 'bowl gasket': 1 },
  offers: [
    { id: 'gasket set', supplier: 'north', price: 11, contains: { 'head gasket': 1, 'bowl gasket': 1 } },
    { id: 'head gasket', supplier: 'south', price: 5, contains: { 'head gasket': 1 }, leadDays: 3 },
    { id: 'bowl gasket', supplier: 'south', price: 2, contains: { 'bowl gasket': 1 }, leadDays: 3 },
  ],
  suppliers: [
    { id: 'north', shipping: [{ from: 0, cost: 4 }] },
    { id: 'south', shipping: [{ from: 0, cost: 6 }] },
  ],
  delayPerDay: 1,
};

export const basketCommand: Command = {
  usage: 'wristpin basket FILE.json [--seconds N] [--json]',
  options: {
    seconds: { type: 'string', value: 'N', help: 'how long to search at most, usually 60' },
    json: {
      type: 'boolean',
      help: 'print {total, lines, leftOver, optimal, goods, shipping, delay, days, suppliers} as JSON',
    },
  },
  examples: ['wristpin basket gaskets.json --json'],
  file: example,
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const given = await readJson(call.positionals[0]!);
    const solver = await loadSolver();
    const found = bought(call.positionals[0]!, given, solver, seconds(call, 60));
    around.out(flag(call, 'json') ? asJson(found) : asText(found));
  },
};

/** The package is CommonJS: the types promise a namespace where Node hands over the function itself. */
async function loadSolver(): Promise<IntegerSolver> {
  const { default: load } = await import('highs');
  return (load as unknown as () => Promise<IntegerSolver>)();
}

function bought(file: string, given: unknown, solver: IntegerSolver, secondsAtMost: number): Basket {
  // the room checks what it is given, whoever wrote it
  return inShape(file, example, () => basket(given as BasketProblem, solver, { secondsAtMost }));
}

function asJson({ total, lines, leftOver, optimal, ...rest }: Basket): string {
  return JSON.stringify({ total, lines, leftOver, optimal, ...rest }, null, 2);
}

function asText({ lines, total, goods, shipping, delay, days, leftOver, optimal }: Basket): string {
  const over = Object.entries(leftOver).map(([part, n]) => `${n} × ${part}`);
  return [
    ...table(lines.map(({ offer, count }) => [`${count} ×`, offer] as const)),
    `Goods ${goods}, shipping ${shipping}, waiting ${counted(days, 'day')} ${delay}: ${total} in all.`,
    ...(over.length > 0 ? [`Left over: ${over.join(', ')}.`] : []),
    optimal ? 'No basket costs less.' : 'The time was up: a cheaper basket may exist.',
  ].join('\n');
}
