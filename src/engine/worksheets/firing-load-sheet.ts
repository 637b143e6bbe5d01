import {
  boltUnderTorque,
  boltWords,
  clampForTorque,
  clampRange,
  conditions,
  factorsFor,
  type ThreadForm,
} from '../../fasten/index.js';
import { of, showBoth } from '../../quantity/index.js';
import {
  type Answer,
  amount,
  ask,
  computed,
  lines,
  near,
  number,
  picture,
  verdict,
  worksheet,
} from '../../worksheet/index.js';
import { architectures, classEngines } from '../cranking/class-engine.js';
import { expectedFiring } from '../firing/expected-firing.js';
import type { FiringPoint } from '../firing/fire.js';
import { headLoad } from '../firing/head-load.js';
import {
  bore,
  geometryOf,
  kind,
  openingSpan,
  psi,
  rod,
  shareWords,
  shopAir,
  stroke,
  thinned,
} from './fields.js';
import {
  fieldOf,
  firingModel,
  firingSources,
  givesFiring,
  ratio,
  speed,
  withoutKnock,
} from './firing-fields.js';

const separation = computed(
  'Mechanical Engineering Design, 9th ed., Eq. 8-30, the bolts’ share of the load left out',
);
const clampRule = computed('T = K·d·F, Mechanical Engineering Design, 9th ed., Eq. 8-27');
const force = (newton: number) => showBoth(of(newton, 'N'), 'inch');
const pressure = (pascal: number) => showBoth(of(pascal / psi, 'psi'), 'inch');

export const firingLoad = worksheet({
  id: 'firing-load',
  group: 'Firing and power',
  title: 'Push of firing on head and bolts',
  question: 'How hard does firing push on the head and its bolts?',
  purpose:
    'Highest pressure at full throttle, its force on head and piston, and how far this torque keeps the head from lifting.',
  fields: {
    architecture: kind(architectures, givesFiring),
    bore,
    stroke,
    ratio,
    rod,
    speed,
    opening: ask.in(
      'mm²',
      'Gasket opening',
      'Over which the gas reaches the head. Left empty, the bore’s area; on a side-valve 1.6 of it, valves included (trade judgement, no source): measure it.',
      { hint: '5000 mm²', optional: true, within: openingSpan },
    ),
    bolts: ask.count('Head bolts', 'How many hold the head.', { hint: '8', within: [1, 40] }),
    thread: ask.thread(
      'Thread',
      'As marked: inch size and threads per inch, or M size and pitch.',
      '5/16-18',
    ),
    torque: ask.in('N·m', 'Torque', 'As set on the wrench, last pass.', {
      hint: '200 in-lb',
      within: ['0.1 N·m', '300 N·m'],
    }),
    condition: ask.choice(
      'Threads and head face',
      'How they are when the wrench turns; bare and dry stands, as most head bolts go in (common practice).',
      conditions,
      'bare-dry',
    ),
    k: ask.number(
      'Nut factor K',
      'Only when you know it, from a maker’s sheet or a trial. It then goes before the condition.',
      { hint: '0.20', optional: true, within: [0.05, 0.6] },
    ),
  },
  compute: ({ speed: rpm, opening, bolts, thread, torque, condition, k: ownK, ...given }) => {
    const geometry = geometryOf(given);
    const { boreMm, architecture } = geometry;
    const { firing, peakPa, peakShares } = expectedFiring(geometry, { rpm, weather: shopAir });
    const openingMm2 = opening ?? classEngines[architecture].openingPart * (Math.PI / 4) * boreMm ** 2;
    const clamp = clampOf(torque, thread.majorMm, ownK ?? factorsFor(condition));
    const load = (pa: number, clampN: number) =>
      headLoad({ gaugePa: pa - shopAir.pascal, openingMm2, boreMm, bolts, clampN });
    const likely = load(peakPa.likely, clamp.likelyN);
    const worst = load(peakPa.high, clamp.leastN);
    const over = (pa: number) => pa - shopAir.pascal;
    return [
      amount('peak', 'Highest pressure', over(peakPa.likely) / 1e6, 'MPa', firingModel, {
        note: `${pressure(over(peakPa.low))} to ${pressure(over(peakPa.high))}; some ${Math.round(firing.peakDeg)}° after top`,
      }),
      amount('head', 'It lifts the head with', likely.headN / 1000, 'kN', firingModel, {
        note: `up to ${force(worst.headN)}; at each bolt ${force(likely.perBoltN)}`,
        picture: liftPicture(firing.trace, openingMm2, (clamp.leastN * bolts) / 1000),
      }),
      amount('piston', 'It pushes on the piston with', likely.pistonN / 1000, 'kN', firingModel),
      amount('clamp', 'All bolts clamp with', (clamp.likelyN * bolts) / 1000, 'kN', clampRule, {
        note: `K ${clamp.k}; at the least ${force(clamp.leastN * bolts)}, by the wrench’s ±25 % and the factor’s doubt`,
      }),
      number('margin', 'Clamp over push', likely.separationMargin, 1, separation),
      number('least-margin', 'At the worst of both', worst.separationMargin, 1, separation),
      marginVerdict(worst.separationMargin, thread, torque),
      lines('spread', 'What makes the pressure’s band wide', shareWords(peakShares), firingModel),
    ];
  },
  names: fieldOf,
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
        head: near(12.9, 1.3, 'kN'),
        clamp: near(8 * (200 / (0.2 * 0.3125)) * 0.0044482216, 0.5, 'kN'),
      },
      source:
        'own arithmetic on a peak of 2.4 to 2.6 MPa; T = K·d·F, Mechanical Engineering Design, 9th ed., Eq. 8-27',
      mark: 'calculated',
    },
  ],
});

/** Clamp load of one bolt, and its least: by the wrench's scatter and, where none is known, by the factor's doubt. */
function clampOf(torqueNm: number, majorMm: number, factor: number | ReturnType<typeof factorsFor>) {
  const k = typeof factor === 'number' ? factor : factor.taken.k;
  const likelyN = clampForTorque({ torqueNm, nutFactor: k, majorMm });
  const doubt = typeof factor === 'number' ? undefined : { taken: k, low: factor.low, high: factor.high };
  return { k, likelyN, leastN: clampRange(likelyN, undefined, doubt)[0] };
}

function marginVerdict(worst: number, thread: ThreadForm, torqueNm: number): Answer {
  const says = (decided: 'pass' | 'fail' | 'cannot-decide', text: string) =>
    verdict('says', 'At this torque', decided, text, separation);
  const bolt = boltUnderTorque(thread);
  if (torqueNm > bolt.stretchesNm)
    return says(
      'cannot-decide',
      `${boltWords(bolt.grade)} stretches for good near ${showBoth(of(bolt.stretchesNm, 'N·m'), 'inch')}: this torque is only for a stronger one`,
    );
  if (worst >= 1.5) return says('pass', 'the head stays down with something left over for the gasket');
  if (worst >= 1) return says('cannot-decide', 'the head stays down, with little left over for the gasket');
  return says('fail', 'at its worst firing lifts the head: check torque, bolt count and opening');
}

function liftPicture(trace: readonly FiringPoint[], openingMm2: number, leastClampKn: number) {
  const liftKn = ({ pascal }: FiringPoint) => ((pascal - shopAir.pascal) * openingMm2) / 1e9;
  return picture({
    title: 'Push on the head over one firing stroke',
    says: 'The push rises steeply about top, peaks shortly after it and is mostly gone a quarter turn on; the band is the least clamp load.',
    x: { label: 'Crank angle from top', unit: '°' },
    y: { label: 'Push on the head', unit: 'kN' },
    curves: [
      { label: 'likely', points: thinned(trace).map((point) => [point.angleDeg, liftKn(point)] as const) },
    ],
    bands: [{ axis: 'y', from: leastClampKn, label: 'over the least clamp load: lifts' }],
  });
}
