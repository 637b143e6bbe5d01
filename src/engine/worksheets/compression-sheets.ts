import { inPercent } from '../../phrase/index.js';
import {
  type Answer,
  amount,
  ask,
  computed,
  curve,
  type Given,
  lines,
  near,
  type Picture,
  picture,
  spaced,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { standardAirAtMapHeight } from '../atmosphere.js';
import { architectures } from '../cranking/class-engine.js';
import { classifyCompression, compressionRungs } from '../cranking/classify.js';
import { crank } from '../cranking/crank.js';
import {
  crankedSetup,
  type ExpectedCompression,
  expectedCompression,
  uncertaintyBesideLeak,
} from '../cranking/expected.js';
import { type LeakFound, leakFromReading } from '../cranking/find-leak.js';
import { leakPicture, strokePicture } from './compression-picture.js';
import {
  airSpan,
  barometer,
  bore,
  compressionRatio,
  gaugeSpan,
  geometryOf,
  kind,
  leakAmount,
  psi,
  rod,
  shareWords,
  shopAltitude,
  stroke,
} from './fields.js';

const model = computed('cranking cycle over crank angle (own model); band by JCGM 100:2008, 5.1.2, k = 2');

const engineFields = {
  architecture: kind(architectures, 'Gives timing, and the ratio when it is not given.'),
  bore,
  stroke,
  ratio: compressionRatio('Left empty, a class figure with a wide band.'),
  rod,
  release: ask.choice(
    'Automatic release',
    'A valve held open a little at pull speed. Unknown stands, and counts as fitted on a four-stroke (trade judgement, no source).',
    { none: 'none', fitted: 'fitted', unknown: 'unknown' },
    'unknown',
  ),
};

const crankingFields = {
  by: ask.choice(
    'Turned by',
    'A rope stands (common practice).',
    { rope: 'rope', starter: 'electric starter' },
    'rope',
  ),
  speed: ask.in(
    'rpm',
    'Pull speed',
    'Before the compression holds it back; how far it does is worked out. Left empty, 350 rpm for a starter; for a rope a hand of 2 m/s over the usual drum: some 350 rpm, a small two-stroke 750 (trade judgement, no source).',
    { hint: '350 rpm', optional: true, within: ['20 rpm', '1500 rpm'] },
  ),
  pulls: ask.count('Pulls', 'With the gauge in; 6 stands (common practice: 5 or 6).', {
    standard: '6',
    within: [1, 50],
  }),
  altitude: shopAltitude,
  temperature: ask.in(
    '°C',
    'Temperature',
    'Of shop and engine; 20 °C stands as an ordinary shop (common practice).',
    { standard: '20 °C', within: airSpan },
  ),
};

/** What a person gave. */
type Asked = Given<typeof engineFields & typeof crankingFields>;

const conditionsOf = ({ by, speed, pulls, altitude, temperature }: Asked) => ({
  ...{ altitudeM: altitude, airC: temperature, by, pulls },
  ...(speed !== undefined && { rpm: speed }),
});

function expectedFrom(given: Asked & { readonly barometer: number | undefined }): ExpectedCompression {
  const measured = given.barometer !== undefined && { ambientPa: given.barometer };
  return expectedCompression(
    { ...geometryOf(given), release: given.release },
    { ...conditionsOf(given), ...measured },
    // a speed that was measured is known to a tenth, a barometer to a hectopascal
    { ...(given.speed !== undefined && { rpmLn: 0.1 }), ...(measured && { ambientPa: 100 }) },
  );
}

const fieldOf = { compressionRatio: 'ratio', rpm: 'speed', air: 'temperature', wall: 'temperature' } as const;

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
    lines('spread', 'What makes the band wide', shareWords(shares), model),
    lines('rests-on', 'It rests on', restsOn, model),
  ];
}

const expectedCompressionSheet = worksheet({
  id: 'expected-compression',
  group: 'Compression and leaks',
  title: 'Compression a sound engine should show',
  question: 'What should the compression gauge read on this engine?',
  purpose:
    'The reading of a sound engine of this geometry after so many pulls, with its band; and what a reading says.',
  fields: {
    ...engineFields,
    ...crankingFields,
    barometer,
    reading: ask.in('Pa', 'Your reading', 'Left empty, only the band is worked out.', {
      hint: '110 psi',
      optional: true,
      within: gaugeSpan,
    }),
  },
  compute: ({ reading, ...given }) => {
    const expected = expectedFrom(given);
    const band = bandAnswers(expected, true);
    return reading === undefined ? band : [...readingAnswers(reading, expected), ...band];
  },
  names: { ...fieldOf, ambient: 'barometer' },
  oneOf: [{ ids: ['altitude', 'barometer'], wanted: false }],
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
      expect: { likely: near(120, 30, 'psi') },
      source: 'usual readings of two-strokes in use',
      mark: 'common practice',
    },
  ],
});

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
  const weights = compressionRungs.map((rung) => `${rungWords[rung]}: ${inPercent(said.weights[rung])}`);
  const rule = computed('share of the band beyond each rung (own rule)');
  return [
    words('says', 'Your reading', said.words, model),
    lines('weights', 'How strongly it speaks for', weights, rule),
  ];
}

const leakFromCompression = worksheet({
  id: 'leak-from-compression',
  group: 'Compression and leaks',
  title: 'Leak behind a compression reading',
  question: 'How big a leak would explain this compression reading?',
  purpose: 'The effective hole that gives this reading on this engine, or why the reading does not tell.',
  fields: {
    reading: ask.in('Pa', 'Reading', 'After the last pull.', { hint: '60 psi', within: gaugeSpan }),
    ...engineFields,
    ...crankingFields,
    barometer,
    gauge: ask.in(
      '1',
      'Gauge uncertainty',
      'Standard uncertainty as a part of the reading; 4 % stands (trade judgement, no source).',
      { standard: '4 %', within: ['0.1 %', '50 %'] },
    ),
  },
  compute: ({ reading: readingPa, gauge, ...given }) => {
    const expected = expectedFrom(given);
    const found = leakFromReading(expected.engine, expected.gauge, expected.conditions, {
      readingPa,
      relativeU: uncertaintyBesideLeak(expected, gauge),
    });
    const drawn = leakPicture(expected, readingPa, found.informative ? found.areaMm2 : undefined);
    return [...leakAnswers(found, drawn), ...bandAnswers(expected, false)];
  },
  names: { ...fieldOf, ambient: 'barometer' },
  oneOf: [{ ids: ['altitude', 'barometer'], wanted: false }],
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
});

function leakAnswers(found: LeakFound, drawn: Picture): Answer[] {
  const { leastMm2, mostMm2 } = found;
  const ends = [
    ...(leastMm2 === undefined ? [] : [leakAmount('least', 'At least', leastMm2, model)]),
    ...(mostMm2 === undefined ? [] : [leakAmount('most', 'At most', mostMm2, model)]),
  ];
  if (!found.informative)
    return [
      words('says', 'Leak', 'The reading does not tell.', model, { note: found.reason, picture: drawn }),
      ...ends,
    ];
  return [
    leakAmount('leak', 'Effective leak', found.areaMm2, model, drawn),
    amount('hole', 'As one round hole', found.holeMm, 'mm', model),
    ...ends,
  ];
}

const compressionAtAltitude = worksheet({
  id: 'compression-at-altitude',
  group: 'Compression and leaks',
  title: 'Compression at an altitude',
  question: 'How much does altitude take off a compression reading?',
  purpose: 'The same engine’s reading at another altitude, and a sea-level figure of a manual brought there.',
  fields: {
    ...engineFields,
    ...crankingFields,
    book: ask.in('psi', 'Book figure', 'A sea-level figure to bring up here.', {
      hint: '90 psi',
      optional: true,
      within: gaugeSpan,
    }),
  },
  compute: ({ book, ...given }) => {
    const { engine, gauge, conditions } = crankedSetup(
      { ...geometryOf(given), release: given.release },
      conditionsOf(given),
    );
    const read = (m: number) =>
      crank(engine, gauge, { ...conditions, ambientPa: standardAirAtMapHeight(m).pascal }).readingPa / psi;
    const here = given.altitude;
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
      ...(book === undefined ? [] : [amount('book', 'Book figure, here', book * part, 'psi', rule)]),
    ];
  },
  names: fieldOf,
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
      expect: { part: near(78.5, 2.5, '%'), book: near(78.5, 2.5, 'psi') },
      source:
        'ICAO Doc 7488: 79 501 of 101 325 Pa; a gauge reading is in proportion to it but for leak and heat',
      mark: 'calculated',
    },
  ],
});

export const compressionSheets = [expectedCompressionSheet, leakFromCompression, compressionAtAltitude];
