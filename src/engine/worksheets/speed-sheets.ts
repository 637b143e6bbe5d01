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
  practice,
  spaced,
  verdict,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { beltDrive, droop, generatorHz, rpmAtTipSpeed, rpmForHz, tipSpeed } from '../speeds.js';
import { runningSpan } from './fields.js';

const perMinute = (metersPerSecond: number) => (metersPerSecond * 60) / 0.3048;

const tipSpeedSheet = worksheet({
  id: 'tip-speed',
  group: 'Speed and spark',
  title: 'Blade tip speed',
  question: 'Is this blade turning too fast?',
  purpose:
    'Tip speed of a blade or rotor against the rotary-mower limit, and the engine speed that just keeps to it.',
  fields: {
    diameter: ask.in('mm', 'Blade length', 'Tip to tip, through the center.', {
      hint: '21 in',
      within: ['50 mm', '2 m'],
    }),
    speed: ask.in(
      'rpm',
      'Blade speed',
      'Of the blade itself: the engine’s only when it sits on the crankshaft.',
      { hint: '3100 rpm', within: runningSpan },
    ),
    limit: ask.in(
      'm/s',
      'Most allowed',
      '19 000 ft/min stands: ANSI B71.1 for rotary mowers. Other machines have limits of their own.',
      { standard: '19000 ft/min', within: ['1 m/s', '300 m/s'] },
    ),
  },
  compute: ({ diameter: diameterMm, speed: rpm, limit }) => {
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
  },
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
        'tip-speed': near(17042, 1.5, 'ft/min'),
        verdict: { text: 'pass' },
        'most-speed': near(3456, 0.5, 'rpm'),
      },
      source: 'mower speed figures on a public page; limit of ANSI B71.1',
      mark: 'seen',
    },
    {
      title: '21 in at 3600 rpm: 19 792 ft/min, over',
      given: { diameter: '21 in', speed: '3600 rpm' },
      expect: { 'tip-speed': near(19792, 0.5, 'ft/min'), verdict: { text: 'fail' } },
      source: 'own arithmetic: π·21·3600/12',
      mark: 'calculated',
    },
  ],
});

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

const pulleySpeed = worksheet({
  id: 'pulley-speed',
  group: 'Speed and spark',
  title: 'Pulleys',
  question: 'How fast does the driven pulley turn?',
  purpose: 'Driven speed and belt speed from two pulleys, with slip.',
  fields: {
    speed: ask.in('rpm', 'Driver speed', 'Of the engine’s shaft, as a rule.', {
      hint: '3600 rpm',
      within: runningSpan,
    }),
    driver: ask.in(
      'mm',
      'Driver pulley',
      'Pitch diameter: where the belt’s cord runs, some 3 mm inside the rim all round (common practice).',
      { hint: '60 mm', within: ['5 mm', '2 m'] },
    ),
    driven: ask.in('mm', 'Driven pulley', 'Pitch diameter, measured the same way.', {
      hint: '120 mm',
      within: ['5 mm', '2 m'],
    }),
    slip: ask.in('1', 'Slip', '2 % stands for a V-belt in order (common practice).', {
      standard: '2 %',
      within: ['0 %', '30 %'],
    }),
  },
  compute: ({ speed, driver, driven, slip }) => {
    const { drivenRpm, beltSpeed } = beltDrive({
      driverRpm: speed,
      driverMm: driver,
      drivenMm: driven,
      slip,
    });
    const drivenRule = computed('speed · driver/driven · (1 − slip)');
    return [
      amount('driven-speed', 'Driven speed', drivenRpm, 'rpm', drivenRule),
      amount('belt-speed', 'Belt speed', beltSpeed, 'm/s', computed('π · driver · speed'), {
        note: beltSpeed > 30 ? 'over what plain pulleys of cast iron are commonly run at, 30 m/s' : undefined,
      }),
    ];
  },
  cautions: [
    'A smaller driven pulley speeds up a blade or rotor: work out its tip speed before fitting one.',
  ],
  sources: ['common practice'],
  examples: [
    {
      title: '3600 rpm, 60 on 120 mm, no slip: 1800 rpm, 11.3 m/s',
      given: { speed: '3600 rpm', driver: '60 mm', driven: '120 mm', slip: '0 %' },
      expect: { 'driven-speed': near(1800, 1e-6, 'rpm'), 'belt-speed': near(11.31, 0.005, 'm/s') },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

const generatorSpeed = worksheet({
  id: 'generator-speed',
  group: 'Speed and spark',
  title: 'Generator frequency',
  question: 'What frequency does this generator give at this speed?',
  purpose: 'Frequency from speed and poles, and the speed for the frequency wanted.',
  fields: {
    speed: ask.in('rpm', 'Speed', 'Of the rotor.', { hint: '3720 rpm', within: runningSpan }),
    poles: ask.count(
      'Poles',
      'Of the rotor; 2 stands: nearly all that turn at 3000 or 3600 rpm (common practice).',
      { standard: '2', within: [2, 24] },
    ),
    wanted: ask.in('Hz', 'Wanted', 'Frequency of the mains here; 60 Hz stands (common practice).', {
      standard: '60 Hz',
      within: ['5 Hz', '500 Hz'],
    }),
  },
  compute: ({ speed, poles, wanted }) => {
    const hz = generatorHz(speed, poles);
    const wantedRpm = rpmForHz(wanted, poles);
    const off = 100 * (hz / wanted - 1);
    return [
      amount('frequency', 'Frequency', hz, 'Hz', computed('speed · poles/120')),
      amount(
        'speed-wanted',
        'Speed for the frequency wanted',
        wantedRpm,
        'rpm',
        computed('120 · frequency/poles'),
      ),
      number('off', 'Off the frequency wanted, %', off, 1, computed('difference of the two'), {
        note: 'without load 3 to 4 % above is usual, so that it does not fall below under load (common practice)',
      }),
    ];
  },
  names: { frequency: 'wanted', rpm: 'speed' },
  cautions: [
    'Voltage and frequency go up together: an overspeeding generator burns what hangs on it.',
    'Wiring and mains connection are for licensed people.',
  ],
  sources: ['common practice'],
  examples: [
    {
      title: '3720 rpm, two poles: 62 Hz',
      given: { speed: '3720 rpm' },
      expect: { frequency: near(62, 1e-9, 'Hz'), 'speed-wanted': near(3600, 1e-6, 'rpm') },
      source: 'a service manual’s no-load setting, 62 Hz and 3720 rpm, read second-hand',
      mark: 'seen',
    },
  ],
});

const governorDroop = worksheet({
  id: 'governor-droop',
  group: 'Speed and spark',
  title: 'Governor droop',
  question: 'Does the governor hold the speed under load?',
  purpose: 'How much the speed falls from no load to load, against what is usual.',
  fields: {
    'no-load': ask.in('rpm', 'Without load', 'Settled, warm, throttle at fast.', {
      hint: '3600 rpm',
      within: runningSpan,
    }),
    loaded: ask.in('rpm', 'Under load', 'Settled, at full load.', { hint: '3400 rpm', within: runningSpan }),
    rated: ask.in('rpm', 'Allowed without load', 'From the machine’s plate.', {
      hint: '3600 rpm',
      optional: true,
      within: runningSpan,
    }),
  },
  compute: ({ 'no-load': noLoad, loaded, rated }) => {
    const part = 100 * droop(noLoad, loaded);
    return [
      number('droop', 'Droop, %', part, 1, computed('(no load − loaded)/loaded')),
      words('meaning', 'Which means', droopWords(part), judgement),
      ...(rated === undefined ? [] : [overspeed(noLoad, rated)]),
    ];
  },
  names: { noLoad: 'no-load' },
  cautions: ['If the speed runs away: choke shut, fuel off, ground the plug. Never lean over the blade.'],
  sources: ['ISO 3046-4', 'trade judgement, no source'],
  examples: [
    {
      title: '3720 falling to 3540 rpm: 5.1 %',
      given: { 'no-load': '3720 rpm', loaded: '3540 rpm' },
      expect: { droop: near(5.085, 0.001) },
      source: 'own arithmetic: 180/3540',
      mark: 'calculated',
    },
  ],
});

/** 5 to 8 % is usual on mechanical governors: trade judgement. */
function droopWords(percent: number): string {
  if (percent < 3) return 'Less than usual: a governor this stiff tends to hunt.';
  if (percent <= 10) return 'Usual for a small engine: 5 to 8 %, to 10 % with an air vane.';
  return 'More than usual: spring in the wrong hole, worn links, a throttle that does not open, or an engine short of power.';
}

function overspeed(noLoad: number, rated: number) {
  const over = noLoad > rated * 1.005;
  const says = over
    ? `${Math.round(noLoad - rated)} rpm over the plate: set it back before anything else`
    : 'not over the plate';
  const origin = over ? practice : ({ from: 'plate', detail: 'the speed you gave' } as const);
  return verdict('overspeed', 'Against the plate', over ? 'fail' : 'pass', says, origin);
}

export const speedSheets = [governorDroop, generatorSpeed, tipSpeedSheet, pulleySpeed];
