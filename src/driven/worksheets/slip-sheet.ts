import { decide } from '../../gauge/index.js';
import { amount, ask, computed, near, standard, verdict, worksheet } from '../../worksheet/index.js';
import { beltSlip } from '../belt.js';
import { practiceVerdict } from './practice-verdict.js';

/** What a V-belt in order loses under load (common practice). */
const usualMost = 0.03;

export const beltSlipSheet = worksheet({
  id: 'belt-slip',
  group: 'The machine it drives',
  title: 'Belt slip',
  question: 'Does the belt slip?',
  purpose:
    'The speed of both pulleys at work against the ratio of their diameters; what is missing, the belt loses.',
  fields: {
    one: ask.in('mm', 'Driving pulley', 'Pitch diameter, where the belt’s cord runs.', '2.5 in'),
    other: ask.in('mm', 'Driven pulley', 'Pitch diameter.', '6 in'),
    speed: ask.in(
      'rpm',
      'Speed of the driving pulley',
      'At work; by tachometer or out of a recording.',
      '3400 rpm',
    ),
    driven: ask.in('rpm', 'Speed of the driven pulley', 'At the same moment.', '1380 rpm'),
    uncertainty: ask.in(
      '1',
      'Each speed, k = 2',
      '0.5 % stands for a tachometer (trade judgement, no source); a recording says its own ±.',
      { standard: '0.5 %', within: ['0 %', '20 %'] },
    ),
    most: ask.in('1', 'Most allowed', 'From the machine’s manual; 3 % is usual (common practice).', {
      hint: '5 %',
      optional: true,
      within: ['0 %', '60 %'],
    }),
  },
  compute: ({ one, other, speed, driven, uncertainty, most }) => {
    const percent = 100 * beltSlip({ oneMm: one, otherMm: other, oneRpm: speed, otherRpm: driven });
    const u = ((100 - percent) * Math.SQRT2 * uncertainty) / 2;
    const found = decide({ value: percent, u, limit: { max: 100 * (most ?? usualMost) }, unit: '%' });
    return [
      most === undefined
        ? practiceVerdict('verdict', 'Slip', found.stands)
        : verdict('verdict', 'Slip', found.verdict, found.why, standard('your limit; JCGM 106:2012')),
      amount('slip', 'It loses', percent, '%', computed('1 − driven·D/(driving·d)'), { u }),
      amount(
        'expected',
        'It should turn',
        (speed * one) / other,
        'rpm',
        computed('the ratio of the pulleys'),
      ),
    ];
  },
  cautions: [
    'Both speeds from a safe side with the guard on: an optical tachometer through its opening, or by ear.',
    'A belt that slips is hot and glazed: renewed, not dressed. Lead off before a hand goes near it.',
  ],
  sources: ['Machinery’s Handbook, belts: speeds are inversely as the pitch diameters', 'JCGM 106:2012'],
  examples: [
    {
      title: '3400 rpm on 2.5 and 6 in: 1417 rpm without slip; 1240 rpm is an eighth lost',
      given: { one: '2.5 in', other: '6 in', speed: '3400 rpm', driven: '1240 rpm', most: '5 %' },
      expect: {
        slip: near(12.47, 0.01, '%'),
        expected: near(1416.7, 0.1, 'rpm'),
        verdict: { text: 'fail' },
      },
      source: 'own arithmetic',
      mark: 'calculated',
    },
    {
      title: '1400 rpm is 1.2 %: within what a sound belt loses, as far as the trade knows',
      given: { one: '2.5 in', other: '6 in', speed: '3400 rpm', driven: '1400 rpm' },
      expect: { slip: near(1.18, 0.01, '%'), verdict: { text: 'cannot-decide' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
    {
      title: 'a driven pulley that is faster than its ratio allows is refused',
      given: { one: '2.5 in', other: '6 in', speed: '3400 rpm', driven: '1700 rpm' },
      expect: { driven: { refused: 'faster' } },
      source: 'own arithmetic',
      mark: 'calculated',
    },
  ],
});
