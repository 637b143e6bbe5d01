import { of, to } from '../../quantity/index.js';
import {
  amount,
  ask,
  computed,
  curve,
  judgement,
  near,
  type Picture,
  picture,
  ruleOfThumb,
  spaced,
  verdict,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { classCoilGapMm, coilGap, keyOffsetMm, sparkShiftDeg } from '../ignition.js';

const arc = computed('arc over radius');

const sparkShift = worksheet({
  id: 'spark-shift',
  group: 'Speed and spark',
  title: 'Spark shift of a sheared key',
  question: 'How far does this key offset move the spark?',
  purpose: 'Degrees of crank for an offset seen at the keyway, and what they do.',
  fields: {
    offset: ask.in('mm', 'Offset', 'Between the edges of the two keyways, along the surface.', {
      hint: '1 mm',
      within: ['0 mm', '50 mm'],
    }),
    shaft: ask.in('mm', 'Shaft', 'Diameter of the taper where the offset is seen.', {
      hint: '20 mm',
      within: ['5 mm', '100 mm'],
    }),
    way: ask.choice(
      'Which way',
      'The rotor runs on when the shaft stops dead, so that ahead is usual; it stands (common practice).',
      { ahead: 'flywheel ahead of the shaft', behind: 'flywheel behind the shaft' },
      'ahead',
    ),
  },
  compute: ({ offset, shaft: shaftMm, way }) => {
    const shift = sparkShiftDeg(offset, shaftMm);
    const early = way === 'ahead';
    return [
      amount('shift', early ? 'Spark earlier by' : 'Spark later by', shift, '°', arc, {
        picture: shiftPicture(shaftMm, shift),
      }),
      words('meaning', 'Which means', shiftWords(shift, early), judgement),
    ];
  },
  cautions: [
    'A running engine does not clear the key: one 15° out has been seen to run.',
    'New key of the maker’s soft metal, tapers clean and dry, nut to its torque. Never run with a shifted key.',
  ],
  sources: ['own arithmetic', 'public pages, read second-hand: 10° snatches the rope, 15° still ran'],
  examples: [
    {
      title: '1 mm at a 20 mm shaft: 5.73°',
      given: { offset: '1 mm', shaft: '20 mm' },
      expect: { shift: near(5.73, 0.005, '°') },
      source: 'own arithmetic: 180/π · 1/10',
      mark: 'calculated',
    },
  ],
});

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

const coilGapSheet = worksheet({
  id: 'coil-gap',
  group: 'Setting clearances',
  title: 'Coil air gap',
  question: 'Which card sets this coil gap, and is it right?',
  purpose: 'The gap that cards of a thickness set, what run-out and shaft play leave, against its limits.',
  fields: {
    card: ask.quantity(
      'length',
      'Card',
      'Thickness of one: measure it. Business cards run 0.25 to 0.36 mm (common practice).',
      { hint: '0.012 in', within: ['0.05 mm', '3 mm'] },
    ),
    cards: ask.count('Cards', 'How many lie under both legs; one stands.', {
      standard: '1',
      within: [1, 20],
    }),
    'run-out': ask.in('mm', 'Run-out of the rim', 'Full swing on a dial. Left empty, not measured.', {
      optional: true,
      hint: '0.004 in',
      within: ['0 mm', '5 mm'],
    }),
    play: ask.in('mm', 'Side play of the shaft', 'Full swing at the flywheel. Left empty, not measured.', {
      optional: true,
      hint: '0.003 in',
      within: ['0 mm', '5 mm'],
    }),
    least: ask.in(
      'mm',
      'Least allowed',
      'From the maker’s sheet. Left empty, 0.006 in: of the class, not this engine’s.',
      { hint: '0.010 in', optional: true, within: ['0.05 mm', '5 mm'] },
    ),
    most: ask.in(
      'mm',
      'Most allowed',
      'From the maker’s sheet. Left empty, 0.014 in: of the class, not this engine’s.',
      { hint: '0.014 in', optional: true, within: ['0.05 mm', '5 mm'] },
    ),
  },
  compute: ({ card, cards, 'run-out': runOut, play, least, most }) => {
    const gap = coilGap(to(card, 'mm'), cards, runOut, play);
    const measured = runOut !== undefined && play !== undefined;
    const rule = computed('cards · thickness; half of run-out and play either way');
    const inUnit = (id: string, label: string, mm: number) =>
      amount(id, label, to(of(mm, 'mm'), card.unit), card.unit, rule);
    return [
      inUnit('gap', 'Gap', gap.setMm),
      ...(measured
        ? [
            inUnit('least-gap', 'Least in a turn', gap.leastMm),
            inUnit('most-gap', 'Most in a turn', gap.mostMm),
          ]
        : []),
      gapVerdict(least, most, gap, measured),
    ];
  },
  names: { runOut: 'run-out', shaftPlay: 'play' },
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
        gap: near(0.3, 1e-9, 'mm'),
        'least-gap': near(0.22, 1e-9, 'mm'),
        'most-gap': near(0.38, 1e-9, 'mm'),
        verdict: { text: 'pass' },
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

const ofTheClass = ruleOfThumb(
  'gaps of the class, not this engine’s; public manual excerpts, read second-hand',
);

function gapVerdict(
  least: number | undefined,
  most: number | undefined,
  gap: ReturnType<typeof coilGap>,
  measured: boolean,
) {
  const own = least !== undefined || most !== undefined;
  const origin = own ? ({ from: "maker's sheet", detail: 'the limit you gave' } as const) : ofTheClass;
  const says = (decided: 'pass' | 'fail' | 'cannot-decide', text: string) =>
    verdict('verdict', 'Gap', decided, text, origin);
  if (gap.leastMm <= 0)
    return says('fail', 'the magnets touch the coil in every turn: cure the shaft’s play first');
  const [narrowest, widest] = own
    ? [least ?? 0, most ?? Number.POSITIVE_INFINITY]
    : [classCoilGapMm.least, classCoilGapMm.most];
  const stands =
    gap.setMm < narrowest
      ? 'too narrow: it may rub when warm'
      : gap.setMm > widest
        ? 'too wide: weak spark at pull speed, and a little late'
        : 'inside the limits';
  if (!own)
    return says('cannot-decide', `class figure only: ${stands}. Only this engine’s own limit decides.`);
  if (stands !== 'inside the limits') return says('fail', stands);
  if (!measured)
    return says('cannot-decide', 'set inside the limits, but run-out and side play were not measured');
  return says('pass', stands);
}

export const ignitionSheets = [sparkShift, coilGapSheet];
