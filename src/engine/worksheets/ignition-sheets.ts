import {
  amount,
  oldAsk as ask,
  oldChoice as choice,
  computed,
  curve,
  type OldGiven as Given,
  judgement,
  oldOptional as optional,
  type Picture,
  picture,
  spaced,
  oldStanding as standing,
  verdict,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { classCoilGapMm, coilGap, keyOffsetMm, sparkShiftDeg } from '../ignition.js';
import { refusing } from './answers.js';
import { optionalMm } from './fields.js';

const arc = computed('arc over radius');

export const sparkShift: Worksheet = {
  id: 'spark-shift',
  title: 'Spark shift of a sheared key',
  question: 'How far does this key offset move the spark?',
  purpose: 'Degrees of crank for an offset seen at the keyway, and what they do.',
  fields: [
    ask('length', 'offset', 'Offset', 'Between the edges of the two keyways, along the surface.', '1 mm'),
    ask('length', 'shaft', 'Shaft', 'Diameter of the taper where the offset is seen.', '20 mm'),
    choice(
      'way',
      'Which way',
      'The rotor runs on when the shaft stops dead, so that ahead is usual; it stands (common practice).',
      [
        ['ahead', 'flywheel ahead of the shaft'],
        ['behind', 'flywheel behind the shaft'],
      ],
      'ahead',
    ),
  ],
  compute: refusing({}, (given) => {
    const shaftMm = given.in('shaft', 'mm');
    const shift = sparkShiftDeg(given.in('offset', 'mm'), shaftMm);
    const early = given.choice('way') === 'ahead';
    return [
      amount('shift', early ? 'Spark earlier by' : 'Spark later by', shift, '°', arc, {
        picture: shiftPicture(shaftMm, shift),
      }),
      words('meaning', 'Which means', shiftWords(shift, early), judgement),
    ];
  }),
  cautions: [
    'A running engine does not clear the key: one 15° out has been seen to run.',
    'New key of the maker’s soft metal, tapers clean and dry, nut to its torque. Never run with a shifted key.',
  ],
  sources: ['own arithmetic', 'public pages, read second-hand: 10° snatches the rope, 15° still ran'],
  examples: [
    {
      title: '1 mm at a 20 mm shaft: 5.73°',
      given: { offset: '1 mm', shaft: '20 mm' },
      expect: { shift: { value: 5.73, unit: '°', tolerance: 0.005 } },
      source: 'own arithmetic: 180/π · 1/10',
      mark: 'calculated',
    },
  ],
};

function shiftWords(degrees: number, early: boolean): string {
  if (degrees < 2) return 'Hardly felt, but the key has moved: replace it.';
  if (degrees < 8) return early ? 'Harder to start, sharper kick.' : 'Weak, hot, slow to start.';
  return early
    ? 'Snatches the rope and may not start: dangerous to the hand.'
    : 'Hardly runs, glowing exhaust, no power.';
}

function shiftPicture(shaftMm: number, shift: number): Picture {
  const most = Math.max(20, 1.2 * shift);
  return picture({
    title: 'Spark shift over key offset',
    says: 'The shift grows in proportion to the offset; on a thin shaft faster.',
    x: { label: 'Key offset', unit: 'mm' },
    y: { label: 'Spark shift', unit: '°' },
    curves: [
      curve('this shaft', spaced(0, keyOffsetMm(Math.min(57, most), shaftMm), 2), (offset) =>
        sparkShiftDeg(offset, shaftMm),
      ),
    ],
    marks: [{ x: keyOffsetMm(Math.min(57, shift), shaftMm), y: shift, label: 'this key' }],
    bands: [{ axis: 'y', from: 8, label: 'snatches the rope' }],
  });
}

export const coilGapSheet: Worksheet = {
  id: 'coil-gap',
  title: 'Coil air gap',
  question: 'Which card sets this coil gap, and is it right?',
  purpose: 'The gap that cards of a thickness set, what run-out and shaft play leave, against its limits.',
  fields: [
    ask(
      'length',
      'card',
      'Card',
      'Thickness of one: measure it. Business cards run 0.25 to 0.36 mm (common practice).',
      '0.012 in',
    ),
    {
      id: 'cards',
      label: 'Cards',
      help: 'How many lie under both legs; one stands.',
      kind: 'count',
      standard: '1',
      hint: '1',
    },
    standing(
      ask(
        'length',
        'run-out',
        'Run-out of the rim',
        'Full swing on a dial; 0 stands for not measured.',
        '0.004 in',
      ),
      '0 mm',
    ),
    standing(
      ask(
        'length',
        'play',
        'Side play of the shaft',
        'Full swing at the flywheel; 0 stands for not measured.',
        '0.003 in',
      ),
      '0 mm',
    ),
    optional(
      ask(
        'length',
        'least',
        'Least allowed',
        'From the maker’s sheet. Left empty, 0.006 in: of the class, not this engine’s.',
        '0.010 in',
      ),
    ),
    optional(
      ask(
        'length',
        'most',
        'Most allowed',
        'From the maker’s sheet. Left empty, 0.014 in: of the class, not this engine’s.',
        '0.014 in',
      ),
    ),
  ],
  compute: refusing({ runOut: 'run-out', shaftPlay: 'play' }, (given) => {
    const unit = given.quantity('card').unit;
    const gap = coilGap(
      given.in('card', 'mm'),
      given.number('cards'),
      given.in('run-out', 'mm'),
      given.in('play', 'mm'),
    );
    const perUnit = given.in('card', unit) / given.in('card', 'mm');
    const rule = computed('cards · thickness; half of run-out and play either way');
    return [
      amount('gap', 'Gap', gap.setMm * perUnit, unit, rule),
      amount('least-gap', 'Least in a turn', gap.leastMm * perUnit, unit, rule),
      amount('most-gap', 'Most in a turn', gap.mostMm * perUnit, unit, rule),
      gapVerdict(given, gap),
    ];
  }),
  cautions: [
    'Brass or plastic feelers and card only: a steel feeler sticks to the magnets.',
    'Turn the flywheel by hand afterward and listen: a coil that rubs is soon dead.',
  ],
  sources: ['public manual excerpts, read second-hand', 'own arithmetic'],
  examples: [
    {
      title: 'One 0.30 mm card, run-out 0.10, play 0.06: from 0.22 to 0.38 mm',
      given: { card: '0.30 mm', 'run-out': '0.10 mm', play: '0.06 mm', least: '0.25 mm', most: '0.40 mm' },
      expect: {
        gap: { value: 0.3, unit: 'mm', tolerance: 1e-9 },
        'least-gap': { value: 0.22, unit: 'mm', tolerance: 1e-9 },
        'most-gap': { value: 0.38, unit: 'mm', tolerance: 1e-9 },
        verdict: { text: 'pass' },
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
};

function gapVerdict(given: Given, { setMm, leastMm }: ReturnType<typeof coilGap>) {
  const least = optionalMm(given, 'least') ?? classCoilGapMm.least;
  const most = optionalMm(given, 'most') ?? classCoilGapMm.most;
  const own = given.has('least') || given.has('most');
  const origin = own
    ? ({ from: "maker's sheet", detail: 'the limit you gave' } as const)
    : ({
        from: 'rule of thumb',
        detail: 'gaps of the class, not this engine’s; public manual excerpts, read second-hand',
      } as const);
  if (leastMm <= 0)
    return verdict(
      'verdict',
      'Gap',
      'fail',
      'the magnets touch the coil in every turn: cure the shaft’s play first',
      origin,
    );
  if (setMm < least) return verdict('verdict', 'Gap', 'fail', 'too narrow: it may rub when warm', origin);
  if (setMm > most)
    return verdict('verdict', 'Gap', 'fail', 'too wide: weak spark at pull speed, and a little late', origin);
  return verdict('verdict', 'Gap', 'pass', 'inside the limits', origin);
}

export const ignitionSheets: readonly Worksheet[] = [sparkShift, coilGapSheet];
