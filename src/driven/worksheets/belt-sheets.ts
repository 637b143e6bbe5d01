import { amount, ask, computed, near, number, ruleOfThumb, worksheet } from '../../worksheet/index.js';
import { centersFor, openBelt, staticTension, tensionFromDeflection } from '../belt.js';
import { decideForEach, practiceVerdict } from './practice-verdict.js';

const pitch =
  'Pitch diameter: where the belt’s cord runs, some 3 mm inside the rim all round (common practice).';
const one = ask.in('mm', 'One pulley', pitch, '2.5 in');
const other = ask.in('mm', 'Other pulley', pitch, '6 in');
const geometry = computed('two tangents and two arcs, exact');
const belowHand = 'Lead off and the machine blocked before a hand goes near belt or pulley.';

const beltLength = worksheet({
  id: 'belt-length',
  group: 'The machine it drives',
  title: 'Belt length and centers',
  question: 'How long a belt does this drive take?',
  purpose:
    'Pitch length of an open belt from pulleys and centers, or the centers for a belt at hand; ratio, wrap and what an adjustment takes up.',
  fields: {
    one,
    other,
    centers: ask.in(
      'mm',
      'Distance of the centers',
      'Middle to middle of the shafts. Or give the belt’s length.',
      {
        hint: '14 in',
        optional: true,
      },
    ),
    length: ask.in(
      'mm',
      'Belt',
      'Its pitch length; outside length less some 1.3 in for an A section, 1.8 in for a B (common practice).',
      { hint: '42 in', optional: true, within: ['1 mm', '6 m'] },
    ),
    move: ask.in('mm', 'Adjustment', 'How far the centers move.', { hint: '1/2 in', optional: true }),
  },
  names: { centersMm: 'centers' },
  oneOf: [{ ids: ['centers', 'length'], wanted: true }],
  compute: ({ one, other, centers, length, move }) => {
    const at = centers ?? centersFor(length ?? Number.NaN, one, other);
    const belt = openBelt({ oneMm: one, otherMm: other, centersMm: at });
    const [small, large] = [Math.min(one, other), Math.max(one, other)];
    return [
      amount('length', 'Pitch length', belt.lengthMm, 'mm', geometry),
      amount('centers', 'Centers', at, 'mm', geometry),
      amount('span', 'Free span', belt.spanMm, 'mm', geometry),
      amount('wrap', 'Wrap of the smaller pulley', belt.wrapDegrees, '°', geometry, {
        note:
          belt.wrapDegrees < 120 ? 'little: under 120° a V-belt slips easily (common practice)' : undefined,
      }),
      number('ratio', 'Ratio', large / small, 3, computed('larger by smaller pulley')),
      ...(move === undefined
        ? []
        : [amount('takes-up', 'The adjustment takes up', takenUp(at, move, one, other), 'mm', geometry)]),
    ];
  },
  cautions: [belowHand],
  sources: ['Machinery’s Handbook', 'Mechanical Engineering Design, 9th ed.'],
  examples: [
    {
      title: '7.4 and 11 in with a belt of 113.8 in pitch length: centers 42.4 in',
      given: { one: '7.4 in', other: '11 in', length: '113.8 in' },
      expect: { centers: near(42.4, 0.05, 'in'), ratio: near(1.486, 1e-3) },
      source: 'Mechanical Engineering Design, 9th ed., example 17-4',
      mark: 'memory',
    },
    {
      title: 'equal pulleys of 100 mm at 300 mm: 914 mm',
      given: { one: '100 mm', other: '100 mm', centers: '300 mm', move: '5 mm' },
      expect: { length: near(600 + 100 * Math.PI, 1e-3, 'mm'), 'takes-up': near(10, 1e-6, 'mm') },
      source: 'own arithmetic: 2·300 + π·100',
      mark: 'calculated',
    },
    {
      title: 'pulleys that would touch are refused',
      given: { one: '100 mm', other: '100 mm', centers: '90 mm' },
      expect: { centers: { refused: 'touch' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

const takenUp = (at: number, move: number, one: number, other: number): number =>
  openBelt({ oneMm: one, otherMm: other, centersMm: at + move }).lengthMm -
  openBelt({ oneMm: one, otherMm: other, centersMm: at }).lengthMm;

const beltTension = worksheet({
  id: 'belt-tension',
  group: 'The machine it drives',
  title: 'Belt tension',
  question: 'Is this belt tight enough?',
  purpose:
    'The tension that the drive needs, the force that must bend the span by a sixty-fourth, and whether a measured one is right.',
  fields: {
    one,
    other,
    centers: ask.in('mm', 'Distance of the centers', 'Middle to middle of the shafts.', '14 in'),
    speed: ask.in('rpm', 'Speed of the first pulley', 'As it turns at work.', '3600 rpm'),
    power: ask.in(
      'W',
      'Power through the belt',
      'What the engine gives at work; its rating if nothing else is known.',
      '5 hp',
    ),
    belts: ask.count('Belts', 'Side by side; 1 stands.', { standard: '1' }),
    mass: ask.number(
      'Weight of a belt, kg a meter',
      '0.11 stands for an A section, a B has 0.19 (from memory).',
      {
        standard: '0.11',
        within: [0, 5],
      },
    ),
    force: ask.in('N', 'Force measured', 'By a spring scale at the middle of the span, square to it.', {
      hint: '4 lbf',
      optional: true,
    }),
    deflection: ask.in('mm', 'It bent by', 'A sixty-fourth of the span if left empty.', {
      hint: '3/16 in',
      optional: true,
    }),
  },
  names: { powerW: 'power' },
  compute: ({ one, other, centers, speed, power, belts, mass, force, deflection }) => {
    const { wrapDegrees, spanMm } = openBelt({ oneMm: one, otherMm: other, centersMm: centers });
    const beltMetersPerSecond = (Math.PI * one * speed) / 60_000;
    const needed = staticTension({
      powerW: power,
      beltMetersPerSecond,
      wrapDegrees,
      belts,
      massPerMeterKg: mass,
    });
    const bend = deflection ?? spanMm / 64;
    const rule = ruleOfThumb('500·(2.5 − K)/K·P/(n·v) + m·v², belt trade');
    return [
      amount('tension', 'Tension needed, each belt', needed, 'N', rule),
      amount('bend', 'Bend the middle by', bend, 'mm', ruleOfThumb('a sixty-fourth of the span, belt trade')),
      amount('force-needed', 'With', (4 * needed * bend) / spanMm, 'N', computed('T = F·t/4h'), {
        note: 'up to half as much again for a new belt or a jerking load (common practice)',
      }),
      amount('belt-speed', 'Belt speed', beltMetersPerSecond, 'm/s', computed('π·d·n')),
      ...(force === undefined ? [] : [tensionVerdict(force, { bend, spanMm, needed })]),
    ];
  },
  cautions: [
    belowHand,
    'Too tight wears bearings and bends shafts; a glazed or cracked belt is renewed, not tightened.',
  ],
  sources: [
    'Mechanical Engineering Design, 9th ed., section 17-3',
    'belt trade’s deflection rule: common practice',
  ],
  examples: [
    {
      title:
        'three belts for 12 hp on 7.4 and 11 in: 29.8 lbf each beside what the belt’s own weight throws out',
      given: {
        ...{
          one: '7.4 in',
          other: '11 in',
          centers: '42.4 in',
          speed: '1750 rpm',
          power: '12 hp',
          belts: '3',
          mass: '0',
        },
        ...{ force: '2.5 lbf' },
      },
      expect: { tension: near(29.75, 0.2, 'lbf'), verdict: { text: 'cannot-decide' } },
      source: 'Mechanical Engineering Design, 9th ed., example 17-4',
      mark: 'memory, recomputed',
    },
    {
      title: 'the same drive pressed in with half a pound: slack',
      given: {
        ...{
          one: '7.4 in',
          other: '11 in',
          centers: '42.4 in',
          speed: '1750 rpm',
          power: '12 hp',
          belts: '3',
          mass: '0',
        },
        ...{ force: '0.5 lbf' },
      },
      expect: { verdict: { text: 'cannot-decide' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

/** From what the trade's formula asks for up; a spring scale and a rule tell a force to some 15 %, k = 2. */
function tensionVerdict(
  force: number,
  { bend, spanMm, needed }: { bend: number; spanMm: number; needed: number },
) {
  const has = tensionFromDeflection(force, spanMm, bend);
  const found = decideForEach(
    { value: has, u: 0.075 * has, limit: { min: needed } },
    { metric: 'N', inch: 'lbf' },
  );
  return practiceVerdict('verdict', 'Tight enough', found.stands);
}

export const beltSheets = [beltLength, beltTension];
