import { decide } from '../../gauge/index.js';
import { amount, ask, computed, near, standard, verdict, worksheet } from '../../worksheet/index.js';
import { supportLoads } from '../axle.js';
import { drawnPower, realPower, serviceRange, voltageRegulation } from '../electric.js';

const generatorLoad = worksheet({
  id: 'generator-load',
  group: 'The machine it drives',
  title: 'Generator under load',
  question: 'Does this generator carry its load?',
  purpose:
    'What a bank of heaters draws at the voltage found, how loaded the generator is, and whether the voltage holds.',
  fields: {
    volts: ask.in('V', 'Voltage under load', 'At the outlet, load on.', {
      hint: '117 V',
      within: ['1 V', '1000 V'],
    }),
    noLoad: ask.in('V', 'Voltage without load', 'At the same outlet.', { hint: '124 V', optional: true }),
    nominal: ask.in('V', 'Nominal voltage', '120 V stands; 240 V at a large outlet, or as the plate says.', {
      standard: '120 V',
    }),
    heaters: ask.in('W', 'Heaters', 'Their plates’ power in sum.', '1500 W'),
    heaterVolts: ask.in('V', 'Heaters made for', '120 V stands.', { standard: '120 V' }),
    amperes: ask.in('A', 'Current measured', 'By a clamp meter, if there is one.', {
      hint: '12 A',
      optional: true,
    }),
    rated: ask.in('W', 'Generator’s rating', 'Running power on its plate, not the starting one.', {
      hint: '3000 W',
      optional: true,
      within: ['1 W', '100 kW'],
    }),
    uncertainty: ask.in(
      'V',
      'Voltmeter, k = 2',
      '1.5 V stands for a true-RMS meter (trade judgement, no source). An average-reading one errs on a rough wave.',
      {
        standard: '1.5 V',
      },
    ),
  },
  names: { ratedVolts: 'heaterVolts', watts: 'heaters', loaded: 'volts' },
  compute: ({ volts, noLoad, nominal, heaters, heaterVolts, amperes, rated, uncertainty }) => {
    const drawn = drawnPower({ watts: heaters, volts: heaterVolts }, volts);
    const power = amperes === undefined ? drawn : realPower(volts, amperes, 1);
    const found = decide({
      value: volts,
      u: uncertainty / 2,
      limit: { min: nominal * serviceRange.least, max: nominal * serviceRange.most },
      unit: 'V',
    });
    return [
      verdict(
        'verdict',
        'Voltage under load',
        found.verdict,
        found.why,
        standard('ANSI C84.1, range A: ±5 %'),
      ),
      amount('drawn', 'The heaters draw', drawn, 'W', computed('P·(V/V₀)²')),
      amount('current', 'That is', drawn / volts, 'A', computed('P/V'), {
        note:
          amperes === undefined
            ? undefined
            : 'far from what the clamp meter says: an element is dead, or the meter is',
      }),
      ...(rated === undefined
        ? []
        : [amount('loaded', 'Loaded to', (100 * power) / rated, '%', computed('power by rating'))]),
      ...(noLoad === undefined
        ? []
        : [
            amount(
              'falls',
              'Voltage falls by',
              100 * voltageRegulation(noLoad, volts),
              '%',
              computed('(no load − loaded)/loaded'),
            ),
          ]),
    ];
  },
  cautions: [
    'Mains voltage kills. Measure at an outlet with insulated probes, one hand; nothing inside the alternator while it turns.',
    'Never feed a building’s wiring: a transfer switch is a licensed electrician’s work.',
  ],
  sources: ['ANSI C84.1', 'Ohm’s law'],
  examples: [
    {
      title: '4500 W of heaters for 240 V on 208 V draw 3380 W',
      given: { volts: '208 V', nominal: '240 V', heaters: '4500 W', heaterVolts: '240 V' },
      expect: { drawn: near(3380, 1, 'W'), verdict: { text: 'fail' } },
      source: 'heater tables: three quarters of the power at 208 V',
      mark: 'memory',
    },
    {
      title: '1500 W on 120 V: 12.5 A',
      given: { volts: '120 V', heaters: '1500 W', noLoad: '126 V', rated: '3000 W' },
      expect: {
        current: near(12.5, 1e-9, 'A'),
        loaded: near(0.5, 1e-9, '1'),
        falls: near(0.05, 1e-9, '1'),
        verdict: { text: 'pass' },
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

const axleLoads = worksheet({
  id: 'support-loads',
  group: 'The machine it drives',
  title: 'Wheels and hitch of a cart',
  question: 'What does each axle carry?',
  purpose:
    'How the weight of a wheeled machine lies on two axles, or on an axle and a hitch, against what tires or hitch may carry.',
  fields: {
    weight: ask.in('N', 'Weight', 'Of the whole machine as it stands.', '420 lbf'),
    base: ask.in(
      'mm',
      'Between the supports',
      'From the front one, or the hitch, back to the axle.',
      '60 in',
    ),
    center: ask.in(
      'mm',
      'Weight acts at',
      'Measured back from the front support: where it balances on a bar.',
      '48 in',
    ),
    rating: ask.in('N', 'Rear may carry', 'Both tires, or the axle, at their pressure.', {
      hint: '500 lbf',
      optional: true,
    }),
  },
  names: { wheelbase: 'base' },
  compute: ({ weight, base, center, rating }) => {
    const { front, rear } = supportLoads({
      weightN: weight,
      wheelbaseM: base / 1000,
      gravityFromFrontM: center / 1000,
    });
    const statics = computed('moments about a support');
    return [
      amount('front', 'Front, or hitch', front, 'N', statics, {
        note: front < 0 ? 'it lifts: the weight acts behind the axle' : undefined,
      }),
      amount('rear', 'Rear', rear, 'N', statics),
      ...(rating === undefined
        ? []
        : [
            verdict(
              'verdict',
              'Rear within its rating',
              rear <= rating ? 'pass' : 'fail',
              rear <= rating
                ? 'it carries it standing; a slope or a bump adds to it.'
                : 'more than it may carry.',
              statics,
            ),
          ]),
    ];
  },
  cautions: ['Chock the wheels and set the stand before anything heavy comes off: the rest may tip.'],
  sources: ['statics'],
  examples: [
    {
      title: '1000 N a quarter of the way back: 750 and 250 N',
      given: { weight: '1000 N', base: '2000 mm', center: '500 mm', rating: '300 N' },
      expect: { front: near(750, 1e-9, 'N'), rear: near(250, 1e-9, 'N'), verdict: { text: 'pass' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

export const loadSheets = [generatorLoad, axleLoads];
