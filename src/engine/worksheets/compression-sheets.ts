import {
  type Answer,
  amount,
  oldAsk as ask,
  oldChoice as choice,
  computed,
  curve,
  type Field,
  type OldGiven as Given,
  lines,
  oldOptional as optional,
  picture,
  spaced,
  oldStanding as standing,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { standardAirAtMapHeight } from '../atmosphere.js';
import { architectures, type EngineArchitecture } from '../cranking/class-engine.js';
import { classifyCompression, compressionRungs } from '../cranking/classify.js';
import { crank } from '../cranking/crank.js';
import {
  type CompressionConditions,
  type CompressionGeometry,
  crankedSetup,
  type ExpectedCompression,
  expectedCompression,
  uncertaintyBesideLeak,
} from '../cranking/expected.js';
import { type LeakFound, leakFromReading } from '../cranking/find-leak.js';
import { refusing } from './answers.js';
import { leakPicture, psi, strokePicture } from './compression-picture.js';
import { barometer, bore, optionalMm, rod, stroke } from './fields.js';

const model = computed('cranking cycle over crank angle (own model); band by JCGM 100:2008, 5.1.2, k = 2');

const engineFields: readonly Field[] = [
  choice(
    'architecture',
    'Kind of engine',
    'Gives timing, and the ratio when it is not given.',
    architectures.map((each) => [each, each.replace('-', ' ')] as const),
  ),
  bore,
  stroke,
  optional(
    ask(
      'ratio',
      'ratio',
      'Compression ratio',
      'From the maker’s sheet or the compression-ratio worksheet. Left empty, a class figure with a wide band.',
      '8.3:1',
    ),
  ),
  rod,
  choice(
    'release',
    'Automatic release',
    'A valve held open a little at pull speed. Unknown stands, and counts as fitted on a four-stroke (trade judgement, no source).',
    [
      ['none', 'none'],
      ['fitted', 'fitted'],
      ['unknown', 'unknown'],
    ],
    'unknown',
  ),
];

const crankingFields: readonly Field[] = [
  choice(
    'by',
    'Turned by',
    'A rope stands (common practice).',
    [
      ['rope', 'rope'],
      ['starter', 'electric starter'],
    ],
    'rope',
  ),
  optional(
    ask(
      'rotation',
      'speed',
      'Pull speed',
      'Before the compression holds it back; how far it does is worked out. Left empty, 455 rpm for a rope, 350 for a starter and 764 for a two-stroke’s rope (trade judgement, no source).',
      '450 rpm',
    ),
  ),
  {
    id: 'pulls',
    label: 'Pulls',
    help: 'With the gauge in; 6 stands (common practice: 5 or 6).',
    kind: 'count',
    standard: '6',
    hint: '6',
  },
  standing(ask('length', 'altitude', 'Altitude', 'Of the shop; sea level stands.', '500 m'), '0 m'),
  standing(
    ask(
      'temperature',
      'temperature',
      'Temperature',
      'Of shop and engine; 20 °C stands as an ordinary shop (common practice).',
      '20 °C',
    ),
    '20 °C',
  ),
];

function askedOf(given: Given): readonly [CompressionGeometry, CompressionConditions] {
  const rodMm = optionalMm(given, 'rod');
  return [
    {
      architecture: given.choice('architecture') as EngineArchitecture,
      boreMm: given.in('bore', 'mm'),
      strokeMm: given.in('stroke', 'mm'),
      ...(rodMm !== undefined && { rodMm }),
      ...(given.has('ratio') && { compressionRatio: given.si('ratio') }),
      release: given.choice('release') as 'none' | 'fitted' | 'unknown',
    },
    {
      altitudeM: given.in('altitude', 'm'),
      ...(given.has('barometer') && { ambientPa: given.si('barometer') }),
      airC: given.in('temperature', '°C'),
      by: given.choice('by') as 'rope' | 'starter',
      pulls: given.number('pulls'),
      ...(given.has('speed') && { rpm: given.in('speed', 'rpm') }),
    },
  ];
}

function expectedFrom(given: Given): ExpectedCompression {
  return expectedCompression(
    ...askedOf(given),
    // a speed that was measured is known to a tenth, a barometer to a hectopascal
    { ...(given.has('speed') && { rpmLn: 0.1 }), ...(given.has('barometer') && { ambientPa: 100 }) },
  );
}

const fieldOf = {
  compressionRatio: 'ratio',
  rpm: 'speed',
  air: 'temperature',
  wall: 'temperature',
  ambient: 'barometer',
  reading: 'reading',
} as const;

const cautions = [
  'Lead off and grounded, throttle and choke wide open, plug hole pointed away: fuel mist and a spark make a torch.',
  'With an automatic release a low reading means little: spin it backward and feel for rebound, or make a leak-down.',
];
const sources = [
  'Internal Combustion Engine Fundamentals 1988, ch. 2, 6 and 12',
  'JCGM 100:2008, 5.1.2',
  'SAE 790825 (wall heat), from memory',
  'trade judgement, no source: class ratios, timing, hand and flywheel, sound leakage and their spreads',
];

/** A long first answer keeps its picture; the band beside it. */
function bandAnswers(expected: ExpectedCompression, withPicture: boolean): Answer[] {
  const { lowPa, likelyPa, highPa, shares, restsOn } = expected;
  return [
    amount('likely', 'A sound one should show', likelyPa / psi, 'psi', model, {
      ...(withPicture && { picture: strokePicture(expected) }),
      note: expected.release === 'may act' ? 'if the release acts as usual: do not judge by it' : undefined,
    }),
    amount('low', 'Band, from', lowPa / psi, 'psi', model),
    amount('high', 'Band, to', highPa / psi, 'psi', model),
    lines(
      'spread',
      'What makes the band wide',
      shares
        .slice(0, 5)
        .map(
          ({ what, down, up }) => `${what}: −${percent(1 - Math.exp(-down))}, +${percent(Math.exp(up) - 1)}`,
        ),
      model,
    ),
    lines('rests-on', 'It rests on', restsOn, model),
  ];
}

const percent = (part: number) => `${(100 * part).toFixed(1)} %`;

export const expectedCompressionSheet: Worksheet = {
  id: 'expected-compression',
  title: 'Compression a sound engine should show',
  question: 'What should the compression gauge read on this engine?',
  purpose:
    'The reading of a sound engine of this geometry after so many pulls, with its band; and what a reading says.',
  fields: [
    ...engineFields,
    ...crankingFields,
    barometer,
    optional(
      ask('pressure', 'reading', 'Your reading', 'Left empty, only the band is worked out.', '110 psi'),
    ),
  ],
  compute: refusing(fieldOf, (given) => {
    const expected = expectedFrom(given);
    const band = bandAnswers(expected, true);
    return given.has('reading') ? [...readingAnswers(given.si('reading'), expected), ...band] : band;
  }),
  cautions,
  sources,
  examples: [
    {
      title: 'With the release the reading does not count',
      given: {
        architecture: 'overhead-valve',
        bore: '65 mm',
        stroke: '62 mm',
        release: 'fitted',
        reading: '40 psi',
      },
      expect: { says: { text: 'The reading does not tell.' } },
      source: 'public manual excerpts, read second-hand: with automatic release a low reading means little',
      mark: 'seen',
    },
    {
      title: 'A two-stroke: the trade has 90 to 150 psi',
      given: { architecture: 'two-stroke', bore: '46 mm', stroke: '34 mm', release: 'none' },
      expect: { likely: { value: 120, unit: 'psi', tolerance: 30 } },
      source: 'usual readings of two-strokes in use',
      mark: 'common practice',
    },
  ],
};

const rungWords = {
  normal: 'normal for this engine',
  'down-twenty-percent': '20 % down',
  'down-forty-percent': '40 % down',
  'near-zero': 'near zero',
} as const;

function readingAnswers(readingPa: number, expected: ExpectedCompression): Answer[] {
  const said = classifyCompression({ pa: readingPa }, expected);
  if (!said.informative)
    return [words('says', 'Your reading', 'The reading does not tell.', model, { note: said.reason })];
  const weights = compressionRungs.map(
    (rung) => `${rungWords[rung]}: ${Math.round(100 * said.weights[rung])} %`,
  );
  return [
    words('says', 'Your reading', said.words, model),
    lines(
      'weights',
      'How strongly it speaks for',
      weights,
      computed('share of the band beyond each rung (own rule)'),
    ),
  ];
}

export const leakFromCompression: Worksheet = {
  id: 'leak-from-compression',
  title: 'Leak behind a compression reading',
  question: 'How big a leak would explain this compression reading?',
  purpose: 'The effective hole that gives this reading on this engine, or why the reading does not tell.',
  fields: [
    ask('pressure', 'reading', 'Reading', 'After the last pull.', '60 psi'),
    ...engineFields,
    ...crankingFields,
    barometer,
    standing(
      ask(
        'ratio',
        'gauge',
        'Gauge uncertainty',
        'Standard uncertainty as a part of the reading; 4 % stands (trade judgement, no source).',
        '4 %',
      ),
      '4 %',
    ),
  ],
  compute: refusing(fieldOf, (given) => {
    const expected = expectedFrom(given);
    const readingPa = given.si('reading');
    const found = leakFromReading(expected.engine, expected.gauge, expected.conditions, {
      readingPa,
      relativeU: uncertaintyBesideLeak(expected, given.si('gauge')),
    });
    const drawn = leakPicture(expected, readingPa, found.informative ? found.areaMm2 : undefined);
    return [...leakAnswers(found, drawn), ...bandAnswers(expected, false)];
  }),
  cautions: [
    ...cautions,
    'It cannot tell rings from valves or gasket: listen with a leak-down, or put in a spoon of oil.',
  ],
  sources,
  examples: [
    {
      title: 'A release makes the leak untellable',
      given: {
        reading: '30 psi',
        architecture: 'overhead-valve',
        bore: '65 mm',
        stroke: '62 mm',
        release: 'fitted',
      },
      expect: { says: { text: 'The reading does not tell.' } },
      source: 'public manual excerpts, read second-hand: with automatic release a low reading means little',
      mark: 'seen',
    },
  ],
};

function leakAnswers(found: LeakFound, drawn: Answer['picture'] & object): Answer[] {
  if (found.informative)
    return [
      amount('leak', 'Effective leak', found.areaMm2, 'mm²', model, { picture: drawn, keepUnit: true }),
      amount('hole', 'As one round hole', found.holeMm, 'mm', model),
      amount('least', 'At least', found.leastMm2, 'mm²', model, { keepUnit: true }),
      amount('most', 'At most', found.mostMm2, 'mm²', model, { keepUnit: true }),
    ];
  return [
    words('says', 'Leak', 'The reading does not tell.', model, { note: found.reason, picture: drawn }),
    ...(found.leastMm2 === undefined
      ? []
      : [amount('least', 'At least', found.leastMm2, 'mm²', model, { keepUnit: true })]),
    ...(found.mostMm2 === undefined
      ? []
      : [amount('most', 'At most', found.mostMm2, 'mm²', model, { keepUnit: true })]),
  ];
}

export const compressionAtAltitude: Worksheet = {
  id: 'compression-at-altitude',
  title: 'Compression at an altitude',
  question: 'How much does altitude take off a compression reading?',
  purpose: 'The same engine’s reading at another altitude, and a sea-level figure of a manual brought there.',
  fields: [
    ...engineFields,
    ...crankingFields,
    optional(ask('pressure', 'book', 'Book figure', 'A sea-level figure to bring up here.', '90 psi')),
  ],
  compute: refusing(fieldOf, (given) => {
    const { engine, gauge, conditions } = crankedSetup(...askedOf(given));
    const read = (m: number) =>
      crank(
        engine,
        gauge,
        { ...conditions, ambientPa: standardAirAtMapHeight(m).pascal },
        { relativeTolerance: 1e-5 },
      ).readingPa / psi;
    const here = given.in('altitude', 'm');
    const part = read(here) / read(0);
    const rule = computed('cranking cycle at both pressures (own model); ICAO Doc 7488');
    return [
      amount('reading', 'A sound one shows here', read(here), 'psi', rule, {
        picture: picture({
          title: 'Reading over altitude',
          says: 'The reading falls with the air’s pressure, some 9 % a thousand meters: a little less than the air, which holds the pull back less.',
          x: { label: 'Altitude', unit: 'm' },
          y: { label: 'Gauge reading', unit: 'psi' },
          curves: [curve('sound engine', spaced(0, Math.max(3000, here), 7), read)],
          marks: [{ x: here, y: read(here), label: 'here' }],
        }),
      }),
      amount('part', 'Against sea level', 100 * part, '%', rule),
      ...(given.has('book')
        ? [amount('book', 'Book figure, here', given.in('book', 'psi') * part, 'psi', rule)]
        : []),
    ];
  }),
  cautions,
  sources: [...sources, 'ICAO Doc 7488 / ISO 2533'],
  examples: [
    {
      title:
        '2000 m, spun too fast for the compression to hold it back: as the air’s pressure, 78.5 % of sea level',
      given: {
        architecture: 'side-valve',
        bore: '65 mm',
        stroke: '62 mm',
        release: 'none',
        speed: '700 rpm',
        altitude: '2000 m',
        book: '100 psi',
      },
      expect: {
        part: { value: 78.5, unit: '%', tolerance: 2.5 },
        book: { value: 78.5, unit: 'psi', tolerance: 2.5 },
      },
      source:
        'ICAO Doc 7488: 79 501 of 101 325 Pa; a gauge reading is in proportion to it but for leak and heat',
      mark: 'calculated',
    },
  ],
};

export const compressionSheets: readonly Worksheet[] = [
  expectedCompressionSheet,
  leakFromCompression,
  compressionAtAltitude,
];
