import { type Quantity, to } from '../../quantity/index.js';
import { amount, ask, computed, lines, near, words, worksheet } from '../../worksheet/index.js';
import { classFigures } from '../class-figures.js';
import { GaugeError } from '../error.js';
import { type Flatness, flatness } from '../flatness.js';
import { roundness } from '../roundness.js';
import { decideExtreme } from '../spread.js';
import { feelerGap, straightedgeSurvey } from '../straightedge.js';
import { verdict } from './answers.js';
import {
  feelers,
  gapSpan,
  heightSpan,
  limitAnswer,
  limitField,
  listIn,
  standardIn,
  toleranceField,
  toolSpan,
  type UsedLimit,
  usedLimit,
} from './fields.js';

/** In inches or millimeters: under a hundredth of an atom is what a difference of two equal heights leaves over. */
const leastHeight = 1e-11;

const most = limitField('Most allowed', classFigures.faceFlatness);
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
      face.above.map(
        (height, i) =>
          `point ${i + 1}: ${Number((Math.abs(height) < leastHeight ? 0 : height).toPrecision(3))} ${unit}`,
      ),
      zoneRule,
    ),
  ];
}

export const flatnessSheet = worksheet({
  id: 'flatness',
  group: 'Is it worn?',
  title: 'Flatness from an indicator grid',
  question: 'Is this head or face warped, and how much must come off?',
  purpose: 'Flatness from heights read with an indicator over a plate, whatever the tilt of the part.',
  fields: {
    places: ask.points(
      'Places',
      'x,y of each point, in the order of the readings; corners, edges, middle, and beside each bolt.',
      '0,0 60,0 60,40 0,40 30,20',
    ),
    heights: ask.list(
      'length',
      'Heights',
      'Indicator reading at each place, in the same order. The unit may stand once, at the end.',
      { hint: '0; 0.02; -0.01; 0.03; 0.01 mm', within: heightSpan },
    ),
    uncertainty: toleranceField('Indicator, k = 2', 'a dial indicator over a plate', '0.0005 in'),
    most,
  },
  names: { u: 'uncertainty', points: 'places', readings: 'places', spread: 'heights' },
  compute: ({ places, heights: read, uncertainty, most }) => {
    const { unit } = most ?? uncertainty;
    const used = usedLimit(classFigures.faceFlatness, unit, { most });
    const heights = listIn(read, unit);
    if (heights.length !== places.length)
      throw new GaugeError(
        `${places.length} places but ${heights.length} heights.`,
        'heights',
        heights.length,
      );
    const twice = places.find(({ xMm, yMm }, i) =>
      places.slice(0, i).some((other) => Math.hypot(xMm - other.xMm, yMm - other.yMm) < 0.01),
    );
    if (twice)
      throw new GaugeError(
        `two heights are given for one place, ${twice.xMm},${twice.yMm} mm.`,
        'places',
        twice,
      );
    const points = places.map(({ xMm, yMm }, i) => ({ x: xMm, y: yMm, z: heights[i]! }));
    const face = flatness({ points, u: standardIn(uncertainty, unit), max: used.limit.max, unit });
    return faceAnswers(face, used, unit);
  },
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
        squares: near(7.333, 0.0005, 'µm'),
        zone: near(6.5, 1e-6, 'µm'),
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
        squares: near(20, 1e-9, 'µm'),
        zone: near(20, 1e-9, 'µm'),
      },
      source: 'own case, by symmetry',
      mark: 'calculated',
    },
  ],
});

export const flatnessStraightedge = worksheet({
  id: 'flatness-straightedge',
  group: 'Is it worn?',
  title: 'Warp under a straightedge',
  question: 'Which leaf goes under my straightedge, and is that too much?',
  purpose: 'Decision on the largest gap found under a straightedge laid across a face.',
  fields: {
    enters: ask.quantity(
      'length',
      'Thickest leaf that enters',
      'Anywhere under the straightedge, with light drag. 0 if none does.',
      { hint: '0.002 in', within: gapSpan },
    ),
    refuses: ask.quantity(
      'length',
      'Thinnest leaf that does not',
      'The next one in the set, at the same place.',
      { hint: '0.003 in', within: gapSpan },
    ),
    placements: ask.count(
      'Places tried',
      'How many places were probed in all: along, across, and on both diagonals, six or more (common practice).',
      { standard: '6', hint: '6', within: [1, 200] },
    ),
    drag: ask.quantity(
      'length',
      'Feel, k = 2',
      'How far two people differ in feeling the drag; 0.001 in stands (trade judgement, no source).',
      { standard: '0.001 in', hint: '0.001 in', within: toolSpan },
    ),
    most,
  },
  names: { u: 'drag', count: 'placements' },
  compute: ({ enters, refuses, placements: count, drag, most }) => {
    const { unit } = enters;
    const used = usedLimit(classFigures.faceFlatness, unit, { most });
    const { gap, u: leaf } = feelerGap(to(enters, unit), to(refuses, unit));
    const u = Math.hypot(leaf, standardIn(drag, unit));
    const decision = decideExtreme({ value: gap, u, count, limit: { max: used.limit.max! }, unit });
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
  },
  cautions: [
    'A gap under a straightedge is the error of that line only; twist shows on the diagonals, nowhere else.',
    'Hold the straightedge on edge, lightly: pressed, it bends.',
  ],
  sources: ['JCGM 100:2008, 4.3.7', 'common practice'],
  examples: [
    {
      title: 'Leaf 0.002 in enters, 0.003 in does not: 0.0025 in, and cannot be told from 0.003 in',
      given: { enters: '0.002 in', refuses: '0.003 in', most: '0.003 in' },
      expect: { gap: near(0.0025, 1e-9, 'in'), verdict: { text: 'cannot-decide' } },
      source: 'own arithmetic: u = √(0.00029² + 0.0005²) = 0.00058 in',
      mark: 'calculated',
    },
  ],
});

export const flatnessSurvey = worksheet({
  id: 'flatness-survey',
  group: 'Is it worn?',
  title: 'Face surveyed with straightedge and feelers',
  question: 'I have only a straightedge and feelers: what shape is this face?',
  purpose: 'Heights at nine places and true flatness from gaps under a straightedge in eight placements.',
  fields: {
    length: ask.quantity('length', 'Length of the grid', 'From the first column of places to the last.', {
      hint: '4 in',
      within: ['1 mm', '1 m'],
    }),
    width: ask.quantity('length', 'Width of the grid', 'From the first row of places to the last.', {
      hint: '3 in',
      within: ['1 mm', '1 m'],
    }),
    rows: ask.list(
      'length',
      'Gaps along the three rows',
      'Straightedge along the first row: gaps at its start, middle, end; then the second and third row. Nine figures.',
      { hint: '0; 0.003; 0; 0; 0.004; 0; 0; 0.003; 0 in', within: gapSpan },
    ),
    columns: ask.list(
      'length',
      'Gaps along the three columns',
      'The same across: first, middle, last column. Nine figures.',
      { hint: '0; 0.002; 0; 0; 0.003; 0; 0; 0.002; 0 in', within: gapSpan },
    ),
    diagonals: ask.list(
      'length',
      'Gaps along both diagonals',
      'From the first corner, then from the end of the first row. Six figures. Without them twist stays unseen.',
      { hint: '0; 0.005; 0; 0; 0.005; 0 in', within: gapSpan },
    ),
    uncertainty: feelers,
    most,
  },
  names: { u: 'uncertainty', placements: 'diagonals', points: 'rows' },
  compute: ({ length, width, uncertainty, most, ...gaps }) => {
    const { unit } = length;
    const used = usedLimit(classFigures.faceFlatness, unit, { most });
    const survey = straightedgeSurvey({
      places: placesOf(to(length, unit), to(width, unit)),
      placements: placementsOf(gaps, unit),
      u: standardIn(uncertainty, unit),
      max: used.limit.max,
      unit,
    });
    return [
      words('agree', 'Do the placements agree?', survey.words, squaresRule),
      ...faceAnswers(survey.flatness, used, unit),
    ];
  },
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
      expect: { zone: near(0.003, 1e-9, 'in'), verdict: { text: 'pass' } },
      source: 'own case: one low point on a plane',
      mark: 'calculated',
    },
  ],
});

function placesOf(length: number, width: number) {
  return [0, 0.5, 1].flatMap((v) => [0, 0.5, 1].map((h) => ({ x: h * length, y: v * width })));
}

/** Which of the nine places each line of a list crosses. */
const lineLists = {
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

type Gaps = Readonly<Record<keyof typeof lineLists, readonly Quantity<'length'>[]>>;

function placementsOf(read: Gaps, unit: string) {
  return (['rows', 'columns', 'diagonals'] as const).flatMap((id) => {
    const [gaps, linesOf] = [listIn(read[id], unit), lineLists[id]];
    if (gaps.length !== 3 * linesOf.length)
      throw new GaugeError(`${id} needs ${3 * linesOf.length} gaps; got ${gaps.length}.`, id, gaps.length);
    return linesOf.map((points, line) => ({
      name: `${id} ${line + 1}`,
      gaps: points.map((point, i) => ({ point, gap: gaps[3 * line + i]! })),
    }));
  });
}

const roundRule = computed('ISO 12181-1:2011 and ISO 4291:1985 (from memory)');

export const roundnessSheet = worksheet({
  id: 'roundness',
  group: 'Is it worn?',
  title: 'Roundness from a turn under the indicator',
  question: 'How round is this journal?',
  purpose: 'Roundness by least-squares circle and by minimum zone circles from radii over one turn.',
  fields: {
    radii: ask.list(
      'length',
      'Radii',
      'Radius, or nominal radius plus indicator reading, at even steps over a whole turn.',
      {
        hint: '25.000; 25.004; 25.010; 25.006; 24.998; 24.996; 24.992; 24.997 mm',
        within: ['0.5 mm', '300 mm'],
      },
    ),
    uncertainty: toleranceField('Indicator, k = 2', 'a dial indicator', '0.0005 in'),
    most: ask.quantity('length', 'Roundness allowed', 'On the radius; left empty, nothing is decided.', {
      hint: '0.01 mm',
      optional: true,
      within: gapSpan,
    }),
  },
  names: { u: 'uncertainty', readings: 'radii', spread: 'radii' },
  compute: ({ radii, uncertainty, most }) => {
    const { unit } = most ?? uncertainty;
    const found = roundness({
      radii: listIn(radii, unit),
      u: standardIn(uncertainty, unit),
      max: most && to(most, unit),
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
      words(
        'sees',
        'What it can see',
        `lobes up to ${found.mostLobes}; a part with more may read round at these places`,
        roundRule,
      ),
      amount('radius', 'Radius, least squares', squares.radius, unit, roundRule),
      amount('off-center', 'Off center', Math.hypot(squares.centerX, squares.centerY), unit, roundRule, {
        note: 'set-up of the part, no error of form',
      }),
    ];
  },
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
        squares: near(0.004172, 5e-7, 'mm'),
        zone: near(0.00395, 5e-7, 'mm'),
        radius: near(25.000375, 5e-7, 'mm'),
      },
      source: 'own case by the formulas of ISO 4291; zone from a linear program',
      mark: 'calculated',
    },
  ],
});
