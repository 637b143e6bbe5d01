import { standardAirAtMapHeight } from '../../engine/index.js';
import { decide } from '../../gauge/index.js';
import { amount, ask, computed, near, verdict, worksheet } from '../../worksheet/index.js';
import { gravity, headLoss, pipeSpeed } from '../pipe.js';
import { atSpeed, primingTime, suctionHead, waterPower } from '../pump.js';
import { boilingPressure, waterDensity, waterViscosity } from '../water.js';
import { decideForEach, practiceVerdict } from './practice-verdict.js';

const celsius = ask.in('°C', 'Water', '20 °C stands.', { standard: '20 °C', within: ['0 °C', '99 °C'] });
const altitude = ask.in('m', 'Height above the sea', 'As a map gives it; 0 m stands.', {
  standard: '0 m',
  within: ['-500 m', '6000 m'],
});
const lift = ask.in('m', 'Suction lift', 'Straight up from the water’s face to the pump.', {
  hint: '12 ft',
  within: ['0 m', '20 m'],
});

const pumpPower = worksheet({
  id: 'pump-power',
  group: 'Water and oil under pressure',
  title: 'What a pump takes',
  question: 'How much of the engine does this pump take?',
  purpose: 'Power that flow and head need, what the engine must give, and what another speed would do.',
  fields: {
    flow: ask.in('m³/s', 'Flow', 'Timed into a barrel, at the head below.', '120 gal/min'),
    head: ask.in(
      'm',
      'Head',
      'From water to outlet, with the losses of the hoses; 1 psi at the outlet is 2.31 ft.',
      { hint: '60 ft', within: ['0 m', '300 m'] },
    ),
    efficiency: ask.in(
      '1',
      'Efficiency',
      '50 % stands for a small self-priming pump (trade judgement, no source).',
      { standard: '50 %', within: ['5 %', '100 %'] },
    ),
    water: celsius,
    speed: ask.in('rpm', 'Speed now', 'For another one.', { hint: '3000 rpm', optional: true }),
    other: ask.in('rpm', 'Other speed', 'Not above the pump’s plate.', { hint: '3600 rpm', optional: true }),
  },
  names: { temperature: 'water', otherSpeed: 'other' },
  compute: ({ flow, head, efficiency, water, speed, other }) => {
    const hydraulic = waterPower(flow, head, waterDensity(water));
    const shaft = hydraulic / efficiency;
    const affinity = computed(
      'affinity laws: flow, head and power as the first, second and third power of the speed',
    );
    const then =
      speed === undefined || other === undefined
        ? undefined
        : atSpeed({ flow, headM: head, powerW: shaft }, speed, other);
    return [
      amount('water-power', 'In the water', hydraulic, 'W', computed('ρ·g·Q·H')),
      amount('shaft-power', 'At the shaft', shaft, 'W', computed('by the efficiency')),
      ...(then
        ? [
            amount('other-flow', 'Flow then', then.flow, 'm³/s', affinity),
            amount('other-head', 'Head then', then.headM, 'm', affinity),
            amount('other-power', 'Power then', then.powerW, 'W', affinity),
          ]
        : []),
    ];
  },
  cautions: ['Outdoors only: exhaust. Never run a pump dry: its seal burns in a minute.'],
  sources: ['Hydraulic Institute', 'Fluid Mechanics, 7th ed.'],
  examples: [
    {
      title: '100 gal/min over 100 ft of cold water: 2.53 hp in the water',
      given: { flow: '100 gal/min', head: '100 ft', speed: '1800 rpm', other: '3600 rpm' },
      expect: { 'water-power': near(2.525, 0.004, 'hp'), 'other-head': near(400, 1e-6, 'ft') },
      source: 'Hydraulic Institute: gal/min·ft/3960',
      mark: 'memory',
    },
  ],
});

const suctionLift = worksheet({
  id: 'suction-lift',
  group: 'Water and oil under pressure',
  title: 'Suction lift',
  question: 'Can this pump draw the water up here?',
  purpose:
    'What the air’s weight leaves at the pump after lift, hose and warmth of the water, against what the pump needs.',
  fields: {
    lift,
    flow: ask.in('m³/s', 'Flow', 'What it pumps at work.', '120 gal/min'),
    hose: ask.in('mm', 'Suction hose', 'Inside diameter.', '2 in'),
    length: ask.in('m', 'Its length', 'From strainer to pump.', { hint: '20 ft', within: ['0 m', '300 m'] }),
    fittings: ask.number(
      'Bends and strainer',
      'Velocity heads lost in all: 3 stands for a foot strainer, a coupling and a bend (from memory).',
      {
        standard: '3',
        within: [0, 100],
      },
    ),
    needed: ask.in(
      'm',
      'Pump needs',
      'Net positive suction head on its sheet; left empty, 3 m is gone by (trade judgement, no source).',
      { hint: '10 ft', optional: true, within: ['0 m', '300 m'] },
    ),
    water: celsius,
    altitude,
  },
  names: { temperature: 'water', diameter: 'hose' },
  compute: ({ lift, flow, hose, length, fittings, needed, water, altitude }) => {
    const density = waterDensity(water);
    const pipe = { diameterM: hose / 1000, flow, density, viscosity: waterViscosity(water), roughnessM: 0 };
    const lossM = headLoss(pipe, length, fittings);
    const airPressure = standardAirAtMapHeight(altitude).pascal;
    const boiling = boilingPressure(water);
    const has = suctionHead({ airPressure, boiling, density, liftM: lift, lossM });
    const balance = computed('(p of the air − p at which it boils)/ρg − lift − losses');
    return [
      enough(has, needed, 0.05 * lossM + 0.2),
      amount('left', 'Left at the pump', has, 'm', balance, { u: 0.05 * lossM + 0.2 }),
      amount('loss', 'Lost in the hose', lossM, 'm', computed('Darcy–Weisbach, smooth wall')),
      amount(
        'speed',
        'Speed in the hose',
        pipeSpeed(flow, pipe.diameterM),
        'm/s',
        computed('flow by section'),
      ),
      amount('highest', 'Highest lift', has + lift - (needed ?? usuallyNeededM), 'm', balance),
    ];
  },
  cautions: [
    'A hose that sucks flat, a leaking coupling or a clogged strainer spoils any figure: look at them first.',
  ],
  sources: ['Hydraulic Institute', 'IAPWS-IF97', 'ICAO Doc 7488', 'Fluid Mechanics, 7th ed.'],
  examples: [
    {
      title: 'no flow, no lift at sea level: 33.1 ft less the boiling pressure of cold water',
      given: { lift: '0 m', flow: '0 gal/min', hose: '2 in', length: '1 m', water: '10 °C' },
      expect: { left: near(33.9 - 0.4, 0.1, 'ft') },
      source: 'Cameron Hydraulic Data: an atmosphere is 33.9 ft, boiling at 10 °C 0.4 ft',
      mark: 'memory',
    },
    {
      title: '8 m at 2000 m of height: not to be had',
      given: { lift: '8 m', flow: '100 gal/min', hose: '2 in', length: '9 m', altitude: '2000 m' },
      expect: { verdict: { text: 'fail' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

const usuallyNeededM = 3;

/** What is left at the pump against what it needs; below nothing the water boils before it arrives, whatever the pump. */
function enough(has: number, needed: number | undefined, u: number) {
  const [id, label] = ['verdict', 'Enough left for the pump'] as const;
  if (decide({ value: has, u, limit: { min: 0 } }).verdict === 'fail')
    return verdict(
      id,
      label,
      'fail',
      'the water boils before it reaches the pump.',
      computed('less than nothing is left'),
    );
  const limit = { min: needed ?? usuallyNeededM };
  const found = decideForEach({ value: has, u, limit }, { metric: 'm', inch: 'ft' });
  if (needed === undefined) return practiceVerdict(id, label, found.stands);
  return verdict(id, label, found.verdict, found.why, { from: "maker's sheet", detail: 'the need you gave' });
}

const priming = worksheet({
  id: 'priming-time',
  group: 'Water and oil under pressure',
  title: 'Priming time',
  question: 'How long may this pump take to prime?',
  purpose: 'Time to draw the water up from the air in the hose and the rate at which the pump takes air out.',
  fields: {
    lift,
    hose: ask.in('mm', 'Suction hose', 'Inside diameter.', '2 in'),
    length: ask.in('m', 'Its length', 'From the water’s face to the pump.', {
      hint: '20 ft',
      within: ['0 m', '300 m'],
    }),
    rate: ask.in('m³/s', 'Air it takes out', 'From its sheet, or from a timing at a low lift.', '10 L/min'),
    water: celsius,
    altitude,
  },
  names: { temperature: 'water', airRate: 'rate' },
  compute: ({ lift, hose, length, rate, water, altitude }) => {
    const air = (Math.PI / 4) * (hose / 1000) ** 2 * length;
    const airPressure = standardAirAtMapHeight(altitude).pascal;
    const time = primingTime({ air, airRate: rate, airPressure, density: waterDensity(water), liftM: lift });
    return [
      amount('time', 'Primes in about', time, 's', computed('V/S·(2 + e·ln e/(1 − e))'), {
        note: 'twice as long: look for air at couplings, seal and drain, and for a chamber that was not filled',
      }),
      amount('air', 'Air in the hose', air, 'm³', computed('section times length')),
      amount('vacuum', 'Vacuum needed', waterDensity(water) * gravity * lift, 'Pa', computed('ρ·g·h')),
    ];
  },
  cautions: ['Fill the pump’s chamber first. Stop after the time on its plate: a dry seal burns.'],
  sources: ['own derivation: evacuation at a constant volume rate'],
  examples: [
    {
      title: 'no lift: the air merely displaced',
      given: { lift: '0 m', hose: '50 mm', length: '5 m', rate: '30 L/min' },
      expect: { time: near((Math.PI / 4) * 0.0025 * 5 * 2000, 0.01, 's') },
      source: 'own arithmetic: 9.82 L at 0.5 L/s',
      mark: 'calculated',
    },
    {
      title: '10 m cannot be drawn',
      given: { lift: '10 m', hose: '50 mm', length: '12 m', rate: '30 L/min' },
      expect: { lift: { refused: 'cannot carry' } },
      source: 'the weight of the air',
      mark: 'calculated',
    },
  ],
});

export const pumpSheets = [pumpPower, suctionLift, priming];
