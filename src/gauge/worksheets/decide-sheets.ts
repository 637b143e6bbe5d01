import { ask, computed, type Given, lines, near, number, words, worksheet } from '../../worksheet/index.js';
import { decide } from '../decide.js';
import { GaugeError } from '../error.js';
import { type BetterTool, settle } from '../settle.js';
import { verdict } from './answers.js';
import { limitOf } from './fields.js';
import { chancePicture, distributionPicture } from './pictures.js';

const conformity = 'JCGM 106:2012, 7.3 to 7.5';
const how = computed(`probability of conformity, ${conformity}; 95 % rule of ISO 14253-1:2017 (from memory)`);

const valueFields = {
  value: ask.number(
    'Value',
    'What you measured, as a plain number. All figures of this sheet are in one and the same unit.',
    { hint: '0.0045', within: [-1e7, 1e7] },
  ),
  uncertainty: ask.number(
    'Uncertainty, k = 2',
    'Expanded uncertainty of the value (k = 2), as on your shop list. 0 compares exactly, and the answer says so.',
    { hint: '0.0006', within: [0, 1e7] },
  ),
  least: ask.number('Least allowed', 'Lower limit; leave empty if there is none.', {
    hint: '0.002',
    optional: true,
    within: [-1e7, 1e7],
  }),
  most: ask.number('Most allowed', 'Upper limit; leave empty if there is none.', {
    hint: '0.005',
    optional: true,
    within: [-1e7, 1e7],
  }),
  unit: ask.text('Unit', 'Only for the words of the answer.', { hint: 'in', optional: true }),
};

const sure = ask.number(
  'How sure, %',
  'A pass or a fail must be at least this sure. 95 % is the rule of ISO 14253-1 where nothing else is agreed.',
  { standard: '95', hint: '95', within: [50.1, 99.999] },
);

type Measured = Given<typeof valueFields & { sure: typeof sure }>;

const measured = ({ value, uncertainty, least, most, unit, sure }: Measured) => ({
  value,
  u: uncertainty / 2,
  limit: limitOf(least, most),
  confidence: sure / 100,
  ...(unit !== undefined && { unit }),
});

const names = {
  u: 'uncertainty',
  limit: 'most',
  confidence: 'sure',
  'limit.min': 'least',
  'limit.max': 'most',
} as const;

export const decideLimit = worksheet({
  id: 'decide-limit',
  group: 'Can I trust this reading?',
  title: 'Pass, fail, or too close to call',
  question: 'Does this reading pass its limit, or can my tool not tell?',
  purpose: 'A decision against a limit that takes the uncertainty of the measurement into account.',
  fields: { ...valueFields, sure },
  names,
  compute: (given) => {
    const asked = measured(given);
    const decision = decide(asked);
    return [
      verdict('verdict', 'Decision', decision, how, { picture: distributionPicture(asked) }),
      number('conforms', 'Chance that it conforms', decision.probabilityOfConformity, 4, how),
      number('margin', 'Distance to the nearest limit', decision.margin, undefined, how, {
        note: 'negative is outside',
      }),
    ];
  },
  cautions: [
    'The limit must be this engine’s own. A limit of the class decides nothing about one engine.',
    'A pass with a wrong uncertainty is worth nothing: use the figure of your instrument in your hands.',
  ],
  sources: [conformity, 'ISO 14253-1:2017 (from memory)'],
  examples: [
    {
      title: 'One upper limit: a Zener diode at −5.47 V against −5.40 V',
      given: { value: '-5.47', uncertainty: '0.10', most: '-5.40', unit: 'V' },
      expect: { conforms: near(0.92, 0.005), verdict: { text: 'cannot-decide' } },
      source: 'JCGM 106:2012, example of a single upper limit',
      mark: 'memory, recomputed',
    },
    {
      title: 'One lower limit: bursting pressure 509.7 kPa against 490 kPa',
      given: { value: '509.7', uncertainty: '17.2', least: '490', unit: 'kPa' },
      expect: { conforms: near(0.99, 0.005), verdict: { text: 'pass' } },
      source: 'JCGM 106:2012, example of a single lower limit',
      mark: 'memory, recomputed',
    },
    {
      title: 'Two limits: viscosity of an SAE 40 oil, 13.6 mm²/s in 12.5 to 16.3',
      given: { value: '13.6', uncertainty: '3.6', least: '12.5', most: '16.3', unit: 'mm²/s' },
      expect: { conforms: near(0.66, 0.005), verdict: { text: 'cannot-decide' } },
      source: 'JCGM 106:2012, example of a two-sided limit',
      mark: 'memory, recomputed',
    },
  ],
});

export const settleReading = worksheet({
  id: 'settle-reading',
  group: 'Can I trust this reading?',
  title: 'What would settle it',
  question: 'It is too close to call: do I need a better tool, or more repeats?',
  purpose: 'The uncertainty that would decide, which tools reach it, and how many readings in all.',
  fields: {
    ...valueFields,
    scatter: ask.number(
      'Scatter of one reading',
      'Standard deviation of repeats (see pooled readings). Leave empty to leave repeats out.',
      { hint: '0.0004', optional: true, within: [0, 1e7] },
    ),
    systematic: ask.number(
      'What repeats cannot lower, k = 2',
      'Expanded uncertainty of zero, standard and temperature, which all repeats share. 0 if you know of none.',
      { standard: '0', hint: '0.0002', within: [0, 1e7] },
    ),
    tools: ask.text('Better tools', 'Name and expanded uncertainty (k = 2) of each, parted by semicolons.', {
      hint: 'dial bore gauge 0.0003; micrometer 0.0002',
      optional: true,
    }),
    sure,
  },
  names,
  compute: ({ scatter, systematic, tools, ...given }) => {
    const asked = measured(given);
    const found = settle({
      ...asked,
      ...(scatter !== undefined && { scatter }),
      systematic: systematic / 2,
      tools: readTools(tools ?? ''),
    });
    return [
      words('now', 'As it stands', found.verdict, how),
      words('settle', 'What settles it', found.words, how),
      number('needed', 'Uncertainty needed, k = 2', 2 * found.neededU, undefined, how, {
        picture: chancePicture(asked),
      }),
      lines('tools', 'Tools fine enough', found.tools, how),
      ...(found.repeats === undefined ? [] : [repeatsAnswer(found.repeats)]),
    ];
  },
  cautions: ['All this holds only if the mean stays where it is. New readings may move it.'],
  sources: [conformity, 'JCGM 100:2008, 4.2.3'],
  examples: [
    {
      title: 'A value one unit under its limit, scatter 1, shared part 0.4 at k = 2: four readings',
      given: {
        value: '9',
        uncertainty: '2',
        most: '10',
        scatter: '1',
        systematic: '0.4',
        tools: 'coarse 1.4; fine 1.0',
      },
      expect: {
        repeats: near(4, 0),
        needed: near(1.2159, 0.0001),
        tools: { text: 'fine' },
      },
      source: 'own arithmetic: u = 1/1.6449; n = 1/(u² − 0.04), rounded up',
      mark: 'calculated',
    },
    {
      title: 'The shared part alone is too large: no number of repeats',
      given: { value: '9', uncertainty: '2', most: '10', scatter: '1', systematic: '1.4' },
      expect: { repeats: { text: 'no number of repeats' } },
      source: 'own arithmetic: 0.7 > 0.608',
      mark: 'calculated',
    },
  ],
});

function repeatsAnswer(repeats: number | string) {
  return typeof repeats === 'number'
    ? number('repeats', 'Readings in all', repeats, 0, how)
    : words('repeats', 'Readings in all', repeats, how);
}

/** "dial bore gauge 0.0003; micrometer 0.0002" */
function readTools(text: string): BetterTool[] {
  return text
    .split(';')
    .map((item) => item.trim())
    .filter(Boolean)
    .map((item) => {
      const [, name, figure] = /^(.+?)\s+([\d.]+(?:e-?\d+)?)$/i.exec(item) ?? [];
      if (!name || !Number.isFinite(Number(figure)))
        throw new GaugeError(
          `"${item}" is not a tool; write name and uncertainty, as dial bore gauge 0.0003`,
          'tools',
          item,
        );
      return { name, u: Number(figure) / 2 };
    });
}
