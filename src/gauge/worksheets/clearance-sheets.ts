import {
  amount,
  computed,
  type OldGiven as Given,
  type OldWorksheet as Worksheet,
} from '../../worksheet/index.js';
import { type ClassFigure, classFigures } from '../class-figures.js';
import { clearance, clearanceFromWobble } from '../clearance.js';
import { decide } from '../decide.js';
import { decideExtreme, decideSpread } from '../spread.js';
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

const difference = computed('hole less shaft; uncertainties by JCGM 100:2008, 5.1.2');

interface Pair {
  readonly id: string;
  readonly title: string;
  readonly question: string;
  readonly hole: readonly [label: string, help: string, hint: string, tool: string, standard: string];
  readonly shaft: readonly [label: string, help: string, hint: string, tool: string, standard: string];
  readonly figure: ClassFigure;
  readonly cautions: readonly string[];
  readonly examples: Worksheet['examples'];
}

/** Three fits are one calculation with other words. */
function pairSheet({ hole, shaft, figure, ...pair }: Pair): Worksheet {
  return {
    ...pair,
    purpose: 'Clearance from two diameters, decided with the uncertainty of both tools.',
    fields: [
      lengthField('hole', hole[0], hole[1], hole[2]),
      toleranceField('hole-uncertainty', 'Tool for the hole, k = 2', hole[3], hole[4]),
      lengthField('shaft', shaft[0], shaft[1], shaft[2]),
      toleranceField('shaft-uncertainty', 'Tool for the shaft, k = 2', shaft[3], shaft[4]),
      ...limitFields(figure),
    ],
    compute: refusing({ uHole: 'hole-uncertainty', uShaft: 'shaft-uncertainty', limit: 'most' }, (given) =>
      pairAnswers(given, figure),
    ),
    sources: ['JCGM 100:2008, 5.1.2', `class figure: ${figure.source}`],
  };
}

function pairAnswers(given: Given, figure: ClassFigure) {
  const unit = given.quantity('hole').unit;
  const used = usedLimit(given, figure, unit);
  const found = clearance({
    hole: given.in('hole', unit),
    shaft: given.in('shaft', unit),
    uHole: standardFrom(given, 'hole-uncertainty', unit),
    uShaft: standardFrom(given, 'shaft-uncertainty', unit),
    limit: used.limit,
    unit,
  });
  return [
    amount('clearance', 'Clearance', found.clearance, unit, difference, {
      u: found.u,
      ...(found.clearance < 0 && { note: 'negative: the shaft is larger than the hole' }),
    }),
    verdict('verdict', 'Fit', found.decision!, used.origin),
    limitAnswer(used, unit),
  ];
}

const micrometer = ['a micrometer', '0.0002 in'] as const;

export const pistonClearance = pairSheet({
  id: 'piston-clearance',
  title: 'Piston clearance',
  question: 'Does this piston fit its bore?',
  hole: ['Bore', 'Across the crank, where the skirt runs.', '2.5640 in', 'a dial bore gauge', '0.0003 in'],
  shaft: [
    'Piston skirt',
    'Square to the pin, near the foot of the skirt, where the maker’s sheet says.',
    '2.5590 in',
    ...micrometer,
  ],
  figure: classFigures.pistonClearance,
  cautions: [
    'A piston is oval and tapered: the place of measurement is part of the specification.',
    'Part and tool at one temperature: aluminum grows twice as fast as iron.',
  ],
  examples: [
    {
      title: 'Bore 2.5640, piston 2.5580: 0.0060 in, on the limit, cannot decide',
      given: { hole: '2.5640 in', shaft: '2.5580 in', most: '0.006 in' },
      expect: {
        clearance: { value: 0.006, unit: 'in', tolerance: 1e-9 },
        verdict: { text: 'cannot-decide' },
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

export const crankpinClearance = pairSheet({
  id: 'crankpin-clearance',
  title: 'Crankpin clearance',
  question: 'Is the rod worn on its crankpin?',
  hole: [
    'Rod bore',
    'Cap on, right way round, bolts at their torque.',
    '1.0012 in',
    'a telescopic gauge and micrometer',
    '0.0007 in',
  ],
  shaft: ['Crankpin', 'Smallest of four readings.', '0.9994 in', ...micrometer],
  figure: classFigures.crankpinClearance,
  cautions: [
    'Aluminum rods smear onto the pin: clean the pin before measuring, never with a file.',
    'A plastic gauge strip is quicker; do not turn the crank on it.',
  ],
  examples: [
    {
      title: 'Rod 1.0032, pin 0.9992: 0.0040 in is over 0.0025 in for sure',
      given: { hole: '1.0032 in', shaft: '0.9992 in', most: '0.0025 in' },
      expect: { clearance: { value: 0.004, unit: 'in', tolerance: 1e-9 }, verdict: { text: 'fail' } },
      source: 'own arithmetic: 0.0015 in outside at u = 0.00036 in',
      mark: 'calculated',
    },
  ],
});

export const guideClearance = pairSheet({
  id: 'guide-clearance',
  title: 'Valve guide clearance',
  question: 'Is the valve guide worn?',
  hole: [
    'Guide bore',
    'Largest found, near the ends: guides wear bell-mouthed.',
    '0.2530 in',
    'a small-hole gauge and micrometer',
    '0.0005 in',
  ],
  shaft: ['Stem', 'Where it runs in the guide, smallest found.', '0.2500 in', ...micrometer],
  figure: classFigures.guideClearance,
  cautions: ['Clean carbon and varnish out of the guide first; they hide wear.'],
  examples: [
    {
      title: 'Guide 0.2530, stem 0.2500: 0.0030 in is well inside 0.0045 in',
      given: { hole: '0.2530 in', shaft: '0.2500 in', most: '0.0045 in' },
      expect: { clearance: { value: 0.003, unit: 'in', tolerance: 1e-9 }, verdict: { text: 'pass' } },
      source: 'own arithmetic; limit from TM 5-4310-276-14',
      mark: 'calculated',
    },
  ],
});

export const guideWobble: Worksheet = {
  id: 'guide-wobble',
  title: 'Guide wear from wobble',
  question: 'The valve rocks in its guide: how much clearance is that?',
  purpose: 'Stem clearance from the rock of the valve head under an indicator.',
  fields: [
    lengthField(
      'rock',
      'Rock at the head',
      'Whole travel of the indicator, valve held a little off its seat.',
      '0.010 in',
    ),
    lengthField(
      'lever',
      'Head to guide',
      'From where the indicator touches to the near end of the guide, along the stem.',
      '0.8 in',
    ),
    lengthField('guide', 'Guide length', 'Length that carries the stem.', '1.6 in'),
    toleranceField('uncertainty', 'Indicator, k = 2', 'a dial indicator', '0.001 in'),
    ...limitFields(classFigures.guideClearance),
  ],
  compute: refusing({ u: 'uncertainty', limit: 'most' }, (given) => {
    const unit = given.quantity('rock').unit;
    const used = usedLimit(given, classFigures.guideClearance, unit);
    const through = (rock: number) =>
      clearanceFromWobble(rock, given.in('lever', unit), given.in('guide', unit));
    const value = through(given.in('rock', unit));
    const u = through(standardFrom(given, 'uncertainty', unit));
    return [
      amount(
        'clearance',
        'Clearance',
        value,
        unit,
        computed('rock/(2·lever/guide + 1): a straight stem in a straight guide'),
        { u },
      ),
      verdict('verdict', 'Guide', decide({ value, u, limit: used.limit, unit }), used.origin),
      limitAnswer(used, unit),
    ];
  }),
  cautions: [
    'A bell-mouthed guide rocks more than its clearance says: a pass is sure, a fail wants the small-hole gauge.',
  ],
  sources: ['geometry; own derivation', `class figure: ${classFigures.guideClearance.source}`],
  examples: [
    {
      title: 'Rock 0.010 in, head half a guide length out: 0.005 in',
      given: { rock: '0.010 in', lever: '0.8 in', guide: '1.6 in' },
      expect: { clearance: { value: 0.005, unit: 'in', tolerance: 1e-9 } },
      source: 'own arithmetic: 0.010/(2 × 0.5 + 1)',
      mark: 'calculated',
    },
  ],
};

export const journalWear: Worksheet = {
  id: 'journal-wear',
  title: 'Crankpin wear',
  question: 'Is this crankpin still good?',
  purpose: 'Wear and out-of-round of a journal from several micrometer readings.',
  fields: [
    lengthField('standard', 'Standard size', 'When new, from the maker’s sheet.', '1.0000 in'),
    {
      id: 'diameters',
      label: 'Diameters',
      help: 'Four or more: two directions at each end (common practice).',
      kind: 'list',
      of: 'length',
      hint: '0.9996; 0.9995; 0.9996; 0.9994 in',
    },
    toleranceField('uncertainty', 'Micrometer, k = 2', 'a micrometer', '0.0002 in'),
    limitField('wear', 'Under size allowed', classFigures.journalWear),
    limitField('out-of-round', 'Out-of-round allowed', classFigures.journalOutOfRound),
  ],
  compute: refusing({ u: 'uncertainty', count: 'diameters' }, (given) => {
    const unit = given.quantity('standard').unit;
    const diameters = listIn(given, 'diameters', unit);
    const [u, count] = [standardFrom(given, 'uncertainty', unit), diameters.length];
    const wear = usedLimit(given, classFigures.journalWear, unit, 'wear', 'wear');
    const round = usedLimit(given, classFigures.journalOutOfRound, unit, 'out-of-round', 'out-of-round');
    const under = given.in('standard', unit) - Math.min(...diameters);
    const spread = Math.max(...diameters) - Math.min(...diameters);
    const how = computed('smallest reading, and largest less smallest, decided with the noise of picking');
    return [
      amount('under', 'Under standard', under, unit, how, { u }),
      verdict(
        'wear-verdict',
        'Size',
        decideExtreme({ value: under, u, count, limit: { max: wear.limit.max! }, unit }),
        wear.origin,
      ),
      amount('out-of-round', 'Largest less smallest', spread, unit, how),
      verdict(
        'round-verdict',
        'Out-of-round and taper',
        decideSpread({ spread, u, count, max: round.limit.max!, unit }),
        round.origin,
      ),
    ];
  }),
  cautions: ['Never bend a crank back, and never file a pin.'],
  sources: [
    'JCGM 106:2012',
    `class figures: ${classFigures.journalWear.source}; ${classFigures.journalOutOfRound.source}`,
  ],
  examples: [
    {
      title: 'Smallest 0.9980 of a 1.0000 in pin: 0.002 in under, too much',
      given: {
        standard: '1.0000 in',
        diameters: '0.9984; 0.9980; 0.9983; 0.9982 in',
        wear: '0.001 in',
        'out-of-round': '0.0005 in',
      },
      expect: {
        under: { value: 0.002, unit: 'in', tolerance: 1e-9 },
        'wear-verdict': { text: 'fail' },
        'round-verdict': { text: 'cannot-decide' },
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
};
