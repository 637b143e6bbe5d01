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
import { type Answer, number, words } from './answer.js';
import { near } from './example.js';
import { ask } from './field.js';
import { worksheet } from './worksheet.js';

const sp811 = 'NIST SP 811:2008, App. B';
const exactFactors: Origin = { from: 'standard', detail: `${sp811}, exact factors` };

const convertSheet = worksheet({
  id: 'convert',
  group: 'Can I trust this reading?',
  question: 'What is this in the other system?',
  title: 'Any quantity in other units',
  purpose:
    'Reads a quantity as it is written at the bench and says it in another unit, without rounding on the way.',
  fields: {
    quantity: ask.text(
      'Quantity',
      'A number and its unit, as written on the sheet or the instrument.',
      '180 in-lb',
    ),
    unit: ask.text('Unit wanted', 'Left empty: the unit that readers of the other system expect.', {
      hint: 'N·m',
      optional: true,
    }),
  },
  compute: ({ quantity, unit }) => convertIt(quantityIn(quantity, unit), unit),
  cautions: ['Never round a converted figure and convert it again: keep the figure as it was printed.'],
  sources: [sp811],
  examples: [
    {
      title: 'The rounding trap: 180 in-lb is 20.34 N·m',
      given: { quantity: '180 in-lb', unit: 'N·m' },
      expect: { converted: near(20.34, 0.005, 'N·m') },
      source: `${sp811}; a manual in public hands prints 20.5 N·m`,
      mark: 'calculated',
    },
    {
      title: 'A conventional inch of mercury',
      given: { quantity: '1 inHg', unit: 'Pa' },
      expect: { converted: near(3386.389, 0.0005, 'Pa') },
      source: sp811,
      mark: 'seen',
    },
    {
      title: 'One bar in psi',
      given: { quantity: '1 bar', unit: 'psi' },
      expect: { converted: near(14.5038, 0.00005, 'psi') },
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
});

/** The wanted unit may settle what the quantity is: "20 oz" in mL is a volume. */
function quantityIn(text: string, unit: string | undefined): Quantity {
  const quantity = parse(text);
  if (unit === undefined) return quantity;
  const wanted = readUnit(unit, quantity.kind).kind;
  return wanted === quantity.kind ? quantity : parse(text, wanted);
}

function convertIt(quantity: Quantity, unit: string | undefined): readonly Answer[] {
  const own = findUnit(quantity.unit);
  const target = unit === undefined ? findUnit(otherUnit(quantity)) : readUnit(unit, quantity.kind);
  const note = [own.note, target.note].filter((each) => each !== undefined).join('; ') || undefined;
  return [
    words('read-as', 'Read as', `${quantity.kind}, ${show(quantity)}`, {
      from: 'owner',
      detail: 'as written',
    }),
    {
      id: 'converted',
      label: 'Converted',
      value: { type: 'quantity', quantity: convert(quantity, target.id), inUnit: target.id },
      origin: exactFactors,
      ...(note && { note }),
    },
    words(
      'in-full',
      'To seven figures',
      show(quantity, undefined, { unit: target.id, digits: 7 }),
      exactFactors,
    ),
  ];
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

const torqueSheet = worksheet({
  id: 'torque-units',
  group: 'How tight?',
  question: 'What is this torque on each kind of wrench?',
  title: 'A torque in in-lb, ft-lb, N·m and kgf·m',
  purpose: 'The same torque in the four units that wrenches and sheets carry, side by side.',
  fields: {
    torque: ask.quantity('torque', 'Torque', 'As printed on the sheet, with its unit.', '140 in-lb'),
  },
  compute: ({ torque }) =>
    torqueUnitIds.map((unit) => ({
      id: answerIds[unit],
      label: unit,
      value: { type: 'quantity', quantity: convert(torque, unit), inUnit: unit },
      origin: exactFactors,
    })),
  cautions: [
    'Inch pounds and foot pounds differ twelve times. Tables that print one for the other are about; a head bolt asked for 140 ft-lb will break.',
  ],
  sources: [sp811],
  examples: [
    {
      title: '15 ft-lb is 180 in-lb',
      given: { torque: '15 ft-lb' },
      expect: { 'inch-pounds': near(180, 1e-9, 'in-lb'), 'newton-meters': near(20.34, 0.005, 'N·m') },
      source: 'twelve inches to the foot',
      mark: 'common practice',
    },
    {
      title: 'One kilogram-force meter',
      given: { torque: '100 kgf·cm' },
      expect: { 'kilogram-meters': near(1, 1e-12, 'kgf·m'), 'newton-meters': near(9.80665, 1e-12, 'N·m') },
      source: `${sp811}, standard gravity`,
      mark: 'calculated',
    },
  ],
});

const threadSheet = worksheet({
  id: 'thread-name',
  group: 'Threads',
  question: 'What thread does this marking mean?',
  title: 'A thread marking read',
  purpose: 'Diameter, pitch and threads an inch of the thread a marking names, in both systems.',
  fields: {
    marking: ask.thread('Marking', 'As on the bag, the drawing or the gauge.', '5/16-18 or M8×1.25'),
  },
  compute: ({ marking }) => threadAnswers(marking),
  cautions: [
    'M14 without a pitch is the coarse thread M14×2; the thread of a 14 mm spark plug is M14×1.25.',
    'Inch and metric threads of nearly the same size start into each other and strip: gauge the pitch.',
  ],
  sources: ['ASME B1.1 (from memory)', 'ISO 261 (from memory)'],
  examples: [
    {
      title: 'A number ten coarse screw',
      given: { marking: 'No. 10-24' },
      expect: { name: { text: '#10-24' }, major: near(0.19, 1e-9, 'in'), pitch: near(1 / 24, 1e-9, 'in') },
      source: 'ASME B1.1, numbered sizes 0.060 + 0.013·n in',
      mark: 'memory, recomputed',
    },
    {
      title: 'M8 without a pitch is the coarse one',
      given: { marking: 'M8' },
      expect: { name: { text: 'M8×1.25' }, pitch: near(1.25, 1e-9, 'mm') },
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
});

function threadAnswers(thread: ThreadName): readonly Answer[] {
  const origin: Origin = { from: 'standard', detail: thread.system === 'inch' ? 'ASME B1.1' : 'ISO 261' };
  const perInch = thread.threadsPerInch ?? 25.4 / thread.pitchMm;
  const note = thread.pitchFrom ? `no pitch written: ${thread.pitchFrom}` : 'pitch as written';
  const length = (id: string, label: string, mm: number): Answer => {
    const quantity = of(mm, 'mm');
    const value = {
      type: 'quantity',
      quantity: thread.system === 'inch' ? convert(quantity, 'in') : quantity,
    } as const;
    return { id, label, value, origin };
  };
  return [
    words('name', 'Thread', thread.name, origin, { note }),
    length('major', 'Diameter over the crests', thread.majorMm),
    length('pitch', 'Pitch', thread.pitchMm),
    number('per-inch', 'Threads an inch', perInch, undefined, origin),
    words('hand', 'Hand', thread.leftHand ? 'left' : 'right', origin),
  ];
}

/** The worksheets of units and thread markings. */
export const quantityWorksheets = [convertSheet, torqueSheet, threadSheet];
