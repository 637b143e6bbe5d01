import { type Condition, clampForTorque, clampRange, conditions, factorsFor } from '../../fasten/index.js';
import { of, showBoth } from '../../quantity/index.js';
import {
  type Answer,
  amount,
  oldAsk as ask,
  oldChoice as choice,
  computed,
  type OldGiven as Given,
  lines,
  number,
  oldOptional as optional,
  picture,
  verdict,
  type OldWorksheet as Worksheet,
} from '../../worksheet/index.js';
import { architectures, classEngines } from '../cranking/class-engine.js';
import { type ExpectedFiring, expectedFiring, type FiringGeometry } from '../firing/expected-firing.js';
import { headLoad } from '../firing/head-load.js';
import { refusing } from './answers.js';
import { psi } from './compression-picture.js';
import { bore, rod, stroke } from './fields.js';
import {
  fieldOf,
  firingModel,
  firingSources,
  geometryOf,
  kind,
  ratio,
  shareWords,
  shopAir,
  speed,
  withoutKnock,
} from './firing-fields.js';

const separation = computed(
  'Mechanical Engineering Design, 9th ed., Eq. 8-30, the bolts’ share of the load left out',
);
const both = (value: number, unit: 'N' | 'Pa') =>
  showBoth(unit === 'N' ? of(value, 'N') : of(value / psi, 'psi'), 'inch');

export const firingLoad: Worksheet = {
  id: 'firing-load',
  title: 'Push of firing on head and bolts',
  question: 'How hard does firing push on the head and its bolts?',
  purpose:
    'Highest pressure at full throttle, its force on head and piston, and how far this torque keeps the head from lifting.',
  fields: [
    kind(architectures),
    bore,
    stroke,
    ratio,
    rod,
    speed,
    optional(
      ask(
        'area',
        'opening',
        'Gasket opening',
        'Over which the gas reaches the head. Left empty, the bore’s area; on a side-valve 1.6 of it, valves included (trade judgement, no source): measure it.',
        '5000 mm²',
      ),
    ),
    { id: 'bolts', label: 'Head bolts', help: 'How many hold the head.', kind: 'count', hint: '8' },
    {
      id: 'thread',
      label: 'Thread',
      help: 'As marked: inch size and threads per inch, or M size and pitch.',
      kind: 'thread',
      hint: '5/16-18',
    },
    ask('torque', 'torque', 'Torque', 'As set on the wrench, last pass.', '200 in-lb'),
    choice(
      'condition',
      'Threads and head face',
      'How they are when the wrench turns; bare and dry stands, as most head bolts go in (common practice).',
      Object.entries(conditions),
      'bare-dry',
    ),
    {
      id: 'k',
      label: 'Nut factor K',
      help: 'Only when you know it, from a maker’s sheet or a trial. It then goes before the condition.',
      kind: 'number',
      required: false,
      hint: '0.20',
    },
  ],
  compute: refusing(fieldOf, (given) => {
    const geometry = geometryOf(given);
    const found = expectedFiring(geometry, { rpm: given.in('speed', 'rpm'), weather: shopAir });
    return firingAnswers(given, geometry, found);
  }),
  cautions: [
    'The engine’s own torque goes before anything computed here. Never raise a torque to win margin in aluminum.',
    withoutKnock,
    'A margin of 1 is where the head lifts; a gasket begins to leak well before that, and heat takes clamp load away.',
  ],
  sources: [...firingSources, 'Mechanical Engineering Design, 9th ed., Eq. 8-27 and 8-30'],
  examples: [
    {
      title: '2.5 MPa over 1.6 of a 65 mm bore: 13 kN; 8 bolts 5/16-18 at 200 lbf·in, K 0.20: 101 kN',
      given: {
        ...{ architecture: 'side-valve', bore: '65 mm', stroke: '62 mm', ratio: '6:1', bolts: '8' },
        ...{ thread: '5/16-18', torque: '200 in-lb', condition: 'bare-dry', k: '0.20' },
      },
      expect: {
        head: { value: 12.9, unit: 'kN', tolerance: 1.3 },
        clamp: { value: 8 * (200 / (0.2 * 0.3125)) * 0.0044482216, unit: 'kN', tolerance: 0.5 },
      },
      source:
        'own arithmetic on a peak of 2.4 to 2.6 MPa; T = K·d·F, Mechanical Engineering Design, 9th ed., Eq. 8-27',
      mark: 'calculated',
    },
  ],
};

function leastClamp(
  perBolt: (k: number) => number,
  k: number,
  spread: ReturnType<typeof factorsFor> | undefined,
): number {
  const [byWrench] = clampRange(perBolt(k));
  return spread ? Math.min(byWrench, perBolt(spread.high)) : byWrench;
}

function firingAnswers(
  given: Given,
  geometry: FiringGeometry,
  { firing, peakPa, peakShares }: ExpectedFiring,
): Answer[] {
  const { boreMm, architecture } = geometry;
  const boreMm2 = (Math.PI / 4) * boreMm ** 2;
  const openingMm2 = given.has('opening')
    ? given.in('opening', 'mm²')
    : classEngines[architecture].openingPart * boreMm2;
  const spread = given.has('k') ? undefined : factorsFor(given.choice('condition') as Condition);
  const k = spread ? spread.taken.k : given.number('k');
  const [torqueNm, { majorMm }] = [given.in('torque', 'N·m'), given.thread('thread')];
  const perBolt = (nutFactor: number) => clampForTorque({ torqueNm, nutFactor, majorMm });
  const least = leastClamp(perBolt, k, spread);
  const bolts = given.number('bolts');
  const load = (pa: number, clampN: number) =>
    headLoad({ gaugePa: pa - shopAir.pascal, openingMm2, boreMm, bolts, clampN });
  const likely = load(peakPa.likely, perBolt(k));
  const worst = load(peakPa.high, least);
  return [
    amount('peak', 'Highest pressure', (peakPa.likely - shopAir.pascal) / 1e6, 'MPa', firingModel, {
      note: `${both(peakPa.low - shopAir.pascal, 'Pa')} to ${both(peakPa.high - shopAir.pascal, 'Pa')}; some ${Math.round(firing.peakDeg)}° after top`,
    }),
    amount('head', 'It lifts the head with', likely.headN / 1000, 'kN', firingModel, {
      note: `up to ${both(worst.headN, 'N')}; at each bolt ${both(likely.perBoltN, 'N')}`,
      picture: liftPicture(firing.trace, openingMm2, (least * bolts) / 1000),
    }),
    amount('piston', 'It pushes on the piston with', likely.pistonN / 1000, 'kN', firingModel),
    amount(
      'clamp',
      'All bolts clamp with',
      (perBolt(k) * bolts) / 1000,
      'kN',
      computed('T = K·d·F, Mechanical Engineering Design, 9th ed., Eq. 8-27'),
      {
        note: `K ${k}; at the least ${both(least * bolts, 'N')}, by the wrench’s ±25 % and the factor’s doubt`,
      },
    ),
    number('margin', 'Clamp over push', likely.separationMargin, 1, separation),
    number('least-margin', 'At the worst of both', worst.separationMargin, 1, separation),
    marginVerdict(worst.separationMargin),
    lines('spread', 'What makes the pressure’s band wide', shareWords(peakShares), firingModel),
  ];
}

function marginVerdict(worst: number): Answer {
  if (worst >= 1.5)
    return verdict(
      'says',
      'At this torque',
      'pass',
      'the head stays down with something left over for the gasket',
      separation,
    );
  if (worst >= 1)
    return verdict(
      'says',
      'At this torque',
      'cannot-decide',
      'the head stays down, with little left over for the gasket',
      separation,
    );
  return verdict(
    'says',
    'At this torque',
    'fail',
    'at its worst firing lifts the head: check torque, bolt count and opening',
    separation,
  );
}

function liftPicture(trace: ExpectedFiring['firing']['trace'], openingMm2: number, leastClampKn: number) {
  const every = Math.ceil(trace.length / 120);
  const shown = trace.filter((_, i) => i % every === 0 || i === trace.length - 1);
  return picture({
    title: 'Push on the head over one firing stroke',
    says: 'The push rises steeply about top, peaks shortly after it and is mostly gone a quarter turn on; the band is the least clamp load.',
    x: { label: 'Crank angle from top', unit: '°' },
    y: { label: 'Push on the head', unit: 'kN' },
    curves: [
      {
        label: 'likely',
        points: shown.map(
          ({ angleDeg, pascal }) => [angleDeg, ((pascal - shopAir.pascal) * openingMm2) / 1e9] as const,
        ),
      },
    ],
    bands: [{ axis: 'y', from: leastClampKn, label: 'over the least clamp load: lifts' }],
  });
}
