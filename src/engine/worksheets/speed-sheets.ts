import {
  amount,
  oldAsk as ask,
  computed,
  curve,
  judgement,
  number,
  oldOptional as optional,
  type Picture,
  picture,
  practice,
  spaced,
  oldStanding as standing,
  verdict,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { beltDrive, droop, generatorHz, rpmAtTipSpeed, rpmForHz, tipSpeed } from '../speeds.js';
import { refusing } from './answers.js';

const perMinute = (metersPerSecond: number) => (metersPerSecond * 60) / 0.3048;

export const tipSpeedSheet: Worksheet = {
  id: 'tip-speed',
  title: 'Blade tip speed',
  question: 'Is this blade turning too fast?',
  purpose:
    'Tip speed of a blade or rotor against the rotary-mower limit, and the engine speed that just keeps to it.',
  fields: [
    ask('length', 'diameter', 'Blade length', 'Tip to tip, through the center.', '21 in'),
    ask(
      'rotation',
      'speed',
      'Blade speed',
      'Of the blade itself: the engine’s only when it sits on the crankshaft.',
      '3100 rpm',
    ),
    standing(
      ask(
        'speed',
        'limit',
        'Most allowed',
        '19 000 ft/min stands: ANSI B71.1 for rotary mowers. Other machines have limits of their own.',
        '19000 ft/min',
      ),
      '19000 ft/min',
    ),
  ],
  compute: refusing({}, (given) => {
    const diameterMm = given.in('diameter', 'mm');
    const rpm = given.in('speed', 'rpm');
    const limit = given.si('limit');
    const tip = tipSpeed(diameterMm, rpm);
    const most = rpmAtTipSpeed(diameterMm, limit);
    const says = tip <= limit ? 'within the limit' : `over the limit; at most ${Math.floor(most)} rpm`;
    return [
      amount('tip-speed', 'Tip speed', perMinute(tip), 'ft/min', tipRule, {
        picture: tipPicture(diameterMm, rpm, limit),
      }),
      verdict('verdict', 'Limit', tip <= limit ? 'pass' : 'fail', says, tipRule),
      amount('most-speed', 'Most speed for this blade', most, 'rpm', tipRule),
    ];
  }),
  cautions: [
    'Lead off before a hand goes near the blade. A longer blade than the machine was made for is over the limit at the old speed.',
    'Set the speed with the blade fitted and a tachometer on: never over the machine’s plate.',
  ],
  sources: ['ANSI B71.1', '16 CFR 1205'],
  examples: [
    {
      title: '21 in at 3100 rpm: 17 042 ft/min, within',
      given: { diameter: '21 in', speed: '3100 rpm' },
      expect: {
        'tip-speed': { value: 17042, unit: 'ft/min', tolerance: 1.5 },
        verdict: { text: 'pass' },
        'most-speed': { value: 3456, unit: 'rpm', tolerance: 0.5 },
      },
      source: 'mower speed figures on a public page; limit of ANSI B71.1',
      mark: 'seen',
    },
    {
      title: '21 in at 3600 rpm: 19 792 ft/min, over',
      given: { diameter: '21 in', speed: '3600 rpm' },
      expect: { 'tip-speed': { value: 19792, unit: 'ft/min', tolerance: 0.5 }, verdict: { text: 'fail' } },
      source: 'own arithmetic: π·21·3600/12',
      mark: 'calculated',
    },
  ],
};

const tipRule = computed('π · diameter · speed; ANSI B71.1');

function tipPicture(diameterMm: number, rpm: number, limit: number): Picture {
  const most = Math.max(4500, 1.15 * rpm);
  return picture({
    title: 'Tip speed over speed',
    says: 'The tip speed rises in proportion to the speed; the limit stands across.',
    x: { label: 'Blade speed', unit: 'rpm' },
    y: { label: 'Tip speed', unit: 'ft/min' },
    curves: [curve('this blade', spaced(0, most, 2), (x) => perMinute(tipSpeed(diameterMm, x)))],
    marks: [{ x: rpm, y: perMinute(tipSpeed(diameterMm, rpm)), label: 'this speed' }],
    bands: [{ axis: 'y', from: perMinute(limit), label: 'over the limit' }],
  });
}

export const pulleySpeed: Worksheet = {
  id: 'pulley-speed',
  title: 'Pulleys',
  question: 'How fast does the driven pulley turn?',
  purpose: 'Driven speed and belt speed from two pulleys, with slip.',
  fields: [
    ask('rotation', 'speed', 'Driver speed', 'Of the engine’s shaft, as a rule.', '3600 rpm'),
    ask(
      'length',
      'driver',
      'Driver pulley',
      'Pitch diameter: where the belt’s cord runs, some 3 mm inside the rim all round (common practice).',
      '60 mm',
    ),
    ask('length', 'driven', 'Driven pulley', 'Pitch diameter, measured the same way.', '120 mm'),
    standing(
      ask('ratio', 'slip', 'Slip', '2 % stands for a V-belt in order (common practice).', '2 %'),
      '2 %',
    ),
  ],
  compute: refusing({}, (given) => {
    const { drivenRpm, beltSpeed } = beltDrive({
      driverRpm: given.in('speed', 'rpm'),
      driverMm: given.in('driver', 'mm'),
      drivenMm: given.in('driven', 'mm'),
      slip: given.si('slip'),
    });
    return [
      amount(
        'driven-speed',
        'Driven speed',
        drivenRpm,
        'rpm',
        computed('speed · driver/driven · (1 − slip)'),
      ),
      amount('belt-speed', 'Belt speed', beltSpeed, 'm/s', computed('π · driver · speed'), {
        note: beltSpeed > 30 ? 'over what plain pulleys of cast iron are commonly run at, 30 m/s' : undefined,
      }),
    ];
  }),
  cautions: [
    'A smaller driven pulley speeds up a blade or rotor: work out its tip speed before fitting one.',
  ],
  sources: ['common practice'],
  examples: [
    {
      title: '3600 rpm, 60 on 120 mm, no slip: 1800 rpm, 11.3 m/s',
      given: { speed: '3600 rpm', driver: '60 mm', driven: '120 mm', slip: '0 %' },
      expect: {
        'driven-speed': { value: 1800, unit: 'rpm', tolerance: 1e-6 },
        'belt-speed': { value: 11.31, unit: 'm/s', tolerance: 0.005 },
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
};

export const generatorSpeed: Worksheet = {
  id: 'generator-speed',
  title: 'Generator frequency',
  question: 'What frequency does this generator give at this speed?',
  purpose: 'Frequency from speed and poles, and the speed for the frequency wanted.',
  fields: [
    ask('rotation', 'speed', 'Speed', 'Of the rotor.', '3720 rpm'),
    {
      id: 'poles',
      label: 'Poles',
      help: 'Of the rotor; 2 stands: nearly all that turn at 3000 or 3600 rpm (common practice).',
      kind: 'count',
      standard: '2',
      hint: '2',
    },
    standing(
      ask(
        'frequency',
        'wanted',
        'Wanted',
        'Frequency of the mains here; 60 Hz stands (common practice).',
        '60 Hz',
      ),
      '60 Hz',
    ),
  ],
  compute: refusing({ frequency: 'wanted', rpm: 'speed' }, (given) => {
    const poles = given.number('poles');
    const hz = generatorHz(given.in('speed', 'rpm'), poles);
    const wanted = given.si('wanted');
    return [
      amount('frequency', 'Frequency', hz, 'Hz', computed('speed · poles/120')),
      amount(
        'speed-wanted',
        'Speed for the frequency wanted',
        rpmForHz(wanted, poles),
        'rpm',
        computed('120 · frequency/poles'),
      ),
      number(
        'off',
        'Off the frequency wanted, %',
        100 * (hz / wanted - 1),
        1,
        computed('difference of the two'),
        {
          note: 'without load 3 to 4 % above is usual, so that it does not fall below under load (common practice)',
        },
      ),
    ];
  }),
  cautions: [
    'Voltage and frequency go up together: an overspeeding generator burns what hangs on it.',
    'Wiring and mains connection are for licensed people.',
  ],
  sources: ['common practice'],
  examples: [
    {
      title: '3720 rpm, two poles: 62 Hz',
      given: { speed: '3720 rpm' },
      expect: {
        frequency: { value: 62, unit: 'Hz', tolerance: 1e-9 },
        'speed-wanted': { value: 3600, unit: 'rpm', tolerance: 1e-6 },
      },
      source: 'a service manual’s no-load setting, 62 Hz and 3720 rpm, read second-hand',
      mark: 'seen',
    },
  ],
};

export const governorDroop: Worksheet = {
  id: 'governor-droop',
  title: 'Governor droop',
  question: 'Does the governor hold the speed under load?',
  purpose: 'How much the speed falls from no load to load, against what is usual.',
  fields: [
    ask('rotation', 'no-load', 'Without load', 'Settled, warm, throttle at fast.', '3600 rpm'),
    ask('rotation', 'loaded', 'Under load', 'Settled, at full load.', '3400 rpm'),
    optional(ask('rotation', 'rated', 'Allowed without load', 'From the machine’s plate.', '3600 rpm')),
  ],
  compute: refusing({ noLoad: 'no-load' }, (given) => {
    const noLoad = given.in('no-load', 'rpm');
    const part = 100 * droop(noLoad, given.in('loaded', 'rpm'));
    return [
      number('droop', 'Droop, %', part, 1, computed('(no load − loaded)/loaded')),
      words('meaning', 'Which means', droopWords(part), judgement),
      ...(given.has('rated') ? [overspeed(noLoad, given.in('rated', 'rpm'))] : []),
    ];
  }),
  cautions: ['If the speed runs away: choke shut, fuel off, ground the plug. Never lean over the blade.'],
  sources: ['ISO 3046-4', 'trade judgement, no source'],
  examples: [
    {
      title: '3720 falling to 3540 rpm: 5.1 %',
      given: { 'no-load': '3720 rpm', loaded: '3540 rpm' },
      expect: { droop: { value: 5.085, tolerance: 0.001 } },
      source: 'own arithmetic: 180/3540',
      mark: 'calculated',
    },
  ],
};

/** 5 to 8 % is usual on mechanical governors: trade judgement. */
function droopWords(percent: number): string {
  if (percent < 3) return 'Less than usual: a governor this stiff tends to hunt.';
  if (percent <= 10) return 'Usual for a small engine: 5 to 8 %, to 10 % with an air vane.';
  return 'More than usual: spring in the wrong hole, worn links, a throttle that does not open, or an engine short of power.';
}

function overspeed(noLoad: number, rated: number) {
  const over = noLoad > rated * 1.005;
  return verdict(
    'overspeed',
    'Against the plate',
    over ? 'fail' : 'pass',
    over
      ? `${Math.round(noLoad - rated)} rpm over the plate: set it back before anything else`
      : 'not over the plate',
    over ? practice : { from: 'plate', detail: 'the speed you gave' },
  );
}

export const speedSheets: readonly Worksheet[] = [tipSpeedSheet, pulleySpeed, generatorSpeed, governorDroop];
