import { to } from '../../quantity/index.js';
import { amount, ask, computed, near, type Worksheet, worksheet } from '../../worksheet/index.js';
import { type ClassFigure, classFigures } from '../class-figures.js';
import { clearance, clearanceFromWobble } from '../clearance.js';
import { decideExtreme, decideSpread } from '../spread.js';
import { fitVerdict, verdict } from './answers.js';
import {
  diameterSpan,
  gapSpan,
  limitAnswer,
  limitField,
  limitFields,
  listIn,
  standardIn,
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
  /** what a clearance below nothing means */
  readonly tight: string;
  readonly cautions: readonly string[];
  readonly examples: Worksheet['examples'];
}

/** Three fits are one calculation with other words. */
const pairSheet = ({ hole: inside, shaft: outside, figure, tight, ...pair }: Pair) =>
  worksheet({
    ...pair,
    group: 'Is it worn?',
    purpose: 'Clearance from two diameters, decided with the uncertainty of both tools.',
    fields: {
      hole: ask.quantity('length', inside[0], inside[1], { hint: inside[2], within: diameterSpan }),
      'hole-uncertainty': toleranceField('Tool for the hole, k = 2', inside[3], inside[4]),
      shaft: ask.quantity('length', outside[0], outside[1], { hint: outside[2], within: diameterSpan }),
      'shaft-uncertainty': toleranceField('Tool for the shaft, k = 2', outside[3], outside[4]),
      ...limitFields(figure),
    },
    names: { uHole: 'hole-uncertainty', uShaft: 'shaft-uncertainty', limit: 'most' },
    compute: ({ hole, shaft, ...given }) => {
      const { unit } = hole;
      const used = usedLimit(figure, unit, given);
      const found = clearance({
        hole: to(hole, unit),
        shaft: to(shaft, unit),
        uHole: standardIn(given['hole-uncertainty'], unit),
        uShaft: standardIn(given['shaft-uncertainty'], unit),
        unit,
      });
      return [
        amount('clearance', 'Clearance', found.clearance, unit, difference, {
          u: found.u,
          ...(found.clearance < 0 && { note: 'negative: the shaft is larger than the hole' }),
        }),
        fitVerdict(['verdict', 'Fit'], { value: found.clearance, u: found.u, unit }, used, tight),
        limitAnswer(used, unit),
      ];
    },
    sources: ['JCGM 100:2008, 5.1.2', `class figure: ${figure.source}`],
  });

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
  tight: 'the piston is larger than its bore',
  cautions: [
    'A piston is oval and tapered: the place of measurement is part of the specification.',
    'Part and tool at one temperature: aluminum grows twice as fast as iron.',
  ],
  examples: [
    {
      title: 'Bore 2.5640, piston 2.5580: 0.0060 in, on the limit, cannot decide',
      given: { hole: '2.5640 in', shaft: '2.5580 in', most: '0.006 in' },
      expect: {
        clearance: near(0.006, 1e-9, 'in'),
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
  tight: 'the crankpin is larger than its rod',
  cautions: [
    'Aluminum rods smear onto the pin: clean the pin before measuring, never with a file.',
    'A plastic gauge strip is quicker; do not turn the crank on it.',
  ],
  examples: [
    {
      title: 'Rod 1.0032, pin 0.9992: 0.0040 in is over 0.0025 in for sure',
      given: { hole: '1.0032 in', shaft: '0.9992 in', most: '0.0025 in' },
      expect: { clearance: near(0.004, 1e-9, 'in'), verdict: { text: 'fail' } },
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
  tight: 'the stem is larger than its guide',
  cautions: ['Clean carbon and varnish out of the guide first; they hide wear.'],
  examples: [
    {
      title: 'Guide 0.2530, stem 0.2500: 0.0030 in is well inside 0.0045 in',
      given: { hole: '0.2530 in', shaft: '0.2500 in', most: '0.0045 in' },
      expect: { clearance: near(0.003, 1e-9, 'in'), verdict: { text: 'pass' } },
      source: 'own arithmetic; limit from TM 5-4310-276-14',
      mark: 'calculated',
    },
  ],
});

export const guideWobble = worksheet({
  id: 'guide-wobble',
  group: 'Is it worn?',
  title: 'Guide wear from wobble',
  question: 'The valve rocks in its guide: how much clearance is that?',
  purpose: 'Stem clearance from the rock of the valve head under an indicator.',
  fields: {
    rock: ask.quantity(
      'length',
      'Rock at the head',
      'Whole travel of the indicator, valve held a little off its seat.',
      { hint: '0.010 in', within: gapSpan },
    ),
    lever: ask.quantity(
      'length',
      'Head to guide',
      'From where the indicator touches to the near end of the guide, along the stem.',
      { hint: '0.8 in', within: ['0 mm', '300 mm'] },
    ),
    guide: ask.quantity('length', 'Guide length', 'Length that carries the stem.', {
      hint: '1.6 in',
      within: ['1 mm', '300 mm'],
    }),
    uncertainty: toleranceField('Indicator, k = 2', 'a dial indicator', '0.001 in'),
    ...limitFields(classFigures.guideClearance),
  },
  names: { u: 'uncertainty', limit: 'most' },
  compute: ({ rock, lever, guide, uncertainty, ...given }) => {
    const { unit } = rock;
    const used = usedLimit(classFigures.guideClearance, unit, given);
    const through = (travel: number) => clearanceFromWobble(travel, to(lever, unit), to(guide, unit));
    const [value, u] = [through(to(rock, unit)), through(standardIn(uncertainty, unit))];
    return [
      amount(
        'clearance',
        'Clearance',
        value,
        unit,
        computed('rock/(2·lever/guide + 1): a straight stem in a straight guide'),
        { u },
      ),
      fitVerdict(['verdict', 'Guide'], { value, u, unit }, used, 'the stem is larger than its guide'),
      limitAnswer(used, unit),
    ];
  },
  cautions: [
    'A bell-mouthed guide rocks more than its clearance says: a pass is sure, a fail wants the small-hole gauge.',
  ],
  sources: ['geometry; own derivation', `class figure: ${classFigures.guideClearance.source}`],
  examples: [
    {
      title: 'Rock 0.010 in, head half a guide length out: 0.005 in',
      given: { rock: '0.010 in', lever: '0.8 in', guide: '1.6 in' },
      expect: { clearance: near(0.005, 1e-9, 'in') },
      source: 'own arithmetic: 0.010/(2 × 0.5 + 1)',
      mark: 'calculated',
    },
  ],
});

export const journalWear = worksheet({
  id: 'journal-wear',
  group: 'Is it worn?',
  title: 'Crankpin wear',
  question: 'Is this crankpin still good?',
  purpose: 'Wear and out-of-round of a journal from several micrometer readings.',
  fields: {
    standard: ask.quantity('length', 'Standard size', 'When new, from the maker’s sheet.', {
      hint: '1.0000 in',
      within: diameterSpan,
    }),
    diameters: ask.list(
      'length',
      'Diameters',
      'Four or more: two directions at each end (common practice).',
      { hint: '0.9996; 0.9995; 0.9996; 0.9994 in', within: diameterSpan },
    ),
    uncertainty: toleranceField('Micrometer, k = 2', 'a micrometer', '0.0002 in'),
    wear: limitField('Under size allowed', classFigures.journalWear),
    'out-of-round': limitField('Out-of-round allowed', classFigures.journalOutOfRound),
  },
  names: { u: 'uncertainty', count: 'diameters' },
  compute: ({ standard, diameters: read, uncertainty, ...allowed }) => {
    const { unit } = standard;
    const diameters = listIn(read, unit);
    const [u, count] = [standardIn(uncertainty, unit), diameters.length];
    const wear = usedLimit(classFigures.journalWear, unit, { most: allowed.wear });
    const round = usedLimit(classFigures.journalOutOfRound, unit, { most: allowed['out-of-round'] });
    const under = to(standard, unit) - Math.min(...diameters);
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
  },
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
        under: near(0.002, 1e-9, 'in'),
        'wear-verdict': { text: 'fail' },
        'round-verdict': { text: 'cannot-decide' },
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});
