import {
  amount,
  ask,
  computed,
  curve,
  judgement,
  near,
  number,
  type Picture,
  picture,
  spaced,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { standardAirAtMapHeight } from '../atmosphere.js';
import {
  faaOrificeMm,
  faaSupplyPa,
  heldAtPercent,
  heldPressure,
  type LeakTester,
  leakArea,
  leakDown,
  leakPercent,
} from '../leak-down.js';
import { holeAreaMm2, holeDiameterMm } from '../orifice.js';
import { leakAmount, psi, shopAltitude } from './fields.js';

const series = computed('two orifices in series, equal coefficients; FAA AC 43.13-1B, 8-14');

const supply = ask.in(
  'Pa',
  'Supply gauge',
  'What the tester’s first gauge is held at; 80 psi stands (FAA AC 43.13-1B).',
  { standard: '80 psi', within: ['5 psi', '150 psi'] },
);
const orifice = ask.in(
  'mm',
  'Tester’s orifice',
  '0.040 in stands: FAA AC 43.13-1B for a bore under 5 in. Hobby testers have others: measure it with a drill shank.',
  { standard: '0.040 in', within: ['0.2 mm', '10 mm'] },
);

/** Held pressure, or the percent of testers that show percent: one of the two is there. */
const heldFrom = (held: number | undefined, percent: number | undefined, tester: LeakTester): number =>
  held ?? heldAtPercent(tester, 100 * percent!);

const oneReading = [{ ids: ['held', 'percent'], wanted: true }] as const;

const reading = {
  held: ask.in('Pa', 'Cylinder gauge', 'What the second gauge shows; or give the percent instead.', {
    hint: '70 psi',
    optional: true,
    within: ['0 psi', '150 psi'],
  }),
  percent: ask.in('1', 'Percent lost', 'On testers that show percent.', {
    hint: '12 %',
    optional: true,
    within: ['0 %', '100 %'],
  }),
};

const cautions = [
  'Hold the shaft at firing top: 80 psi on the piston turns the engine, and a blade with it.',
  'Lead off. Listen at carburetor, muffler, breather and head edge: the place matters more than the number.',
];

const leakDownSheet = worksheet({
  id: 'leak-down',
  group: 'Compression and leaks',
  title: 'Leak-down',
  question: 'How big a hole is this leak-down reading?',
  purpose: 'Percent and effective hole from a two-gauge reading, with what the gauges’ uncertainty leaves.',
  fields: {
    ...reading,
    supply,
    orifice,
    gauge: ask.in(
      'Pa',
      'Gauge uncertainty',
      'Expanded (k = 2) of either gauge; 1 psi stands (trade judgement, no source).',
      { standard: '1 psi', within: ['0.01 psi', '20 psi'] },
    ),
    altitude: shopAltitude,
  },
  compute: ({ held, percent, supply: supplyPa, orifice: orificeMm, gauge, altitude }) => {
    const tester = { supplyPa, orificeMm, ambientPa: standardAirAtMapHeight(altitude).pascal };
    const found = leakDown(tester, heldFrom(held, percent, tester), gauge / 2);
    return [
      number('percent', 'Lost, %', found.percent, 1, computed('(supply − cylinder)/supply'), {
        picture: leakPictureOf(tester, found.areaMm2, found.percent),
      }),
      leakAmount('leak', 'Effective leak', found.areaMm2, series),
      amount('hole', 'As one round hole', found.holeMm, 'mm', series),
      leakAmount('least', 'At least', found.leastMm2, series),
      leakAmount('most', 'At most', found.mostMm2, series),
      ...onUsual(tester, found.areaMm2, found.percent),
    ];
  },
  oneOf: oneReading,
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
      expect: { percent: near(25, 1e-9), leak: near(1.059 * 0.81073, 0.0005, 'mm²') },
      source: 'orifices in series, computed apart; customary aviation floor 60/80 (from memory)',
      mark: 'calculated',
    },
    {
      title: '20 of 80 psi: 2.73 times the orifice',
      given: { held: '20 psi' },
      expect: { leak: near(2.729 * 0.81073, 0.0005, 'mm²') },
      source: 'orifices in series, computed apart',
      mark: 'calculated',
    },
  ],
});

/** The trade's bands are those of an 80 psi tester with a 0.040 in orifice: what that one would show is judged. */
function onUsual(tester: LeakTester, areaMm2: number, percent: number) {
  const usual = { ...tester, supplyPa: faaSupplyPa, orificeMm: faaOrificeMm.under5In };
  const there = leakPercent(usual, heldPressure(usual, areaMm2));
  const same = Math.abs(there - percent) < 0.05;
  return [
    words('meaning', 'Which means', leakWords(there), judgement, {
      note: same
        ? 'bands of an 80 psi tester with a 0.040 in orifice'
        : `judged as the ${there.toFixed(0)} % that an 80 psi tester with a 0.040 in orifice would show`,
    }),
  ];
}

function leakWords(percent: number): string {
  if (percent < 15) return 'Good for a small air-cooled engine.';
  if (percent < 25) return 'Worn but usable.';
  return percent <= 40 ? 'Plan a repair.' : 'Act: find where it goes.';
}

function leakPictureOf(tester: LeakTester, areaMm2: number, percent: number): Picture {
  const holes = spaced(0.1, Math.max(3, 1.3 * holeDiameterMm(areaMm2)), 40);
  const at = (holeMm: number, orificeMm: number) =>
    leakPercent(tester, heldPressure({ ...tester, orificeMm }, holeAreaMm2(holeMm)));
  const line = (label: string, orificeMm: number) => curve(label, holes, (hole) => at(hole, orificeMm));
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

const leakDownTesters = worksheet({
  id: 'leak-down-testers',
  group: 'Compression and leaks',
  title: 'Another leak-down tester',
  question: 'What would another leak-down tester show on this cylinder?',
  purpose:
    'A reading brought from one tester’s orifice and supply to another’s: percent alone cannot be compared.',
  fields: {
    ...reading,
    supply,
    orifice,
    'other-supply': ask.in('Pa', 'Other supply', '80 psi stands (FAA AC 43.13-1B).', {
      standard: '80 psi',
      hint: '100 psi',
      within: ['5 psi', '150 psi'],
    }),
    'other-orifice': ask.in('mm', 'Other orifice', 'Of the tester to compare with.', {
      hint: '0.060 in',
      within: ['0.2 mm', '10 mm'],
    }),
  },
  compute: ({
    held: given,
    percent,
    supply,
    orifice,
    'other-supply': otherSupply,
    'other-orifice': other,
  }) => {
    const tester = { supplyPa: supply, orificeMm: orifice };
    const held = heldFrom(given, percent, tester);
    const otherTester = { supplyPa: otherSupply, orificeMm: other };
    const area = leakArea(tester, held);
    const there = heldPressure(otherTester, area);
    return [
      number('percent', 'Lost on this tester, %', leakPercent(tester, held), 1, series),
      number('other-percent', 'Lost on the other, %', leakPercent(otherTester, there), 1, series),
      amount('other-held', 'Held on the other', there / psi, 'psi', series),
      leakAmount('leak', 'Effective leak', area, series),
    ];
  },
  oneOf: oneReading,
  cautions,
  sources: ['FAA AC 43.13-1B, 8-14', 'Fundamentals of Engineering Thermodynamics'],
  examples: [
    {
      title: 'The same tester shows the same',
      given: { held: '65 psi', 'other-orifice': '0.040 in' },
      expect: { 'other-percent': near(18.75, 0.0001), leak: near(0.89 * 0.81073, 0.0005, 'mm²') },
      source: 'orifices in series, computed apart: area ratio 0.890 at 65 psi',
      mark: 'calculated',
    },
  ],
});

export const leakDownSheets = [leakDownSheet, leakDownTesters];
