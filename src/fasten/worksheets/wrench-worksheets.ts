import { parseRange, to } from '../../quantity/index.js';
import { amount, ask, computed, lines, near, standard, words, worksheet } from '../../worksheet/index.js';
import { FastenError } from '../error.js';
import { commonPractice, sources } from '../sources.js';
import { adapterSetting } from '../wrench.js';
import { fitWrench, type Wrench } from '../wrench-fit.js';
import { torqueField } from './fields.js';

const adapterFormula = 'TW = TA·L/(L + E·cos θ)';
const publishedTable = 'torque wrench adapter formula, published worked example';

const adapterExample = (
  title: string,
  [torque, wrench, adapter]: readonly [string, string, string],
  [value, unit, tolerance]: readonly [number, string, number],
) => ({
  title,
  given: { torque, wrench, adapter },
  expect: { setting: near(value, tolerance, unit) },
  source: publishedTable,
  mark: 'seen' as const,
});

export const wrenchAdapter = worksheet({
  id: 'wrench-adapter',
  group: 'How tight?',
  title: 'Torque wrench with an adapter',
  question: 'I need a crowfoot on the wrench: what do I set?',
  purpose: 'The setting that gives the wanted torque at the bolt.',
  fields: {
    torque: torqueField('Wanted at the bolt.'),
    wrench: ask.in('mm', 'Wrench length', 'From the middle of the square drive to the middle of the grip.', {
      hint: '12 in',
      within: ['20 mm', '2 m'],
    }),
    adapter: ask.in(
      'mm',
      'Adapter length',
      'From the middle of the drive to the middle of the bolt. Folded back toward the grip: negative.',
      { hint: '2 in', within: ['-1 m', '1 m'] },
    ),
    angle: ask.quantity(
      'angle',
      'Angle of the adapter',
      '0° straight out (stands when empty), 90° to the side: no change.',
      { standard: '0 deg', within: ['-180 deg', '180 deg'] },
    ),
  },
  compute: ({ torque, wrench, adapter, angle }) => {
    const settingNm = adapterSetting({
      wantedNm: torque,
      wrenchMm: wrench,
      adapterMm: adapter,
      angleDeg: (angle.si * 180) / Math.PI,
    });
    return [amount('setting', 'Set on the wrench', settingNm, 'N·m', computed(adapterFormula))];
  },
  cautions: ['Pull at the middle of the grip, square to the wrench: the formula counts on it.'],
  sources: [adapterFormula, commonPractice],
  examples: [
    adapterExample(
      '12 in wrench, 2 in adapter, 70 lbf·in wanted: set 60',
      ['70 in-lb', '12 in', '2 in'],
      [60, 'in-lb', 0.005],
    ),
    adapterExample(
      '135 lbf·in, 10 in, +1.5 in: set 117.39',
      ['135 in-lb', '10 in', '1.5 in'],
      [117.39, 'in-lb', 0.006],
    ),
    adapterExample(
      '135 lbf·in, 10 in, −1.5 in: set 158.82',
      ['135 in-lb', '10 in', '-1.5 in'],
      [158.82, 'in-lb', 0.006],
    ),
    adapterExample(
      '50 lbf·ft, 16 in, 2 in: set 44.44',
      ['50 ft-lb', '16 in', '2 in'],
      [44.44, 'ft-lb', 0.006],
    ),
    adapterExample(
      '500 mm drawn out to 650 mm: 130 N·m wanted, set 100',
      ['130 N·m', '500 mm', '150 mm'],
      [100, 'N·m', 0.05],
    ),
  ],
});

function readWrenches(text: string): Wrench[] {
  const wrenches = text
    .split(';')
    .filter((each) => each.trim() !== '')
    .map(readWrench);
  if (wrenches.length === 0) throw new FastenError('wrenches: none was given', 'wrenches');
  return wrenches;
}

/** "1/4 drive: 20-200 in-lb ±4 %", one wrench. */
function readWrench(text: string): Wrench {
  const parts =
    /^\s*(?<name>[^:]+):\s*(?<range>.+?)\s*,?\s*(?:±|\+\/-)?\s*(?<percent>\d+(?:\.\d+)?)\s*%\s*$/.exec(
      text,
    )?.groups;
  if (!parts) {
    throw new FastenError(
      `wrenches: "${text.trim()}" is not read as a name, a range and an accuracy, such as "3/8 drive: 5-50 ft-lb ±4 %"`,
      'wrenches',
    );
  }
  const { low, high } = parseRange(parts.range!, 'torque');
  if (!low || !high)
    throw new FastenError(`wrenches: "${parts.range}" needs a least and a greatest torque`, 'wrenches');
  const name = parts.name!.trim();
  return {
    tool: name,
    name,
    minNm: to(low, 'N·m'),
    maxNm: to(high, 'N·m'),
    accuracyPercent: Number(parts.percent),
  };
}

export const wrenchFit = worksheet({
  id: 'wrench-fit',
  group: 'How tight?',
  title: 'Which wrench is fit',
  question: 'Which of my wrenches may I use for this torque?',
  purpose: 'Each wrench judged for one torque, with the torque that really arrives.',
  fields: {
    torque: torqueField('The torque to be set.'),
    wrenches: ask.text(
      'Wrenches',
      'Each with name, range and accuracy, parted by semicolons. Accuracy ±4 % is the usual class; the wrench or its paper says it.',
      '1/4 drive: 20-200 in-lb ±4 %; 1/2 drive: 20-150 ft-lb ±4 %',
    ),
  },
  compute: ({ torque, wrenches }) => {
    const found = fitWrench(torque, readWrenches(wrenches));
    const [first] = found;
    const how = standard(`${sources.wrenches}: 20 to 100 % of range`);
    return [
      words('best', 'Take', first?.fit ? first.wrench.name : 'none of these', how, {
        note: first?.fit
          ? first.why
          : 'a wrench is wanted that has this torque between a fifth and the whole of its range',
      }),
      lines(
        'judged',
        'Each wrench',
        found.map(({ wrench, fit, why }) => `${wrench.name}: ${fit ? 'fit' : 'not fit'}, ${why}`),
        how,
      ),
      ...(first?.fit
        ? [
            amount('arrives-least', 'Arrives, from', first.appliedNm[0], 'N·m', how),
            amount('arrives-most', 'to', first.appliedNm[1], 'N·m', how),
          ]
        : []),
    ];
  },
  cautions: ['A wrench that was dropped or never checked has no accuracy.'],
  sources: [sources.wrenches],
  examples: [
    {
      title: '140 in-lb: the 20–150 ft-lb wrench is refused, the 20–200 in-lb one gives 134.4 to 145.6',
      given: { torque: '140 in-lb', wrenches: '1/4 drive: 20-200 in-lb ±4 %; 1/2 drive: 20-150 ft-lb ±4 %' },
      expect: {
        best: { text: '1/4 drive' },
        'arrives-least': near(134.4, 0.05, 'in-lb'),
        'arrives-most': near(145.6, 0.05, 'in-lb'),
      },
      source: sources.wrenches,
      mark: 'calculated',
    },
  ],
});
