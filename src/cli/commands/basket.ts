import {
  type Basket,
  type BasketProblem,
  basket,
  type IntegerSolver,
  SupplyError,
} from '../../supply/index.js';
import { type Command, Failed, flag } from '../command.js';
import { table } from '../help.js';
import { readJson } from './in-json.js';
import { seconds } from './seconds.js';

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
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const given = await readJson(call.positionals[0]!);
    const found = bought(given, await loadSolver(), seconds(call, 60));
    around.out(flag(call, 'json') ? asJson(found) : asText(found));
  },
};

/** The package is CommonJS: the types promise a namespace where Node hands over the function itself. */
async function loadSolver(): Promise<IntegerSolver> {
  const { default: load } = await import('highs');
  return (load as unknown as () => Promise<IntegerSolver>)();
}

function bought(given: unknown, solver: IntegerSolver, secondsAtMost: number): Basket {
  try {
    // the room checks what it is given, whoever wrote it
    return basket(given as BasketProblem, solver, { secondsAtMost });
  } catch (error) {
    if (error instanceof SupplyError) throw new Failed(`${error.message}.`, { cause: error });
    throw error;
  }
}

function asJson({ total, lines, leftOver, optimal, ...rest }: Basket): string {
  return JSON.stringify({ total, lines, leftOver, optimal, ...rest }, null, 2);
}

function asText({ lines, total, goods, shipping, delay, days, leftOver, optimal }: Basket): string {
  const over = Object.entries(leftOver).map(([part, n]) => `${n} × ${part}`);
  return [
    ...table(lines.map(({ offer, count }) => [`${count} ×`, offer] as const)),
    `Goods ${goods}, shipping ${shipping}, waiting ${days} ${days === 1 ? 'day' : 'days'} ${delay}: ${total} in all.`,
    ...(over.length > 0 ? [`Left over: ${over.join(', ')}.`] : []),
    optimal ? 'No basket costs less.' : 'The time was up: a cheaper basket may exist.',
  ].join('\n');
}
