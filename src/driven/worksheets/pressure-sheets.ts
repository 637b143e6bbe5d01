import { of, to } from '../../quantity/index.js';
import {
  amount,
  ask,
  computed,
  type ForEach,
  near,
  number,
  ruleOfThumb,
  standard,
  verdict,
  worksheet,
} from '../../worksheet/index.js';
import { boreOf, jetReaction, nozzleFlow, nozzleNumber, nozzlePressure } from '../nozzle.js';
import { headLoss, pipeSpeed } from '../pipe.js';
import { hoseSafety, hydraulicPower, lineSpeeds, ramAreas, ramForce, strokeTime } from '../ram.js';
import { forEach, practiceVerdict } from './practice-verdict.js';

const psi = 6894.757293168362;
const gallonPerMinute = 3.785411784e-3 / 60;
const waterAt20 = 998.2;
const oilDensity = 870;
const injects =
  'A jet or a pinhole leak injects through skin: never a hand for a leak, card and eye shield. Injected is an emergency, however small it looks.';

const washerNozzle = worksheet({
  id: 'washer-nozzle',
  group: 'Water and oil under pressure',
  title: 'Washer nozzle',
  question: 'Which nozzle does this washer want?',
  purpose:
    'Nozzle number from the pump’s flow and pressure, what a nozzle at hand makes of it, and what a bucket and a watch say of pump or nozzle.',
  fields: {
    flow: ask.in('m³/s', 'Pump’s flow', 'Its rating at rated speed.', '2.5 gal/min'),
    pressure: ask.in('Pa', 'Pressure wanted', 'The lowest rating of pump, hose and gun.', {
      hint: '2700 psi',
      within: ['0 psi', '10000 psi'],
    }),
    nozzle: ask.number(
      'Nozzle fitted',
      'The last figures stamped on it: 25035 is number 3.5 with a fan of 25°.',
      { hint: '3.5', optional: true, within: [0.5, 60] },
    ),
    bucket: ask.in('m³/s', 'Flow measured', 'Into a bucket, by a watch, with the gun open and no nozzle.', {
      hint: '2.3 gal/min',
      optional: true,
    }),
  },
  compute: ({ flow, pressure, nozzle, bucket }) => {
    const gpm = flow / gallonPerMinute;
    const rule = ruleOfThumb('the number is the flow in gal/min at 4000 psi (common practice)');
    return [
      number('wants', 'Number wanted', nozzleNumber(gpm, pressure / psi), 1, rule),
      amount(
        'bore',
        'That is a bore of',
        boreOf(flow, pressure, waterAt20, 0.95),
        'mm',
        computed('Q = 0.95·A·√(2p/ρ)'),
      ),
      amount(
        'push',
        'The gun pushes back by',
        jetReaction(flow, pressure, waterAt20),
        'N',
        computed('Q·√(2ρp)'),
      ),
      ...(nozzle === undefined
        ? []
        : [
            amount(
              'makes',
              'The one fitted makes',
              psi * nozzlePressure(nozzle, (bucket ?? flow) / gallonPerMinute),
              'Pa',
              rule,
            ),
            amount(
              'passes',
              'It passes at the pressure wanted',
              gallonPerMinute * nozzleFlow(nozzle, pressure / psi),
              'm³/s',
              rule,
            ),
          ]),
      ...(bucket === undefined
        ? []
        : [
            amount('pump', 'The pump gives', (100 * bucket) / flow, '%', computed('measured by rated'), {
              note: 'of its rating; under 90 %: suction, valves, seals, belt or speed (common practice)',
            }),
          ]),
    ];
  },
  cautions: [
    injects,
    'A nozzle too small raises the pressure to the unloader’s: never beyond the lowest rating of hose, gun and pump.',
  ],
  sources: ['washer nozzle charts: common practice', 'orifice equation'],
  examples: [
    {
      title: '3 gal/min at 3000 psi want number 3.5; number 4 makes 2250 psi of it',
      given: { flow: '3 gal/min', pressure: '3000 psi', nozzle: '4' },
      expect: {
        wants: near(3.46, 6e-3),
        makes: near(2250, 0.5, 'psi'),
        passes: near(3.464, 1e-3, 'gal/min'),
      },
      source: 'washer nozzle charts',
      mark: 'memory',
    },
  ],
});

const ramSheet = worksheet({
  id: 'ram-force',
  group: 'Water and oil under pressure',
  title: 'Splitter ram',
  question: 'How hard and how fast does this ram push?',
  purpose: 'Force, stroke and return time of a hydraulic cylinder, and the power that the engine must give.',
  fields: {
    bore: ask.in('mm', 'Bore', 'Inside of the cylinder.', '4 in'),
    rod: ask.in('mm', 'Rod', 'Its diameter where it slides.', '1.75 in'),
    stroke: ask.in('mm', 'Stroke', 'Its travel.', '24 in'),
    pressure: ask.in('Pa', 'Relief pressure', 'By a gauge, ram at its end.', {
      hint: '2500 psi',
      within: ['0 psi', '10000 psi'],
    }),
    flow: ask.in('m³/s', 'Flow while fast', 'Of the pump at its rated speed.', '11 gal/min'),
    slow: ask.in(
      'm³/s',
      'Flow while pushing',
      'Second stage of a two-stage pump; leave empty for a single one.',
      { hint: '3 gal/min', optional: true },
    ),
    efficiency: ask.in('1', 'Efficiency', '85 % stands for a gear pump in order (common practice).', {
      standard: '85 %',
    }),
  },
  compute: ({ bore, rod, stroke, pressure, flow, slow, efficiency }) => {
    const ram = { boreM: bore / 1000, rodM: rod / 1000, strokeM: stroke / 1000 };
    const area = ramAreas(ram);
    const times = computed('area times stroke by flow');
    return [
      amount('force', 'Pushes', ramForce(area.out, pressure), 'N', computed('pressure times area'), {
        note: 'seals take 5 to 10 % of it (common practice)',
      }),
      amount('out', 'Out in', strokeTime(area.out, ram.strokeM, flow), 's', times),
      ...(slow === undefined
        ? []
        : [amount('out-slow', 'Out while pushing', strokeTime(area.out, ram.strokeM, slow), 's', times)]),
      amount('back', 'Back in', strokeTime(area.back, ram.strokeM, flow), 's', times),
      amount(
        'power',
        'Engine gives',
        hydraulicPower(slow ?? flow, pressure, efficiency),
        'W',
        computed('Q·p/η'),
      ),
    ];
  },
  cautions: [
    injects,
    'Relief valves are set by a gauge to the maker’s pressure, never above. Cylinders and valves are opened only without pressure, the wedge down.',
  ],
  sources: ['fluid-power handbook'],
  examples: [
    {
      title: '4 in at 2500 psi: 31 416 lbf; 11 gal/min take 7.1 s; 18.9 hp at full flow',
      given: { bore: '4 in', rod: '1.75 in', stroke: '24 in', pressure: '2500 psi', flow: '11 gal/min' },
      expect: { force: near(31_416, 1, 'lbf'), out: near(7.12, 0.01, 's'), power: near(18.87, 0.02, 'hp') },
      source: 'fluid-power handbook',
      mark: 'memory, recomputed',
    },
    {
      title: 'a rod as thick as the bore is refused',
      given: { bore: '2 in', rod: '2 in', stroke: '10 in', pressure: '1000 psi', flow: '5 gal/min' },
      expect: { rod: { refused: 'thinner' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

function lineWords(speed: number, place: keyof typeof lineSpeeds): ForEach {
  const most = lineSpeeds[place];
  const feet = Number(to(of(most, 'm/s'), 'ft/s').toPrecision(2));
  const harm = place === 'suction' ? ' heats the oil and starves the pump' : ' heats the oil';
  return forEach((system) => {
    const laidOut = `the ${system === 'inch' ? `${feet} ft/s` : `${most} m/s`} that such lines are laid out for`;
    return speed <= most ? `slower than ${laidOut}.` : `faster than ${laidOut}, which${harm}.`;
  });
}

const oilLine = worksheet({
  id: 'oil-line',
  group: 'Water and oil under pressure',
  title: 'Hydraulic hose',
  question: 'Is this hose large and strong enough?',
  purpose:
    'Speed and loss in an oil hose against what its place allows, and its rating against the relief pressure.',
  fields: {
    flow: ask.in('m³/s', 'Flow', 'The largest through it.', '11 gal/min'),
    hose: ask.in('mm', 'Hose', 'Inside diameter.', '1/2 in'),
    place: ask.choice(
      'Where',
      'Suction lines are laid out slowest.',
      { suction: 'suction', return: 'return', pressure: 'pressure' },
      'pressure',
    ),
    length: ask.in('m', 'Length', 'Of this hose.', { standard: '1 m', within: ['0 m', '300 m'] }),
    viscosity: ask.in(
      'mm²/s',
      'Oil',
      '32 mm²/s stands: ISO VG 32 at 40 °C. Cold oil is ten times as thick.',
      { standard: '32 mm²/s' },
    ),
    relief: ask.in('Pa', 'Relief pressure', 'By a gauge.', {
      hint: '2500 psi',
      optional: true,
      within: ['0 psi', '10000 psi'],
    }),
    rating: ask.in('Pa', 'Hose’s working pressure', 'Printed on it.', {
      hint: '3000 psi',
      optional: true,
      within: ['0 psi', '10000 psi'],
    }),
  },
  names: { diameter: 'hose' },
  compute: ({ flow, hose, place, length, viscosity, relief, rating }) => {
    const pipe = {
      diameterM: hose / 1000,
      flow,
      density: oilDensity,
      viscosity: oilDensity * 1e-6 * viscosity,
      roughnessM: 0,
    };
    const speed = pipeSpeed(flow, pipe.diameterM);
    const strong = relief === undefined || rating === undefined ? undefined : rating >= relief;
    return [
      practiceVerdict('verdict', 'Large enough', lineWords(speed, place)),
      amount('speed', 'Speed', speed, 'm/s', computed('flow by section')),
      amount(
        'loss',
        'Pressure lost',
        headLoss(pipe, length) * oilDensity * 9.80665,
        'Pa',
        computed('Darcy–Weisbach'),
      ),
      ...(strong === undefined
        ? []
        : [
            verdict(
              'strong',
              'Strong enough',
              strong ? 'pass' : 'fail',
              strong
                ? `it bursts at ${hoseSafety} times its rating or more when new.`
                : 'its rating is under the relief pressure: renew it by a stronger one.',
              standard('SAE J517'),
            ),
          ]),
    ];
  },
  cautions: [
    injects,
    'Hoses with bubbles, cracks to the cloth or wet ends are renewed; hoses are crimped by those who have the dies for them.',
  ],
  sources: ['fluid-power handbook: common practice', 'SAE J517'],
  examples: [
    {
      title: '10 gal/min in 1/2 in: 16.3 ft/s, within the speed of a pressure line',
      given: { flow: '10 gal/min', hose: '1/2 in', relief: '2500 psi', rating: '3000 psi' },
      expect: {
        speed: near(16.34, 0.01, 'ft/s'),
        verdict: { text: 'cannot-decide' },
        strong: { text: 'pass' },
      },
      source: 'fluid-power handbook: 0.4085·gal/min/in²',
      mark: 'memory',
    },
    {
      title: 'the same flow sucked through it: far too fast',
      given: { flow: '10 gal/min', hose: '1/2 in', place: 'suction' },
      expect: { verdict: { text: 'cannot-decide' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

export const pressureSheets = [washerNozzle, ramSheet, oilLine];
