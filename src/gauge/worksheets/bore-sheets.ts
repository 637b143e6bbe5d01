import {
  amount,
  computed,
  type OldGiven as Given,
  lines,
  oldOptional as optional,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { type BoreCell, type BoreMap, boreMap } from '../bore-map.js';
import { classFigures } from '../class-figures.js';
import { clearance } from '../clearance.js';
import { GaugeError } from '../error.js';
import { chooseOversize, type OversizeAnswer } from '../oversize.js';
import { refusing, verdict } from './answers.js';
import {
  lengthField,
  limitAnswer,
  limitField,
  limitFields,
  listIn,
  standardFrom,
  toleranceField,
  usedLimit,
} from './fields.js';

const spreadRule = computed(
  'largest less smallest, decided with the noise of picking (order statistics; JCGM 106:2012)',
);
const arithmetic = 'own arithmetic';
const dialBoreGauge = toleranceField('uncertainty', 'Bore gauge, k = 2', 'a dial bore gauge', '0.0003 in');

export const boreMapSheet: Worksheet = {
  id: 'bore-map',
  title: 'Bore map',
  question: 'Is this bore worn out?',
  purpose:
    'Wear, taper and out-of-round from readings at depths and directions, each decided with the tool’s uncertainty.',
  fields: [
    lengthField(
      'standard',
      'Standard bore',
      'Size when new, or the size it was last bored to. Look for an oversize stamped on the piston.',
      '2.5625 in',
    ),
    {
      id: 'diameters',
      label: 'Diameters',
      help: 'Depth by depth from the top: all directions of the first depth, then of the next. The unit may stand once, at the end.',
      kind: 'list',
      of: 'length',
      hint: '2.5650; 2.5635; 2.5640; 2.5632; 2.5628; 2.5627 in',
    },
    {
      id: 'directions',
      label: 'Directions',
      help: 'How many directions at each depth; two are usual, along and across the crank (common practice).',
      kind: 'count',
      standard: '2',
      hint: '2',
    },
    {
      id: 'depths',
      label: 'Depths',
      help: 'Below the top face, one for each row. Left empty, the rows are numbered.',
      kind: 'list',
      of: 'length',
      required: false,
      hint: '0.5; 1.25; 2 in',
    },
    dialBoreGauge,
    optional(
      lengthField(
        'setting',
        'Setting ring or micrometer, k = 2',
        'Uncertainty all readings share. It matters for wear and drops out of taper and out-of-round.',
        '0.0001 in',
      ),
    ),
    limitField('wear', 'Wear allowed', classFigures.boreWear),
    limitField('taper', 'Taper allowed', classFigures.boreTaper),
    limitField('out-of-round', 'Out-of-round allowed', classFigures.boreOutOfRound),
  ],
  compute: refusing({ u: 'uncertainty', common: 'setting', count: 'diameters' }, (given) => {
    const unit = given.quantity('standard').unit;
    const limits = boreLimits(given, unit);
    const map = mapFrom(given, unit, limits);
    const { wear, taper, outOfRound } = map.decisions;
    return [
      amount('wear', 'Wear', map.wear, unit, spreadRule, {
        note: placeWords(given, map.largest, unit),
      }),
      ...(wear ? [verdict('wear-verdict', 'Wear', wear, limits.wear.origin)] : []),
      amount('taper', 'Taper', map.taper.value, unit, spreadRule, { note: map.taper.direction }),
      ...(taper ? [verdict('taper-verdict', 'Taper', taper, limits.taper.origin)] : []),
      amount('out-of-round', 'Out-of-round', map.outOfRound.value, unit, spreadRule, {
        note: depthWords(given, map.outOfRound.depth, unit),
      }),
      ...(outOfRound ? [verdict('round-verdict', 'Out-of-round', outOfRound, limits.outOfRound.origin)] : []),
      amount('largest', 'Largest diameter', map.largest.diameter, unit, spreadRule, {
        note: 'take this one to the oversize sheet',
      }),
      lines('map', 'Growth at each place', growthLines(given, map, unit), spreadRule),
      lines('cautions', 'Mind', map.cautions, { from: 'rule of thumb', detail: 'common practice' }),
    ];
  }),
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
        wear: { value: 0.0025, unit: 'in', tolerance: 1e-9 },
        taper: { value: 0.002, unit: 'in', tolerance: 1e-9 },
        'out-of-round': { value: 0.0015, unit: 'in', tolerance: 1e-9 },
        'wear-verdict': { text: 'pass' },
        'taper-verdict': { text: 'cannot-decide' },
        'round-verdict': { text: 'pass' },
      },
      source: `${arithmetic}: differences of the readings`,
      mark: 'calculated',
    },
  ],
};

function boreLimits(given: Given, unit: string) {
  const side = (id: string, figure: Parameters<typeof usedLimit>[1]) =>
    usedLimit(given, figure, unit, id, id);
  return {
    wear: side('wear', classFigures.boreWear),
    taper: side('taper', classFigures.boreTaper),
    outOfRound: side('out-of-round', classFigures.boreOutOfRound),
  };
}

function mapFrom(given: Given, unit: string, limits: ReturnType<typeof boreLimits>): BoreMap {
  const columns = given.number('directions');
  const all = listIn(given, 'diameters', unit);
  if (columns < 1 || all.length % columns !== 0)
    throw new GaugeError(
      `${all.length} diameters do not make full rows of ${columns} directions.`,
      'diameters',
      all.length,
    );
  const rows = all.length / columns;
  return boreMap({
    depths: given.has('depths')
      ? listIn(given, 'depths', unit)
      : Array.from({ length: rows }, (_, i) => i + 1),
    directions:
      columns === 2
        ? ['along the crank', 'across the crank']
        : Array.from({ length: columns }, (_, j) => `direction ${j + 1}`),
    diameters: Array.from({ length: rows }, (_, i) => all.slice(i * columns, (i + 1) * columns)),
    standard: given.in('standard', unit),
    u: standardFrom(given, 'uncertainty', unit),
    common: given.has('setting') ? standardFrom(given, 'setting', unit) : 0,
    limits: {
      wear: limits.wear.limit.max,
      taper: limits.taper.limit.max,
      outOfRound: limits.outOfRound.limit.max,
    },
    unit,
  });
}

function growthLines(given: Given, { cells }: BoreMap, unit: string): string[] {
  return cells.map((cell) => {
    const sign = cell.growth >= 0 ? '+' : '';
    return `${placeWords(given, cell, unit)}: ${sign}${Number(cell.growth.toFixed(6))} ${unit}`;
  });
}

function placeWords(given: Given, { depth, direction }: BoreCell, unit: string): string {
  return `${depthWords(given, depth, unit)}, ${direction}`;
}

const depthWords = (given: Given, depth: number, unit: string) =>
  given.has('depths') ? `${Number(depth.toFixed(4))} ${unit} down` : `row ${depth}`;

export const boreOversize: Worksheet = {
  id: 'bore-oversize',
  title: 'Next oversize that cleans up',
  question: 'Which oversize will clean this bore up, and how will the piston fit?',
  purpose: 'The smallest size on the list that surely takes the wear out, with the clearance of its piston.',
  fields: [
    lengthField('standard', 'Standard bore', 'Size when new.', '2.5625 in'),
    lengthField('largest', 'Largest diameter', 'From the bore map.', '2.5675 in'),
    {
      id: 'oversizes',
      label: 'Oversizes sold',
      help: 'Over standard; 0.010, 0.020 and 0.030 in stand as the usual ones (common practice). Write what you can really buy.',
      kind: 'list',
      of: 'length',
      standard: '0.010; 0.020; 0.030 in',
      hint: '0.010; 0.020 in',
    },
    {
      ...lengthField(
        'clean-up',
        'Stock for the hone',
        'Left on the diameter after the last trace of wear; 0.002 in stands (trade judgement, no source).',
        '0.002 in',
      ),
      standard: '0.002 in',
    },
    {
      id: 'center',
      label: 'Where the new bore stands',
      help: 'A boring bar set on the worn hole follows it. One set on the old center needs twice the depth of wear on one wall.',
      kind: 'choice',
      choices: [
        { id: 'worn', label: 'on the worn hole' },
        { id: 'old', label: 'on the old center' },
      ],
      standard: 'old',
    },
    dialBoreGauge,
    optional(
      lengthField(
        'piston',
        'Standard piston',
        'Skirt diameter of the standard piston; gives the clearance, if the oversize piston grows by the same amount.',
        '2.5585 in',
      ),
    ),
    ...limitFields(classFigures.pistonClearance),
  ],
  compute: refusing({ u: 'uncertainty', cleanUp: 'clean-up' }, (given) => {
    const unit = given.quantity('standard').unit;
    const answer = chooseOversize({
      standard: given.in('standard', unit),
      largest: given.in('largest', unit),
      u: standardFrom(given, 'uncertainty', unit),
      oversizes: listIn(given, 'oversizes', unit),
      cleanUp: given.in('clean-up', unit),
      center: given.choice('center') === 'worn' ? 'worn' : 'old',
      unit,
    });
    return [
      words('choice', 'Choice', answer.words, oversizeRule),
      ...(answer.choice ? finishedAnswers(given, answer.choice, unit) : []),
      lines('sizes', 'Every size', sizeLines(answer, unit), oversizeRule),
    ];
  }),
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
        oversize: { value: 0.01, unit: 'in', tolerance: 1e-9 },
        finished: { value: 2.5725, unit: 'in', tolerance: 1e-9 },
        stock: { value: 0.005, unit: 'in', tolerance: 1e-9 },
        clearance: { value: 0.004, unit: 'in', tolerance: 1e-9 },
      },
      source: `${arithmetic}: 2.5625 + 0.010 − 2.5675`,
      mark: 'calculated',
    },
    {
      title: 'The same bore kept on its old center needs 0.020 in',
      given: { standard: '2.5625 in', largest: '2.5675 in', center: 'old', oversizes: '0.010; 0.020 in' },
      expect: {
        oversize: { value: 0.02, unit: 'in', tolerance: 1e-9 },
        stock: { value: 0.01, unit: 'in', tolerance: 1e-9 },
      },
      source: `${arithmetic}: 0.020 − 2 × 0.005`,
      mark: 'calculated',
    },
  ],
};

const oversizeRule = computed(
  'finished size less worn size, decided with the uncertainty of the reading (JCGM 106:2012)',
);

function finishedAnswers(
  given: Given,
  { oversize, finished, stock }: NonNullable<OversizeAnswer['choice']>,
  unit: string,
) {
  return [
    amount('oversize', 'Oversize', oversize, unit, oversizeRule),
    amount('finished', 'Bore to', finished, unit, oversizeRule),
    amount('stock', 'Stock beyond the wear', stock, unit, oversizeRule),
    ...(given.has('piston') ? pistonAnswers(given, finished, given.in('piston', unit) + oversize, unit) : []),
  ];
}

function pistonAnswers(given: Given, hole: number, shaft: number, unit: string) {
  const used = usedLimit(given, classFigures.pistonClearance, unit);
  const found = clearance({ hole, shaft, uHole: 0, uShaft: 0, limit: used.limit, unit });
  return [
    amount(
      'clearance',
      'Piston clearance',
      found.clearance,
      unit,
      computed('bore less piston, both taken at their nominal size'),
      { note: 'measure the real piston' },
    ),
    verdict('fit', 'Fit', found.decision!, used.origin),
    limitAnswer(used, unit),
  ];
}

function sizeLines({ choices }: OversizeAnswer, unit: string): string[] {
  const said = (x: number) => `${Number(x.toFixed(6))} ${unit}`;
  return choices.map(
    ({ oversize, stock, cleansUp }) => `${said(oversize)}: stock ${said(stock)}, ${cleansUp.verdict}`,
  );
}
