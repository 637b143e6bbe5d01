import {
  computed,
  type OldGiven as Given,
  lines,
  number,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { decide, type Limit } from '../decide.js';
import { GaugeError } from '../error.js';
import { type BetterTool, settle } from '../settle.js';
import { refusing, verdict } from './answers.js';
import { chancePicture, distributionPicture } from './pictures.js';

const conformity = 'JCGM 106:2012, 7.3 to 7.5';
const how = computed(`probability of conformity, ${conformity}; 95 % rule of ISO 14253-1:2017 (from memory)`);

const valueFields: Worksheet['fields'] = [
  {
    id: 'value',
    label: 'Value',
    help: 'What you measured, as a plain number. All figures of this sheet are in one and the same unit.',
    kind: 'number',
    hint: '0.0045',
  },
  {
    id: 'uncertainty',
    label: 'Uncertainty, k = 2',
    help: 'Expanded uncertainty of the value (k = 2), as on your shop list. 0 compares exactly, and the answer says so.',
    kind: 'number',
    hint: '0.0006',
  },
  {
    id: 'least',
    label: 'Least allowed',
    help: 'Lower limit; leave empty if there is none.',
    kind: 'number',
    required: false,
    hint: '0.002',
  },
  {
    id: 'most',
    label: 'Most allowed',
    help: 'Upper limit; leave empty if there is none.',
    kind: 'number',
    required: false,
    hint: '0.005',
  },
  {
    id: 'unit',
    label: 'Unit',
    help: 'Only for the words of the answer.',
    kind: 'text',
    required: false,
    hint: 'in',
  },
];

const percentField: Worksheet['fields'][number] = {
  id: 'sure',
  label: 'How sure, %',
  help: 'A pass or a fail must be at least this sure. 95 % is the rule of ISO 14253-1 where nothing else is agreed.',
  kind: 'number',
  standard: '95',
  hint: '95',
};

function measured(given: Given) {
  return {
    value: given.number('value'),
    u: given.number('uncertainty') / 2,
    limit: limitOf(given),
    confidence: given.number('sure') / 100,
    ...(given.has('unit') && { unit: given.text('unit') }),
  };
}

function limitOf(given: Given): Limit {
  return {
    ...(given.has('least') && { min: given.number('least') }),
    ...(given.has('most') && { max: given.number('most') }),
  };
}

const fieldOf = {
  u: 'uncertainty',
  limit: 'most',
  confidence: 'sure',
  'limit.min': 'least',
  'limit.max': 'most',
};

export const decideLimit: Worksheet = {
  id: 'decide-limit',
  title: 'Pass, fail, or too close to call',
  question: 'Does this reading pass its limit, or can my tool not tell?',
  purpose: 'A decision against a limit that takes the uncertainty of the measurement into account.',
  fields: [...valueFields, percentField],
  compute: refusing(fieldOf, (given) => {
    const asked = measured(given);
    const decision = decide(asked);
    return [
      verdict('verdict', 'Decision', decision, how, { picture: distributionPicture(asked) }),
      number('conforms', 'Chance that it conforms', decision.probabilityOfConformity, 4, how),
      number('margin', 'Distance to the nearest limit', decision.margin, undefined, how, {
        note: 'negative is outside',
      }),
    ];
  }),
  cautions: [
    'The limit must be this engine’s own. A limit of the class decides nothing about one engine.',
    'A pass with a wrong uncertainty is worth nothing: use the figure of your instrument in your hands.',
  ],
  sources: [conformity, 'ISO 14253-1:2017 (from memory)'],
  examples: [
    {
      title: 'One upper limit: a Zener diode at −5.47 V against −5.40 V',
      given: { value: '-5.47', uncertainty: '0.10', most: '-5.40', unit: 'V' },
      expect: { conforms: { value: 0.92, tolerance: 0.005 }, verdict: { text: 'cannot-decide' } },
      source: 'JCGM 106:2012, example of a single upper limit',
      mark: 'memory, recomputed',
    },
    {
      title: 'One lower limit: bursting pressure 509.7 kPa against 490 kPa',
      given: { value: '509.7', uncertainty: '17.2', least: '490', unit: 'kPa' },
      expect: { conforms: { value: 0.99, tolerance: 0.005 }, verdict: { text: 'pass' } },
      source: 'JCGM 106:2012, example of a single lower limit',
      mark: 'memory, recomputed',
    },
    {
      title: 'Two limits: viscosity of an SAE 40 oil, 13.6 mm²/s in 12.5 to 16.3',
      given: { value: '13.6', uncertainty: '3.6', least: '12.5', most: '16.3', unit: 'mm²/s' },
      expect: { conforms: { value: 0.66, tolerance: 0.005 }, verdict: { text: 'cannot-decide' } },
      source: 'JCGM 106:2012, example of a two-sided limit',
      mark: 'memory, recomputed',
    },
  ],
};

export const settleReading: Worksheet = {
  id: 'settle-reading',
  title: 'What would settle it',
  question: 'It is too close to call: do I need a better tool, or more repeats?',
  purpose: 'The uncertainty that would decide, which tools reach it, and how many readings in all.',
  fields: [
    ...valueFields,
    {
      id: 'scatter',
      label: 'Scatter of one reading',
      help: 'Standard deviation of repeats (see pooled readings). Leave empty to leave repeats out.',
      kind: 'number',
      required: false,
      hint: '0.0004',
    },
    {
      id: 'systematic',
      label: 'What repeats cannot lower, k = 2',
      help: 'Expanded uncertainty of zero, standard and temperature, which all repeats share. 0 if you know of none.',
      kind: 'number',
      standard: '0',
      hint: '0.0002',
    },
    {
      id: 'tools',
      label: 'Better tools',
      help: 'Name and expanded uncertainty (k = 2) of each, parted by semicolons.',
      kind: 'text',
      required: false,
      hint: 'dial bore gauge 0.0003; micrometer 0.0002',
    },
    percentField,
  ],
  compute: refusing({ ...fieldOf, scatter: 'scatter', systematic: 'systematic' }, (given) => {
    const asked = measured(given);
    const found = settle({
      ...asked,
      ...(given.has('scatter') && { scatter: given.number('scatter') }),
      systematic: given.number('systematic') / 2,
      tools: given.has('tools') ? readTools(given.text('tools')) : [],
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
  }),
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
        repeats: { value: 4, tolerance: 0 },
        needed: { value: 1.2159, tolerance: 0.0001 },
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
};

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
