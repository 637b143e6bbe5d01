import {
  convert,
  findUnit,
  type Origin,
  of,
  parse,
  type Quantity,
  readerUnit,
  readUnit,
  show,
  siUnitOf,
  type ThreadName,
  unitsOf,
} from '../quantity/index.js';
import type { Answer, Example, Given, Worksheet } from './worksheet.js';

const sp811 = 'NIST SP 811:2008, App. B';
const exactFactors: Origin = { from: 'standard', detail: `${sp811}, exact factors` };

const convertSheet: Worksheet = {
  id: 'convert',
  question: 'What is this in the other system?',
  title: 'Any quantity in other units',
  purpose:
    'Reads a quantity as it is written at the bench and says it in another unit, without rounding on the way.',
  fields: [
    {
      id: 'quantity',
      label: 'Quantity',
      help: 'A number and its unit, as written on the sheet or the instrument.',
      kind: 'text',
      hint: '180 in-lb',
    },
    {
      id: 'unit',
      label: 'Unit wanted',
      help: 'Left empty: the unit that readers of the other system expect.',
      kind: 'text',
      required: false,
      hint: 'N·m',
    },
  ],
  compute: convertIt,
  cautions: ['Never round a converted figure and convert it again: keep the figure as it was printed.'],
  sources: [sp811],
  examples: [
    {
      title: 'The rounding trap: 180 in-lb is 20.34 N·m',
      given: { quantity: '180 in-lb', unit: 'N·m' },
      expect: { converted: { value: 20.34, unit: 'N·m', tolerance: 0.005 } },
      source: `${sp811}; a manual in public hands prints 20.5 N·m`,
      mark: 'calculated',
    },
    {
      title: 'A conventional inch of mercury',
      given: { quantity: '1 inHg', unit: 'Pa' },
      expect: { converted: { value: 3386.389, unit: 'Pa', tolerance: 0.0005 } },
      source: sp811,
      mark: 'seen',
    },
    {
      title: 'One bar in psi',
      given: { quantity: '1 bar', unit: 'psi' },
      expect: { converted: { value: 14.5038, unit: 'psi', tolerance: 0.00005 } },
      source: sp811,
      mark: 'seen',
    },
    {
      title: 'A length is no torque',
      given: { quantity: '0.030 in', unit: 'in-lb' },
      expect: { quantity: { refused: 'torque wanted, length given (0.030 in)' } },
      source: 'dimension of the units',
      mark: 'calculated',
    },
  ],
};

function convertIt(given: Given): readonly Answer[] {
  const quantity = quantityAndUnit(given);
  const own = findUnit(quantity.unit);
  const target = given.has('unit')
    ? readUnit(given.text('unit'), quantity.kind)
    : findUnit(otherUnit(quantity));
  const note = [own.note, target.note].filter((each) => each !== undefined).join('; ');
  return [
    {
      id: 'read-as',
      label: 'Read as',
      value: { type: 'text', text: `${quantity.kind}, ${show(quantity)}` },
      origin: { from: 'owner', detail: 'as written' },
    },
    {
      id: 'converted',
      label: 'Converted',
      value: { type: 'quantity', quantity: convert(quantity, target.id), inUnit: target.id },
      origin: exactFactors,
      ...(note && { note }),
    },
    {
      id: 'in-full',
      label: 'To seven figures',
      value: { type: 'text', text: show(quantity, undefined, { unit: target.id, digits: 7 }) },
      origin: exactFactors,
    },
  ];
}

/** The wanted unit may settle what the quantity is: "20 oz" in mL is a volume. */
function quantityAndUnit(given: Given): Quantity {
  const text = given.text('quantity');
  const quantity = parse(text);
  if (!given.has('unit')) return quantity;
  const wanted = readUnit(given.text('unit'), quantity.kind).kind;
  return wanted === quantity.kind ? quantity : parse(text, wanted);
}

function otherUnit(quantity: Quantity): string {
  const own = findUnit(quantity.unit);
  if (own.system === 'both') return sharedOther(quantity);
  return readerUnit(quantity, own.system === 'inch' ? 'metric' : 'inch');
}

/** A unit that both systems use is said in SI, and the SI unit in the commonest of the others. */
function sharedOther({ kind, unit }: Quantity): string {
  const si = siUnitOf(kind).id;
  return unit === si ? (unitsOf(kind).find(({ id }) => id !== si)?.id ?? si) : si;
}

const torqueUnitIds = ['in-lb', 'ft-lb', 'N·m', 'kgf·m'] as const;
const answerIds: Readonly<Record<(typeof torqueUnitIds)[number], string>> = {
  'in-lb': 'inch-pounds',
  'ft-lb': 'foot-pounds',
  N·m: 'newton-meters',
  kgf·m: 'kilogram-meters',
};

const torqueExamples: readonly Example[] = [
  {
    title: '15 ft-lb is 180 in-lb',
    given: { torque: '15 ft-lb' },
    expect: {
      'inch-pounds': { value: 180, unit: 'in-lb', tolerance: 1e-9 },
      'newton-meters': { value: 20.34, unit: 'N·m', tolerance: 0.005 },
    },
    source: 'twelve inches to the foot',
    mark: 'common practice',
  },
  {
    title: 'One kilogram-force meter',
    given: { torque: '100 kgf·cm' },
    expect: {
      'kilogram-meters': { value: 1, unit: 'kgf·m', tolerance: 1e-12 },
      'newton-meters': { value: 9.80665, unit: 'N·m', tolerance: 1e-12 },
    },
    source: `${sp811}, standard gravity`,
    mark: 'calculated',
  },
];

const torqueSheet: Worksheet = {
  id: 'torque-units',
  question: 'What is this torque on each kind of wrench?',
  title: 'A torque in in-lb, ft-lb, N·m and kgf·m',
  purpose: 'The same torque in the four units that wrenches and sheets carry, side by side.',
  fields: [
    {
      id: 'torque',
      label: 'Torque',
      help: 'As printed on the sheet, with its unit.',
      kind: 'torque',
      hint: '140 in-lb',
    },
  ],
  compute: (given) =>
    torqueUnitIds.map((unit) => ({
      id: answerIds[unit],
      label: unit,
      value: { type: 'quantity', quantity: convert(given.quantity('torque'), unit), inUnit: unit },
      origin: exactFactors,
    })),
  cautions: [
    'Inch pounds and foot pounds differ twelve times. Tables that print one for the other are about; a head bolt asked for 140 ft-lb will break.',
  ],
  sources: [sp811],
  examples: torqueExamples,
};

const threadSheet: Worksheet = {
  id: 'thread-name',
  question: 'What thread does this marking mean?',
  title: 'A thread marking read',
  purpose: 'Diameter, pitch and threads an inch of the thread a marking names, in both systems.',
  fields: [
    {
      id: 'marking',
      label: 'Marking',
      help: 'As on the bag, the drawing or the gauge.',
      kind: 'thread',
      hint: '5/16-18 or M8×1.25',
    },
  ],
  compute: (given) => threadAnswers(given.thread('marking')),
  cautions: [
    'M14 without a pitch is the coarse thread M14×2; the thread of a 14 mm spark plug is M14×1.25.',
    'Inch and metric threads of nearly the same size start into each other and strip: gauge the pitch.',
  ],
  sources: ['ASME B1.1 (from memory)', 'ISO 261 (from memory)'],
  examples: [
    {
      title: 'A number ten coarse screw',
      given: { marking: 'No. 10-24' },
      expect: {
        name: { text: '#10-24' },
        major: { value: 0.19, unit: 'in', tolerance: 1e-9 },
        pitch: { value: 1 / 24, unit: 'in', tolerance: 1e-9 },
      },
      source: 'ASME B1.1, numbered sizes 0.060 + 0.013·n in',
      mark: 'memory, recomputed',
    },
    {
      title: 'M8 without a pitch is the coarse one',
      given: { marking: 'M8' },
      expect: { name: { text: 'M8×1.25' }, pitch: { value: 1.25, unit: 'mm', tolerance: 1e-9 } },
      source: 'ISO 261',
      mark: 'memory',
    },
    {
      title: 'A size alone leaves two threads open',
      given: { marking: '5/16' },
      expect: { marking: { refused: '5/16-18 (UNC) or 5/16-24 (UNF)' } },
      source: 'ASME B1.1',
      mark: 'memory',
    },
  ],
};

function threadAnswers(thread: ThreadName): readonly Answer[] {
  const origin: Origin = { from: 'standard', detail: thread.system === 'inch' ? 'ASME B1.1' : 'ISO 261' };
  const perInch = thread.threadsPerInch ?? 25.4 / thread.pitchMm;
  const from = thread.pitchFrom ? `no pitch written: ${thread.pitchFrom}` : 'pitch as written';
  return [
    { id: 'name', label: 'Thread', value: { type: 'text', text: thread.name }, origin, note: from },
    { id: 'major', label: 'Diameter over the crests', value: threadLength(thread, thread.majorMm), origin },
    { id: 'pitch', label: 'Pitch', value: threadLength(thread, thread.pitchMm), origin },
    { id: 'per-inch', label: 'Threads an inch', value: { type: 'number', number: perInch }, origin },
    { id: 'hand', label: 'Hand', value: { type: 'text', text: thread.leftHand ? 'left' : 'right' }, origin },
  ];
}

function threadLength({ system }: ThreadName, mm: number): Answer['value'] {
  const length = of(mm, 'mm');
  return { type: 'quantity', quantity: system === 'inch' ? convert(length, 'in') : length };
}

/** The worksheets of units and thread markings. */
export const quantityWorksheets: readonly Worksheet[] = [convertSheet, torqueSheet, threadSheet];
