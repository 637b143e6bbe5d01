import {
  amount,
  computed,
  type OldGiven as Given,
  lines,
  oldOptional as optional,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { classFigures } from '../class-figures.js';
import { GaugeError } from '../error.js';
import { type Flatness, flatness } from '../flatness.js';
import { roundness } from '../roundness.js';
import { decideExtreme } from '../spread.js';
import { feelerGap, straightedgeSurvey } from '../straightedge.js';
import { refusing, verdict } from './answers.js';
import {
  lengthField,
  limitAnswer,
  limitField,
  listIn,
  standardFrom,
  toleranceField,
  type UsedLimit,
  usedLimit,
} from './fields.js';

const zoneRule = computed('minimum zone, ISO 12781-1:2011 (from memory), by exact linear program');
const squaresRule = computed('least-squares plane by Householder QR');

/** What both ways of finding heights lead to. */
function faceAnswers(face: Flatness, used: UsedLimit, unit: string) {
  return [
    amount('zone', 'Flatness, minimum zone', face.minimumZone.width, unit, zoneRule, { u: face.u }),
    ...(face.decision ? [verdict('verdict', 'Flatness', face.decision, used.origin)] : []),
    limitAnswer(used, unit),
    amount('squares', 'Flatness, least squares', face.leastSquares.peakToValley, unit, squaresRule, {
      note: 'never less than the minimum zone',
    }),
    amount('remove', 'Take off at least', face.removeAtLeast, unit, zoneRule, {
      note: 'with the face set to the zone; rubbing on a plate takes more',
    }),
    lines(
      'above',
      'Each point above the lowest plane',
      face.above.map((height, i) => `point ${i + 1}: ${Number(height.toPrecision(3))} ${unit}`),
      zoneRule,
    ),
  ];
}

export const flatnessSheet: Worksheet = {
  id: 'flatness',
  title: 'Flatness from an indicator grid',
  question: 'Is this head or face warped, and how much must come off?',
  purpose: 'Flatness from heights read with an indicator over a plate, whatever the tilt of the part.',
  fields: [
    {
      id: 'places',
      label: 'Places',
      help: 'x,y of each point, in the order of the readings; corners, edges, middle, and beside each bolt.',
      kind: 'points',
      hint: '0,0 60,0 60,40 0,40 30,20',
    },
    {
      id: 'heights',
      label: 'Heights',
      help: 'Indicator reading at each place, in the same order. The unit may stand once, at the end.',
      kind: 'list',
      of: 'length',
      hint: '0; 0.02; -0.01; 0.03; 0.01 mm',
    },
    toleranceField('uncertainty', 'Indicator, k = 2', 'a dial indicator over a plate', '0.0005 in'),
    limitField('most', 'Most allowed', classFigures.faceFlatness),
  ],
  compute: refusing(
    { u: 'uncertainty', points: 'places', readings: 'places', spread: 'heights' },
    (given) => {
      const unit = given.has('most') ? given.quantity('most').unit : given.quantity('uncertainty').unit;
      const used = usedLimit(given, classFigures.faceFlatness, unit);
      const heights = listIn(given, 'heights', unit);
      const places = given.points('places');
      if (heights.length !== places.length)
        throw new GaugeError(
          `${places.length} places but ${heights.length} heights.`,
          'heights',
          heights.length,
        );
      const points = places.map(({ xMm, yMm }, i) => ({ x: xMm, y: yMm, z: heights[i]! }));
      return faceAnswers(
        flatness({ points, u: standardFrom(given, 'uncertainty', unit), max: used.limit.max, unit }),
        used,
        unit,
      );
    },
  ),
  cautions: [
    'Take every trace of gasket and carbon off first. Stone burrs around the bolt holes.',
    'Between the points the face stays unseen: near the bore and the exhaust side take more.',
    'Taking stock off a head raises the compression and may bring a valve to the head: check both.',
  ],
  sources: ['ISO 12781-1:2011 (from memory)'],
  examples: [
    {
      title: '3 × 3 grid: least squares 7.333 µm, minimum zone 6.5 µm',
      given: {
        places: '0,0 0,40 0,80 30,0 30,40 30,80 60,0 60,40 60,80',
        heights: '0; 2; -1; 3; 5; 1; -2; 4; 0 µm',
        uncertainty: '1 µm',
        most: '50 µm',
      },
      expect: {
        squares: { value: 7.333, unit: 'µm', tolerance: 0.0005 },
        zone: { value: 6.5, unit: 'µm', tolerance: 1e-6 },
      },
      source: 'own case; the zone from a linear program solver',
      mark: 'calculated',
    },
    {
      title: 'A saddle of ±10 µm at the corners: 20 µm both ways',
      given: {
        places: '-1,-1 1,-1 1,1 -1,1',
        heights: '10; -10; 10; -10 µm',
        uncertainty: '1 µm',
        most: '50 µm',
      },
      expect: {
        squares: { value: 20, unit: 'µm', tolerance: 1e-9 },
        zone: { value: 20, unit: 'µm', tolerance: 1e-9 },
      },
      source: 'own case, by symmetry',
      mark: 'calculated',
    },
  ],
};

export const flatnessStraightedge: Worksheet = {
  id: 'flatness-straightedge',
  title: 'Warp under a straightedge',
  question: 'Which leaf goes under my straightedge, and is that too much?',
  purpose: 'Decision on the largest gap found under a straightedge laid across a face.',
  fields: [
    lengthField(
      'enters',
      'Thickest leaf that enters',
      'Anywhere under the straightedge, with light drag. 0 if none does.',
      '0.002 in',
    ),
    lengthField(
      'refuses',
      'Thinnest leaf that does not',
      'The next one in the set, at the same place.',
      '0.003 in',
    ),
    {
      id: 'placements',
      label: 'Places tried',
      help: 'How many places were probed in all: along, across, and on both diagonals, six or more (common practice).',
      kind: 'count',
      standard: '6',
      hint: '6',
    },
    {
      ...lengthField(
        'drag',
        'Feel, k = 2',
        'How far two people differ in feeling the drag; 0.001 in stands (trade judgement, no source).',
        '0.001 in',
      ),
      standard: '0.001 in',
    },
    limitField('most', 'Most allowed', classFigures.faceFlatness),
  ],
  compute: refusing({ u: 'drag', count: 'placements' }, (given) => {
    const unit = given.quantity('enters').unit;
    const used = usedLimit(given, classFigures.faceFlatness, unit);
    const { gap, u: leaf } = feelerGap(given.in('enters', unit), given.in('refuses', unit));
    const u = Math.hypot(leaf, standardFrom(given, 'drag', unit));
    const decision = decideExtreme({
      value: gap,
      u,
      count: given.number('placements'),
      limit: { max: used.limit.max! },
      unit,
    });
    return [
      amount(
        'gap',
        'Largest gap',
        gap,
        unit,
        computed('middle of the two leaves; rectangular half-step and feel, JCGM 100:2008, 4.3.7'),
        { u },
      ),
      verdict('verdict', 'Flatness', decision, used.origin),
      limitAnswer(used, unit),
    ];
  }),
  cautions: [
    'A gap under a straightedge is the error of that line only; twist shows on the diagonals, nowhere else.',
    'Hold the straightedge on edge, lightly: pressed, it bends.',
  ],
  sources: ['JCGM 100:2008, 4.3.7', 'common practice'],
  examples: [
    {
      title: 'Leaf 0.002 in enters, 0.003 in does not: 0.0025 in, and cannot be told from 0.003 in',
      given: { enters: '0.002 in', refuses: '0.003 in', most: '0.003 in' },
      expect: { gap: { value: 0.0025, unit: 'in', tolerance: 1e-9 }, verdict: { text: 'cannot-decide' } },
      source: 'own arithmetic: u = √(0.00029² + 0.0005²) = 0.00058 in',
      mark: 'calculated',
    },
  ],
};

export const flatnessSurvey: Worksheet = {
  id: 'flatness-survey',
  title: 'Face surveyed with straightedge and feelers',
  question: 'I have only a straightedge and feelers: what shape is this face?',
  purpose: 'Heights at nine places and true flatness from gaps under a straightedge in eight placements.',
  fields: [
    lengthField('length', 'Length of the grid', 'From the first column of places to the last.', '4 in'),
    lengthField('width', 'Width of the grid', 'From the first row of places to the last.', '3 in'),
    {
      id: 'rows',
      label: 'Gaps along the three rows',
      help: 'Straightedge along the first row: gaps at its start, middle, end; then the second and third row. Nine figures.',
      kind: 'list',
      of: 'length',
      hint: '0; 0.003; 0; 0; 0.004; 0; 0; 0.003; 0 in',
    },
    {
      id: 'columns',
      label: 'Gaps along the three columns',
      help: 'The same across: first, middle, last column. Nine figures.',
      kind: 'list',
      of: 'length',
      hint: '0; 0.002; 0; 0; 0.003; 0; 0; 0.002; 0 in',
    },
    {
      id: 'diagonals',
      label: 'Gaps along both diagonals',
      help: 'From the first corner, then from the end of the first row. Six figures. Without them twist stays unseen.',
      kind: 'list',
      of: 'length',
      hint: '0; 0.005; 0; 0; 0.005; 0 in',
    },
    toleranceField('uncertainty', 'Feelers, k = 2', 'a feeler set', '0.001 in'),
    limitField('most', 'Most allowed', classFigures.faceFlatness),
  ],
  compute: refusing({ u: 'uncertainty', placements: 'diagonals', points: 'rows' }, (given) => {
    const unit = given.quantity('length').unit;
    const used = usedLimit(given, classFigures.faceFlatness, unit);
    const survey = straightedgeSurvey({
      places: placesOf(given.in('length', unit), given.in('width', unit)),
      placements: placementsOf(given, unit),
      u: standardFrom(given, 'uncertainty', unit),
      max: used.limit.max,
      unit,
    });
    return [
      words('agree', 'Do the placements agree?', survey.words, squaresRule),
      ...faceAnswers(survey.flatness, used, unit),
    ];
  }),
  cautions: [
    'The straightedge must touch on two places of each line and must not be pressed.',
    'It counts as straight: turn it end for end and repeat one line to see.',
  ],
  sources: ['least squares over lines that cross, as in the survey of surface plates (common practice)'],
  examples: [
    {
      title: 'A bowl 0.003 in deep in the middle of the grid',
      given: {
        length: '4 in',
        width: '3 in',
        rows: '0; 0; 0; 0; 0.003; 0; 0; 0; 0 in',
        columns: '0; 0; 0; 0; 0.003; 0; 0; 0; 0 in',
        diagonals: '0; 0.003; 0; 0; 0.003; 0 in',
        most: '0.010 in',
      },
      expect: { zone: { value: 0.003, unit: 'in', tolerance: 1e-9 }, verdict: { text: 'pass' } },
      source: 'own case: one low point on a plane',
      mark: 'calculated',
    },
  ],
};

function placesOf(length: number, width: number) {
  return [0, 0.5, 1].flatMap((v) => [0, 0.5, 1].map((h) => ({ x: h * length, y: v * width })));
}

/** Which of the nine places each line of a list crosses. */
const lists = {
  rows: [
    [0, 1, 2],
    [3, 4, 5],
    [6, 7, 8],
  ],
  columns: [
    [0, 3, 6],
    [1, 4, 7],
    [2, 5, 8],
  ],
  diagonals: [
    [0, 4, 8],
    [2, 4, 6],
  ],
};

function placementsOf(given: Given, unit: string) {
  return Object.entries(lists).flatMap(([id, linesOf]) => {
    const gaps = listIn(given, id, unit);
    if (gaps.length !== 3 * linesOf.length)
      throw new GaugeError(`${id} needs ${3 * linesOf.length} gaps; got ${gaps.length}.`, id, gaps.length);
    return linesOf.map((points, line) => ({
      name: `${id} ${line + 1}`,
      gaps: points.map((point, i) => ({ point, gap: gaps[3 * line + i]! })),
    }));
  });
}

const roundRule = computed('ISO 12181-1:2011 and ISO 4291:1985 (from memory)');

export const roundnessSheet: Worksheet = {
  id: 'roundness',
  title: 'Roundness from a turn under the indicator',
  question: 'How round is this journal?',
  purpose: 'Roundness by least-squares circle and by minimum zone circles from radii over one turn.',
  fields: [
    {
      id: 'radii',
      label: 'Radii',
      help: 'Radius, or nominal radius plus indicator reading, at even steps over a whole turn.',
      kind: 'list',
      of: 'length',
      hint: '25.000; 25.004; 25.010; 25.006; 24.998; 24.996; 24.992; 24.997 mm',
    },
    toleranceField('uncertainty', 'Indicator, k = 2', 'a dial indicator', '0.0005 in'),
    optional(
      lengthField('most', 'Roundness allowed', 'On the radius; left empty, nothing is decided.', '0.01 mm'),
    ),
  ],
  compute: refusing({ u: 'uncertainty', readings: 'radii', spread: 'radii' }, (given) => {
    const unit = given.has('most') ? given.quantity('most').unit : given.quantity('uncertainty').unit;
    const max = given.has('most') ? given.in('most', unit) : undefined;
    const found = roundness({
      radii: listIn(given, 'radii', unit),
      u: standardFrom(given, 'uncertainty', unit),
      max,
      unit,
    });
    const { leastSquares: squares, minimumZone: zone } = found;
    return [
      amount('zone', 'Roundness, minimum zone', zone.roundness, unit, roundRule, { u: found.u }),
      ...(found.decision
        ? [
            verdict('verdict', 'Roundness', found.decision, {
              from: "maker's sheet",
              detail: 'the limit you gave',
            }),
          ]
        : []),
      amount('squares', 'Roundness, least squares', squares.roundness, unit, roundRule),
      amount('radius', 'Radius, least squares', squares.radius, unit, roundRule),
      amount('off-center', 'Off center', Math.hypot(squares.centerX, squares.centerY), unit, roundRule, {
        note: 'set-up of the part, no error of form',
      }),
    ];
  }),
  cautions: ['A V-block or two-point gauge hides lobes; turn the part on its centers.'],
  sources: ['ISO 12181-1:2011 (from memory)', 'ISO 4291:1985 (from memory)'],
  examples: [
    {
      title: 'Eight radii about 25 mm: 0.004172 mm by least squares, 0.003950 mm by minimum zone',
      given: {
        radii: '25.000; 25.004; 25.010; 25.006; 24.998; 24.996; 24.992; 24.997 mm',
        uncertainty: '0.001 mm',
        most: '0.02 mm',
      },
      expect: {
        squares: { value: 0.004172, unit: 'mm', tolerance: 5e-7 },
        zone: { value: 0.00395, unit: 'mm', tolerance: 5e-7 },
        radius: { value: 25.000375, unit: 'mm', tolerance: 5e-7 },
      },
      source: 'own case by the formulas of ISO 4291; zone from a linear program',
      mark: 'calculated',
    },
  ],
};
