import { desk, findWorksheet } from '../../desk/index.js';
import type { UnitSystem } from '../../quantity/index.js';
import {
  type Answer,
  describe,
  printJson,
  printText,
  run,
  type Worksheet,
  WorksheetError,
} from '../../worksheet/index.js';
import { type Call, type Command, Failed, flag, type Surroundings, text, WronglyCalled } from '../command.js';
import { table } from '../help.js';
import { suggestion } from '../nearest.js';
import { worksheetHelp } from '../worksheet-help.js';

export const work: Command = {
  usage: 'wristpin work [WORKSHEET [key=value …]] [--json] [--units inch|metric]',
  options: {
    json: { type: 'boolean', help: 'print the answers as JSON, with their origins' },
    units: { type: 'string', value: 'SYSTEM', help: 'print in inch or metric units' },
  },
  examples: [
    'wristpin work',
    'wristpin work convert',
    'wristpin work convert "quantity=15 ft-lb" unit=in-lb',
  ],
  takes: { least: 0, most: Number.POSITIVE_INFINITY },
  helpOn: ([id]) => (id === undefined ? undefined : worksheetHelp(find(id))),
  run: async (call, around) => {
    const [id, ...pairs] = call.positionals;
    if (id === undefined) return list(call, around);
    const worksheet = find(id);
    if (pairs.length === 0) return explain(worksheet, call, around);
    const system = readSystem(text(call, 'units'));
    const answers = answer(worksheet, readPairs(worksheet, pairs));
    if (flag(call, 'json')) {
      around.out(JSON.stringify({ worksheet: worksheet.id, answers: printJson(answers, system) }, null, 2));
    } else {
      for (const line of asText(worksheet, answers, system)) around.out(line);
    }
  },
};

function list(call: Call, { out }: Surroundings): void {
  const asJson = () => JSON.stringify({ worksheets: desk.map(describe) }, null, 2);
  out(flag(call, 'json') ? asJson() : questions());
}

function questions(): string {
  return [
    'What do you want to know?',
    ...table(desk.map(({ question, id }) => [question, id] as const)),
    '“wristpin work WORKSHEET” says what a worksheet wants.',
  ].join('\n');
}

function explain(worksheet: Worksheet, call: Call, { out }: Surroundings): void {
  out(flag(call, 'json') ? JSON.stringify(describe(worksheet), null, 2) : worksheetHelp(worksheet));
}

function find(id: string): Worksheet {
  const worksheet = findWorksheet(id);
  if (worksheet) return worksheet;
  const near = suggestion(
    id,
    desk.map((each) => each.id),
  );
  throw new WronglyCalled(`There is no worksheet “${id}”.${near} “wristpin work” lists them.`);
}

function readPairs({ id, fields }: Worksheet, pairs: readonly string[]): Record<string, string> {
  const known = fields.map((field) => field.id);
  const given = new Map<string, string>();
  for (const pair of pairs) {
    const [, key, value] = /^([^=]+)=(.*)$/s.exec(pair) ?? [];
    if (key === undefined || value === undefined) {
      throw new WronglyCalled(
        `“${pair}” is not of the form key=value. The keys of ${id}: ${known.join(', ')}.`,
      );
    }
    if (!known.includes(key)) {
      const near = suggestion(key, known) || ` Its fields: ${known.join(', ')}.`;
      throw new WronglyCalled(`The worksheet ${id} has no field “${key}”.${near}`);
    }
    if (given.has(key)) throw new WronglyCalled(`“${key}” is given twice.`);
    given.set(key, value);
  }
  return Object.fromEntries(given);
}

function answer(worksheet: Worksheet, given: Readonly<Record<string, string>>): readonly Answer[] {
  try {
    return run(worksheet, given);
  } catch (error) {
    if (!(error instanceof WorksheetError)) throw error;
    const field = error.field === undefined ? '' : `${error.field}: `;
    throw new Failed(`${field}${error.message}`, { cause: error });
  }
}

/** Cautions stand before the numbers, and where the numbers come from after them. */
function asText({ cautions }: Worksheet, answers: readonly Answer[], system?: UnitSystem): string[] {
  const origins = answers.map(({ origin }) => [origin.from, origin.detail].filter(Boolean).join(', '));
  return [
    ...cautions.map((caution) => `Caution: ${caution}`),
    ...printText(answers, system),
    ...[...new Set(origins)].map((origin) => `  from: ${origin}`),
  ];
}

function readSystem(written: string | undefined): UnitSystem | undefined {
  if (written === undefined || written === 'inch' || written === 'metric') return written;
  throw new WronglyCalled(`--units is inch or metric, not “${written}”.`);
}
