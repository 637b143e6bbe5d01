import { decideExtreme } from '../../gauge/index.js';
import { to } from '../../quantity/index.js';
import { amount, ask, computed, near, number, verdict, worksheet } from '../../worksheet/index.js';
import { DrivenError } from '../error.js';
import { grindsLeft, ground } from '../knife.js';

const sharp = 'Lead off and rotor blocked; gloves. A rotor turns on its own weight when a knife comes off.';

const knifeGap = worksheet({
  id: 'knife-gap',
  group: 'The machine it drives',
  title: 'Knife to anvil',
  question: 'Is the gap between knife and anvil right?',
  purpose:
    'Gaps by feeler at several places along the knife against the maker’s range; the widest and the narrowest count.',
  fields: {
    gaps: ask.list(
      'length',
      'Gaps',
      'The thickest feeler that goes, at both ends and the middle, for each knife.',
      '0.020, 0.022, 0.025 in',
    ),
    least: ask.in('mm', 'Least allowed', 'From the machine’s manual.', { hint: '0.015 in', optional: true }),
    most: ask.in('mm', 'Most allowed', 'From the machine’s manual.', { hint: '0.030 in', optional: true }),
    uncertainty: ask.in(
      'mm',
      'Feelers, k = 2',
      '0.05 mm stands for a feeler set by hand (trade judgement, no source).',
      { standard: '0.05 mm' },
    ),
  },
  compute: ({ gaps, least, most, uncertainty }) => {
    if (least === undefined && most === undefined)
      throw new DrivenError(
        'give the least or the most that the machine’s manual allows.',
        'most',
        undefined,
      );
    const mm = gaps.map((gap) => to(gap, 'mm'));
    const shared = { u: uncertainty / 2, count: mm.length, unit: 'mm' };
    const wide =
      most === undefined ? [] : [decideExtreme({ ...shared, value: Math.max(...mm), limit: { max: most } })];
    const narrow =
      least === undefined
        ? []
        : [decideExtreme({ ...shared, value: Math.min(...mm), limit: { min: least } })];
    const order = ['fail', 'cannot-decide', 'pass'] as const;
    const worst = [...wide, ...narrow].toSorted(
      (a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict),
    )[0]!;
    const spread = Math.max(...mm) - Math.min(...mm);
    return [
      verdict('verdict', 'Gap', worst.verdict, worst.why, {
        from: "maker's sheet",
        detail: 'the range you gave; JCGM 106:2012',
      }),
      amount('spread', 'Widest less narrowest', spread, 'mm', computed('largest less smallest'), {
        u: (Math.SQRT2 * uncertainty) / 2,
        note: 'a gap that opens to one end: knife or anvil not square, or a bearing worn',
      }),
    ];
  },
  cautions: [
    sharp,
    'Turn the rotor by hand through a whole turn before the belt goes on: no knife may touch.',
  ],
  sources: ['JCGM 106:2012', 'the machine’s own manual'],
  examples: [
    {
      title: '0.020 to 0.025 in, allowed 0.015 to 0.035 in: right',
      given: { gaps: '0.020, 0.022, 0.025 in', least: '0.015 in', most: '0.035 in' },
      expect: { verdict: { text: 'pass' }, spread: near(0.005, 1e-9, 'in') },
      source: 'own arithmetic',
      mark: 'calculated',
    },
    {
      title: '0.060 in where 0.035 in is allowed: too wide',
      given: { gaps: '0.055, 0.060, 0.060 in', most: '0.035 in' },
      expect: { verdict: { text: 'fail' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

const knifeGrind = worksheet({
  id: 'knife-grind',
  group: 'The machine it drives',
  title: 'Grinding a pair of knives',
  question: 'How much may come off these knives?',
  purpose:
    'What sharpening takes off in width and weight, how often it can be done again, and how unequal a pair may become.',
  fields: {
    thickness: ask.in('mm', 'Thickness', 'Of the knife.', '1/4 in'),
    length: ask.in('mm', 'Length', 'Of its edge.', '6 in'),
    angle: ask.in('°', 'Angle', 'Between the ground face and the flat one, as it came.', {
      hint: '35°',
      within: ['5°', '90°'],
    }),
    back: ask.in('mm', 'Edge goes back by', 'Until the deepest nick is gone.', '1/32 in'),
    width: ask.in('mm', 'Width now', 'From edge to back.', { hint: '3 in', optional: true }),
    least: ask.in('mm', 'Least width', 'Where the machine’s manual calls it done.', {
      hint: '2.75 in',
      optional: true,
    }),
    radius: ask.in(
      'mm',
      'Distance from the axis',
      'Of the knife’s middle: what one knife ground alone puts out of balance.',
      {
        hint: '8 in',
        optional: true,
      },
    ),
  },
  compute: ({ thickness, length, angle, back, width, least, radius }) => {
    const { faceMm, grams } = ground({
      thicknessMm: thickness,
      lengthMm: length,
      angleDegrees: angle,
      backMm: back,
    });
    const geometry = computed('a slice of length × thickness × back, steel of 7.85 g/cm³');
    return [
      amount('face', 'Ground face', faceMm, 'mm', computed('thickness/sin(angle)')),
      amount('grams', 'Comes off each knife', grams, 'g', geometry),
      ...(width === undefined || least === undefined
        ? []
        : [
            number(
              'left',
              'Can be done so often',
              grindsLeft(width, least, back),
              0,
              computed('what is left of the width'),
            ),
          ]),
      ...(radius === undefined
        ? []
        : [
            number('unbalance', 'Ground alone, out of balance by g·mm', grams * radius, 0, geometry, {
              note: 'so grind the pair alike, and weigh them',
            }),
          ]),
    ];
  },
  cautions: [
    sharp,
    'Keep the edge cool: a blue edge is soft. Eye shield; never on the side of a wheel that is not made for it.',
  ],
  sources: ['own geometry'],
  examples: [
    {
      title: '6 × 150 mm at 30°, back by 1 mm: face 12 mm, 7.1 g',
      given: {
        thickness: '6 mm',
        length: '150 mm',
        angle: '30°',
        back: '1 mm',
        width: '80 mm',
        least: '75 mm',
        radius: '200 mm',
      },
      expect: {
        face: near(12, 1e-9, 'mm'),
        grams: near(7.065, 1e-3, 'g'),
        left: near(5, 0),
        unbalance: near(1413, 0.1),
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});

export const knifeSheets = [knifeGap, knifeGrind];
