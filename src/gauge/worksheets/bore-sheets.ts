import { to } from '../../quantity/index.js';
import { amount, ask, computed, lines, near, practice, words, worksheet } from '../../worksheet/index.js';
import { type BoreCell, type BoreMap, boreMap } from '../bore-map.js';
import { classFigures } from '../class-figures.js';
import { clearance } from '../clearance.js';
import { GaugeError } from '../error.js';
import { chooseOversize, type OversizeAnswer } from '../oversize.js';
import { fitVerdict, verdict } from './answers.js';
import {
  diameterSpan,
  limitAnswer,
  limitField,
  limitFields,
  listIn,
  standardIn,
  toleranceField,
  toolSpan,
  type UsedLimit,
  usedLimit,
} from './fields.js';

const spreadRule = computed(
  'largest less smallest, decided with the noise of picking (order statistics; JCGM 106:2012)',
);
const arithmetic = 'own arithmetic';
const dialBoreGauge = toleranceField('Bore gauge, k = 2', 'a dial bore gauge', '0.0003 in');

export const boreMapSheet = worksheet({
  id: 'bore-map',
  group: 'Is it worn?',
  title: 'Bore map',
  question: 'Is this bore worn out?',
  purpose:
    'Wear, taper and out-of-round from readings at depths and directions, each decided with the tool’s uncertainty.',
  fields: {
    standard: ask.quantity(
      'length',
      'Standard bore',
      'Size when new, or the size it was last bored to. Look for an oversize stamped on the piston.',
      { hint: '2.5625 in', within: diameterSpan },
    ),
    diameters: ask.list(
      'length',
      'Diameters',
      'Depth by depth from the top: all directions of the first depth, then of the next. The unit may stand once, at the end.',
      { hint: '2.5650; 2.5635; 2.5640; 2.5632; 2.5628; 2.5627 in', within: diameterSpan },
    ),
    directions: ask.count(
      'Directions',
      'How many directions at each depth; two are usual, along and across the crank (common practice).',
      { standard: '2', hint: '2', within: [1, 12] },
    ),
    depths: ask.list(
      'length',
      'Depths',
      'Below the top face, one for each row. Left empty, the rows are numbered.',
      {
        hint: '0.5; 1.25; 2 in',
        optional: true,
        within: ['0 mm', '400 mm'],
      },
    ),
    uncertainty: dialBoreGauge,
    setting: ask.quantity(
      'length',
      'Setting ring or micrometer, k = 2',
      'Uncertainty all readings share. It matters for wear and drops out of taper and out-of-round.',
      { hint: '0.0001 in', optional: true, within: toolSpan },
    ),
    wear: limitField('Wear allowed', classFigures.boreWear),
    taper: limitField('Taper allowed', classFigures.boreTaper),
    'out-of-round': limitField('Out-of-round allowed', classFigures.boreOutOfRound),
  },
  names: { u: 'uncertainty', common: 'setting', count: 'diameters' },
  compute: ({ standard, diameters, directions, depths, uncertainty, setting, ...allowed }) => {
    const { unit } = standard;
    const limits = {
      wear: usedLimit(classFigures.boreWear, unit, { most: allowed.wear }),
      taper: usedLimit(classFigures.boreTaper, unit, { most: allowed.taper }),
      outOfRound: usedLimit(classFigures.boreOutOfRound, unit, { most: allowed['out-of-round'] }),
    };
    const rows = rowsOf(listIn(diameters, unit), directions);
    const map = boreMap({
      depths: depths ? listIn(depths, unit) : rows.map((_, i) => i + 1),
      directions: directionNames(directions),
      diameters: rows,
      standard: to(standard, unit),
      u: standardIn(uncertainty, unit),
      common: setting ? standardIn(setting, unit) : 0,
      limits: {
        wear: limits.wear.limit.max,
        taper: limits.taper.limit.max,
        outOfRound: limits.outOfRound.limit.max,
      },
      unit,
    });
    const down = (depth: number) => (depths ? `${Number(depth.toFixed(4))} ${unit} down` : `row ${depth}`);
    const place = ({ depth, direction }: BoreCell) => `${down(depth)}, ${direction}`;
    const { wear, taper, outOfRound } = map.decisions;
    return [
      amount('wear', 'Wear', map.wear, unit, spreadRule, { note: place(map.largest) }),
      ...(wear ? [verdict('wear-verdict', 'Wear', wear, limits.wear.origin)] : []),
      amount('taper', 'Taper', map.taper.value, unit, spreadRule, { note: map.taper.direction }),
      ...(taper ? [verdict('taper-verdict', 'Taper', taper, limits.taper.origin)] : []),
      amount('out-of-round', 'Out-of-round', map.outOfRound.value, unit, spreadRule, {
        note: down(map.outOfRound.depth),
      }),
      ...(outOfRound ? [verdict('round-verdict', 'Out-of-round', outOfRound, limits.outOfRound.origin)] : []),
      amount('largest', 'Largest diameter', map.largest.diameter, unit, spreadRule, {
        note: 'take this one to the oversize sheet',
      }),
      lines('map', 'Growth at each place', growthLines(map, place, unit), spreadRule),
      lines('cautions', 'Mind', map.cautions, practice),
    ];
  },
  cautions: [
    'Measure a clean, cold bore. Rock the gauge: the smallest size it shows is the diameter.',
    'Below the lowest ring the bore is nearly as new: use it to check the standard size.',
  ],
  sources: ['common practice', 'JCGM 106:2012'],
  examples: [
    {
      title: 'Two depths, two directions',
      given: {
        standard: '2.5625 in',
        diameters: '2.5650; 2.5635; 2.5630; 2.5628 in',
        directions: '2',
        wear: '0.003 in',
        taper: '0.002 in',
        'out-of-round': '0.003 in',
      },
      expect: {
        wear: near(0.0025, 1e-9, 'in'),
        taper: near(0.002, 1e-9, 'in'),
        'out-of-round': near(0.0015, 1e-9, 'in'),
        'wear-verdict': { text: 'pass' },
        'taper-verdict': { text: 'cannot-decide' },
        'round-verdict': { text: 'pass' },
      },
      source: `${arithmetic}: differences of the readings`,
      mark: 'calculated',
    },
  ],
});

function rowsOf(diameters: readonly number[], directions: number): number[][] {
  const rows = diameters.length / directions;
  if (!Number.isInteger(rows))
    throw new GaugeError(
      `${diameters.length} diameters do not make full rows of ${directions} directions.`,
      'diameters',
      diameters.length,
    );
  return Array.from({ length: rows }, (_, i) => diameters.slice(i * directions, (i + 1) * directions));
}

const directionNames = (count: number): readonly string[] =>
  count === 2
    ? ['along the crank', 'across the crank']
    : Array.from({ length: count }, (_, j) => `direction ${j + 1}`);

function growthLines({ cells }: BoreMap, place: (cell: BoreCell) => string, unit: string): string[] {
  return cells.map((cell) => {
    const sign = cell.growth >= 0 ? '+' : '';
    return `${place(cell)}: ${sign}${Number(cell.growth.toFixed(6))} ${unit}`;
  });
}

export const boreOversize = worksheet({
  id: 'bore-oversize',
  group: 'Is it worn?',
  title: 'Next oversize that cleans up',
  question: 'Which oversize will clean this bore up, and how will the piston fit?',
  purpose: 'The smallest size on the list that surely takes the wear out, with the clearance of its piston.',
  fields: {
    standard: ask.quantity('length', 'Standard bore', 'Size when new.', {
      hint: '2.5625 in',
      within: diameterSpan,
    }),
    largest: ask.quantity('length', 'Largest diameter', 'From the bore map.', {
      hint: '2.5675 in',
      within: diameterSpan,
    }),
    oversizes: ask.list(
      'length',
      'Oversizes sold',
      'Over standard; 0.010, 0.020 and 0.030 in stand as the usual ones (common practice). Write what you can really buy.',
      { standard: '0.010; 0.020; 0.030 in', hint: '0.010; 0.020 in', within: ['0.01 mm', '10 mm'] },
    ),
    'clean-up': ask.quantity(
      'length',
      'Stock for the hone',
      'Left on the diameter after the last trace of wear; 0.002 in stands (trade judgement, no source).',
      { standard: '0.002 in', hint: '0.002 in', within: ['0 mm', '2 mm'] },
    ),
    center: ask.choice(
      'Where the new bore stands',
      'A boring bar set on the worn hole follows it. One set on the old center needs twice the depth of wear on one wall.',
      { worn: 'on the worn hole', old: 'on the old center' },
      'old',
    ),
    uncertainty: dialBoreGauge,
    piston: ask.quantity(
      'length',
      'Standard piston',
      'Skirt diameter of the standard piston; gives the clearance, if the oversize piston grows by the same amount.',
      { hint: '2.5585 in', optional: true, within: diameterSpan },
    ),
    ...limitFields(classFigures.pistonClearance),
  },
  names: { u: 'uncertainty', cleanUp: 'clean-up' },
  compute: ({ standard, largest, oversizes, center, uncertainty, piston, ...given }) => {
    const { unit } = standard;
    const answer = chooseOversize({
      standard: to(standard, unit),
      largest: to(largest, unit),
      u: standardIn(uncertainty, unit),
      oversizes: listIn(oversizes, unit),
      cleanUp: to(given['clean-up'], unit),
      center,
      unit,
    });
    const used = usedLimit(classFigures.pistonClearance, unit, given);
    return [
      words('choice', 'Choice', answer.words, oversizeRule),
      ...(answer.choice ? finishedAnswers(answer.choice, unit) : []),
      ...(answer.choice && piston ? pistonAnswers(answer.choice, to(piston, unit), used, unit) : []),
      lines('sizes', 'Every size', sizeLines(answer, unit), oversizeRule),
    ];
  },
  cautions: [
    'Have the piston in hand and measure it before the block is bored.',
    'Check that rings of that size exist too.',
  ],
  sources: ['common practice: bore to standard plus oversize, the piston carries the clearance'],
  examples: [
    {
      title: '0.005 in worn, on the worn hole: 0.010 in over leaves 0.005 in of stock',
      given: {
        standard: '2.5625 in',
        largest: '2.5675 in',
        center: 'worn',
        oversizes: '0.010; 0.020 in',
        piston: '2.5585 in',
      },
      expect: {
        oversize: near(0.01, 1e-9, 'in'),
        finished: near(2.5725, 1e-9, 'in'),
        stock: near(0.005, 1e-9, 'in'),
        clearance: near(0.004, 1e-9, 'in'),
      },
      source: `${arithmetic}: 2.5625 + 0.010 − 2.5675`,
      mark: 'calculated',
    },
    {
      title: 'The same bore kept on its old center needs 0.020 in',
      given: { standard: '2.5625 in', largest: '2.5675 in', center: 'old', oversizes: '0.010; 0.020 in' },
      expect: {
        oversize: near(0.02, 1e-9, 'in'),
        stock: near(0.01, 1e-9, 'in'),
      },
      source: `${arithmetic}: 0.020 − 2 × 0.005`,
      mark: 'calculated',
    },
  ],
});

const oversizeRule = computed(
  'finished size less worn size, decided with the uncertainty of the reading (JCGM 106:2012)',
);

type Choice = NonNullable<OversizeAnswer['choice']>;

const finishedAnswers = ({ oversize, finished, stock }: Choice, unit: string) => [
  amount('oversize', 'Oversize', oversize, unit, oversizeRule),
  amount('finished', 'Bore to', finished, unit, oversizeRule),
  amount('stock', 'Stock beyond the wear', stock, unit, oversizeRule),
];

function pistonAnswers({ oversize, finished }: Choice, piston: number, used: UsedLimit, unit: string) {
  const found = clearance({
    ...{ hole: finished, shaft: piston + oversize, uHole: 0, uShaft: 0, unit },
  });
  return [
    amount(
      'clearance',
      'Piston clearance',
      found.clearance,
      unit,
      computed('bore less piston, both taken at their nominal size'),
      { note: 'measure the real piston' },
    ),
    fitVerdict(
      ['fit', 'Fit'],
      { value: found.clearance, u: 0, unit },
      used,
      'the piston is larger than its bore',
    ),
    limitAnswer(used, unit),
  ];
}

function sizeLines({ choices }: OversizeAnswer, unit: string): string[] {
  const said = (x: number) => `${Number(x.toFixed(6))} ${unit}`;
  return choices.map(
    ({ oversize, stock, cleansUp }) => `${said(oversize)}: stock ${said(stock)}, ${cleansUp.verdict}`,
  );
}
