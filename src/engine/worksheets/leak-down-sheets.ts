import {
  amount,
  oldAsk as ask,
  computed,
  type Field,
  type OldGiven as Given,
  judgement,
  number,
  oldOptional as optional,
  type Picture,
  picture,
  spaced,
  oldStanding as standing,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { seaLevelPa, standardAirAtMapHeight } from '../atmosphere.js';
import { EngineError } from '../error.js';
import {
  heldAtPercent,
  heldPressure,
  type LeakTester,
  leakArea,
  leakDown,
  leakPercent,
} from '../leak-down.js';
import { holeDiameterMm } from '../orifice.js';
import { refusing } from './answers.js';

const series = computed('two orifices in series, equal coefficients; FAA AC 43.13-1B, 8-14');
const psi = 6894.757293168361;

const supply = standing(
  ask(
    'pressure',
    'supply',
    'Supply gauge',
    'What the tester’s first gauge is held at; 80 psi stands (FAA AC 43.13-1B).',
    '80 psi',
  ),
  '80 psi',
);
const orifice = standing(
  ask(
    'length',
    'orifice',
    'Tester’s orifice',
    '0.040 in stands: FAA AC 43.13-1B for a bore under 5 in. Hobby testers have others: measure it with a drill shank.',
    '0.040 in',
  ),
  '0.040 in',
);
const altitudeField: Field = standing(
  ask('length', 'altitude', 'Altitude', 'Of the shop; sea level stands.', '500 m'),
  '0 m',
);

function testerFrom(given: Given): LeakTester {
  return {
    supplyPa: given.si('supply'),
    orificeMm: given.in('orifice', 'mm'),
    ambientPa: given.has('altitude') ? standardAirAtMapHeight(given.in('altitude', 'm')).pascal : seaLevelPa,
  };
}

/** Held pressure, or the percent of testers that show percent. */
function heldFrom(given: Given, tester: LeakTester): number {
  if (given.has('held')) return given.si('held');
  if (given.has('percent')) return heldAtPercent(tester, 100 * given.si('percent'));
  throw new EngineError('one of the two is wanted: the cylinder gauge, or the percent lost.', 'held');
}

const reading: readonly Field[] = [
  optional(
    ask(
      'pressure',
      'held',
      'Cylinder gauge',
      'What the second gauge shows; or give the percent instead.',
      '70 psi',
    ),
  ),
  optional(ask('ratio', 'percent', 'Percent lost', 'On testers that show percent.', '12 %')),
];

const cautions = [
  'Hold the shaft at firing top: 80 psi on the piston turns the engine, and a blade with it.',
  'Lead off. Listen at carburetor, muffler, breather and head edge: the place matters more than the number.',
];

export const leakDownSheet: Worksheet = {
  id: 'leak-down',
  title: 'Leak-down',
  question: 'How big a hole is this leak-down reading?',
  purpose: 'Percent and effective hole from a two-gauge reading, with what the gauges’ uncertainty leaves.',
  fields: [
    ...reading,
    supply,
    orifice,
    standing(
      ask(
        'pressure',
        'gauge',
        'Gauge uncertainty',
        'Expanded (k = 2) of either gauge; 1 psi stands (trade judgement, no source).',
        '1 psi',
      ),
      '1 psi',
    ),
    altitudeField,
  ],
  compute: refusing({ percent: 'percent' }, (given) => {
    const tester = testerFrom(given);
    const found = leakDown(tester, heldFrom(given, tester), given.si('gauge') / 2);
    return [
      number('percent', 'Lost, %', found.percent, 1, computed('(supply − cylinder)/supply'), {
        picture: leakPictureOf(tester, found.areaMm2, found.percent),
      }),
      amount('leak', 'Effective leak', found.areaMm2, 'mm²', series, { keepUnit: true }),
      amount('hole', 'As one round hole', found.holeMm, 'mm', series),
      amount('least', 'At least', found.leastMm2, 'mm²', series, { keepUnit: true }),
      amount('most', 'At most', found.mostMm2, 'mm²', series, { keepUnit: true }),
      words('meaning', 'Which means', leakWords(found.percent), judgement, {
        note: 'for a 0.040 in orifice; other testers have bands of their own',
      }),
    ];
  }),
  cautions,
  sources: [
    'FAA AC 43.13-1B, 8-14',
    'Fundamentals of Engineering Thermodynamics',
    'trade judgement, no source: the bands',
  ],
  examples: [
    {
      title: '60 of 80 psi: 25 % lost, 1.06 times the orifice',
      given: { held: '60 psi' },
      expect: {
        percent: { value: 25, tolerance: 1e-9 },
        leak: { value: 1.059 * 0.81073, unit: 'mm²', tolerance: 0.0005 },
      },
      source: 'orifices in series, computed apart; customary aviation floor 60/80 (from memory)',
      mark: 'calculated',
    },
    {
      title: '20 of 80 psi: 2.73 times the orifice',
      given: { held: '20 psi' },
      expect: { leak: { value: 2.729 * 0.81073, unit: 'mm²', tolerance: 0.0005 } },
      source: 'orifices in series, computed apart',
      mark: 'calculated',
    },
  ],
};

function leakWords(percent: number): string {
  if (percent < 15) return 'Good for a small air-cooled engine.';
  if (percent < 25) return 'Worn but usable.';
  return percent <= 40 ? 'Plan a repair.' : 'Act: find where it goes.';
}

function leakPictureOf(tester: LeakTester, areaMm2: number, percent: number): Picture {
  const holes = spaced(0.1, Math.max(3, 1.3 * holeDiameterMm(areaMm2)), 40);
  const at = (holeMm: number, orificeMm: number) =>
    leakPercent(tester, heldPressure({ ...tester, orificeMm }, (Math.PI / 4) * holeMm ** 2));
  const line = (label: string, orificeMm: number) => ({
    label,
    points: holes.map((hole) => [hole, at(hole, orificeMm)] as const),
  });
  return picture({
    title: 'Percent lost over hole',
    says: 'The same hole shows a higher percent on a tester with a smaller orifice.',
    x: { label: 'Hole', unit: 'mm' },
    y: { label: 'Lost, %', unit: '' },
    curves: [
      line('this tester', tester.orificeMm),
      line('orifice of 1.5 times the diameter', 1.5 * tester.orificeMm),
    ],
    marks: [{ x: holeDiameterMm(areaMm2), y: percent, label: 'this reading' }],
    bands: [{ axis: 'y', from: 40, label: 'act' }],
  });
}

export const leakDownTesters: Worksheet = {
  id: 'leak-down-testers',
  title: 'Another leak-down tester',
  question: 'What would another leak-down tester show on this cylinder?',
  purpose:
    'A reading brought from one tester’s orifice and supply to another’s: percent alone cannot be compared.',
  fields: [
    ...reading,
    supply,
    orifice,
    standing(
      ask('pressure', 'other-supply', 'Other supply', '80 psi stands (FAA AC 43.13-1B).', '100 psi'),
      '80 psi',
    ),
    ask('length', 'other-orifice', 'Other orifice', 'Of the tester to compare with.', '0.060 in'),
  ],
  compute: refusing({}, (given) => {
    const tester = testerFrom(given);
    const held = heldFrom(given, tester);
    const other = { supplyPa: given.si('other-supply'), orificeMm: given.in('other-orifice', 'mm') };
    const area = leakArea(tester, held);
    const there = heldPressure(other, area);
    return [
      number('percent', 'Lost on this tester, %', leakPercent(tester, held), 1, series),
      number('other-percent', 'Lost on the other, %', leakPercent(other, there), 1, series),
      amount('other-held', 'Held on the other', there / psi, 'psi', series),
      amount('leak', 'Effective leak', area, 'mm²', series, { keepUnit: true }),
    ];
  }),
  cautions,
  sources: ['FAA AC 43.13-1B, 8-14', 'Fundamentals of Engineering Thermodynamics'],
  examples: [
    {
      title: 'The same tester shows the same',
      given: { held: '65 psi', 'other-orifice': '0.040 in' },
      expect: {
        'other-percent': { value: 18.75, tolerance: 0.0001 },
        leak: { value: 0.89 * 0.81073, unit: 'mm²', tolerance: 0.0005 },
      },
      source: 'orifices in series, computed apart: area ratio 0.890 at 65 psi',
      mark: 'calculated',
    },
  ],
};

export const leakDownSheets: readonly Worksheet[] = [leakDownSheet, leakDownTesters];
