import {
  computed,
  type OldGiven as Given,
  lines,
  number,
  type OldWorksheet as Worksheet,
  words,
} from '../../worksheet/index.js';
import { type Budget, type BudgetLine, budget, type UncertaintySource } from '../budget.js';
import { decide } from '../decide.js';
import { GaugeError } from '../error.js';
import { repeats, scattersTooMuch } from '../pooled.js';
import { refusing, verdict } from './answers.js';

const guide = 'JCGM 100:2008';
const how = computed(`${guide}, 4.2, 4.3, 5.1.2, G.4.1, G.6.4`);

const halves = (id: string, label: string, when: string): Worksheet['fields'][number] => ({
  id,
  label,
  help: `Half-widths (± a), one a source. ${when}`,
  kind: 'list',
  of: 'number',
  required: false,
  hint: '0.0005; 0.0002',
});

export const uncertaintyBudget: Worksheet = {
  id: 'uncertainty-budget',
  title: 'Uncertainty budget',
  question: 'How good is this measurement, with everything in it?',
  purpose: 'Combined and expanded uncertainty from all sources, with degrees of freedom.',
  fields: [
    {
      id: 'repeats',
      label: 'Repeats',
      help: 'Readings of the same thing; their mean is used.',
      kind: 'list',
      of: 'number',
      required: false,
      hint: '2.5641; 2.5643; 2.5642',
    },
    {
      id: 'standard',
      label: 'Known standard uncertainties',
      help: 'Each with its degrees of freedom after a slash, if they are known; times its sensitivity, in the unit of the result.',
      kind: 'text',
      required: false,
      hint: '25/18; 9.7/25.6; 2.9',
    },
    {
      id: 'expanded',
      label: 'Expanded uncertainties, k = 2',
      help: 'From instrument list or certificate.',
      kind: 'list',
      of: 'number',
      required: false,
      hint: '0.0003',
    },
    halves(
      'rectangular',
      'Anywhere within',
      'Nothing is known but the bounds: resolution, tolerance of a standard.',
    ),
    halves('triangular', 'Mostly in the middle', 'The bounds are known and the middle is likelier.'),
    halves('arcsine', 'Swinging to and fro', 'A value that cycles: temperature under a thermostat.'),
    {
      id: 'coverage',
      label: 'Coverage, %',
      help: 'How often the interval shall hold the true value. 95 % is usual.',
      kind: 'number',
      standard: '95',
      hint: '95',
    },
  ],
  compute: refusing({ lines: 'standard' }, (given) => {
    const found = budget(linesOf(given), given.number('coverage') / 100);
    return [
      number('u', 'Combined standard uncertainty', found.u, undefined, how),
      degreesAnswer(found),
      number('k', 'Coverage factor', found.k, 2, how),
      number('expanded', 'Expanded uncertainty', found.expanded, undefined, how, {
        note: `${given.number('coverage')} % coverage`,
      }),
      lines('shares', 'Share of each source', sharesOf(found), how, { note: 'work on the largest first' }),
    ];
  }),
  cautions: [
    'First order only: a source whose sensitivity is 0 here may still matter (H.1.7 of the Guide finds 34 nm in place of 32).',
  ],
  sources: [guide],
  examples: [
    {
      title: 'End-gauge calibration: u 32 nm, 16 degrees of freedom, k 2.92, U 93 nm at 99 %',
      given: { standard: '25/18; 9.7/25.6; 2.9/50; 16.6/2', coverage: '99' },
      expect: {
        u: { value: 32, tolerance: 0.5 },
        degrees: { value: 16.7, tolerance: 0.1 },
        k: { value: 2.92, tolerance: 0.005 },
        expanded: { value: 93, tolerance: 0.7 },
      },
      source: `${guide}, H.1, from its rounded contributions`,
      mark: 'seen',
    },
  ],
};

function degreesAnswer({ effectiveDegreesOfFreedom }: Budget) {
  const [id, label] = ['degrees', 'Effective degrees of freedom'] as const;
  return Number.isFinite(effectiveDegreesOfFreedom)
    ? number(id, label, effectiveDegreesOfFreedom, 1, how)
    : words(id, label, 'no bound: all sources are known exactly', how);
}

function linesOf(given: Given): BudgetLine[] {
  const list = (id: string) => (given.has(id) ? given.list(id) : []);
  const half = (type: 'rectangular' | 'triangular' | 'arcsine') =>
    list(type).map((value): UncertaintySource => ({ type, half: value }));
  const sources: UncertaintySource[] = [
    ...(given.has('repeats') ? [{ type: 'repeats' as const, readings: given.list('repeats') }] : []),
    ...(given.has('standard') ? readStandards(given.text('standard')) : []),
    ...list('expanded').map((U): UncertaintySource => ({ type: 'expanded', U, k: 2 })),
    ...half('rectangular'),
    ...half('triangular'),
    ...half('arcsine'),
  ];
  return sources.map((from, i) => ({ name: `${from.type} ${i + 1}`, from }));
}

/** "25/18; 9.7/25.6; 2.9" */
function readStandards(text: string): UncertaintySource[] {
  return text
    .split(/[;,]\s*/)
    .filter(Boolean)
    .map((item) => {
      const [u, degrees, ...more] = item.split('/').map(Number);
      if (u === undefined || [u, degrees ?? 1].some(Number.isNaN) || more.length > 0)
        throw new GaugeError(
          `"${item}" is not an uncertainty; write 9.7/25.6, or 9.7 alone`,
          'standard',
          item,
        );
      return { type: 'standard', u, ...(degrees !== undefined && { degreesOfFreedom: degrees }) };
    });
}

function sharesOf({ shares }: Budget): string[] {
  return [...shares]
    .sort((a, b) => b.share - a.share)
    .map(({ name, share }) => `${name}: ${(100 * share).toFixed(0)} %`);
}

export const pooledReadings: Worksheet = {
  id: 'pooled-readings',
  title: 'Repeats pooled',
  question: 'I read it several times: what is the value, and how sure?',
  purpose: 'Mean of the repeats, and its uncertainty with that of the instrument.',
  fields: [
    {
      id: 'readings',
      label: 'Readings',
      help: 'Same place, same direction, same tool, one unit; part and tool set anew each time.',
      kind: 'list',
      of: 'number',
      hint: '0.0050; 0.0055; 0.0045',
    },
    {
      id: 'uncertainty',
      label: 'Instrument, k = 2',
      help: 'Expanded uncertainty (k = 2) of one reading, from your shop list. Repeats do not lower it.',
      kind: 'number',
      hint: '0.0005',
    },
    {
      id: 'zero',
      label: 'Zero error',
      help: 'What the tool shows on its standard less what the standard is; taken off. 0 if it reads right.',
      kind: 'number',
      standard: '0',
      hint: '0',
    },
    {
      id: 'least',
      label: 'Least allowed',
      help: 'If you want a decision too.',
      kind: 'number',
      required: false,
      hint: '0.002',
    },
    {
      id: 'most',
      label: 'Most allowed',
      help: 'If you want a decision too.',
      kind: 'number',
      required: false,
      hint: '0.008',
    },
  ],
  compute: refusing({ u: 'uncertainty', limit: 'most' }, (given) => {
    const readings = given.list('readings').map((reading) => reading - given.number('zero'));
    const { mean, sd, count, degreesOfFreedom, u } = repeats(readings);
    const instrument = given.number('uncertainty') / 2;
    const summed = budget([
      { name: 'instrument', from: { type: 'standard', u: instrument } },
      ...(count > 1 ? [{ name: 'scatter', from: { type: 'standard' as const, u, degreesOfFreedom } }] : []),
    ]);
    const limit = limitOf(given);
    return [
      number('mean', 'Mean, zero error taken off', mean, 6, how),
      number('scatter', 'Scatter of one reading', sd, undefined, how, {
        note: count === 1 ? 'one reading shows no scatter' : undefined,
      }),
      number('expanded', 'Uncertainty, 95 %', summed.expanded, undefined, how, {
        note: `k = ${summed.k.toFixed(2)}`,
      }),
      words('agree', 'Do they agree?', agreeWords(readings, given.number('uncertainty')), how),
      ...(limit
        ? [
            verdict(
              'verdict',
              'Decision',
              decide({ value: mean, u: summed.u, limit, ...freedomOf(summed) }),
              how,
            ),
          ]
        : []),
    ];
  }),
  cautions: [
    'Clean, at room temperature, zeroed on a standard; each size twice, a third time if the two differ by more than the uncertainty (common practice).',
    'Repeats average out your hand, not the tool: a wrong zero stays in the mean.',
  ],
  sources: [`${guide}, 4.2`, 'common practice'],
  examples: [
    {
      title: 'Readings 2, 4, 6: mean 4, scatter 2',
      given: { readings: '2; 4; 6', uncertainty: '0' },
      expect: {
        mean: { value: 4, tolerance: 1e-9 },
        scatter: { value: 2, tolerance: 1e-9 },
        expanded: { value: 4.968, tolerance: 0.005 },
      },
      source: 'own arithmetic: 2/√3 · t(0.975, 2) = 1.1547 · 4.3027',
      mark: 'calculated',
    },
  ],
};

function limitOf(given: Given) {
  if (!given.has('least') && !given.has('most')) return undefined;
  return {
    ...(given.has('least') && { min: given.number('least') }),
    ...(given.has('most') && { max: given.number('most') }),
  };
}

const freedomOf = ({ effectiveDegreesOfFreedom }: Budget) =>
  Number.isFinite(effectiveDegreesOfFreedom) ? { degreesOfFreedom: effectiveDegreesOfFreedom } : {};

function agreeWords(readings: readonly number[], expandedU: number): string {
  if (readings.length < 2) return 'Only one reading: take a second.';
  return scattersTooMuch(readings, expandedU)
    ? 'No: they differ by more than the tool explains. Look for dirt, place and technique, then read again.'
    : 'Yes, within what the tool explains.';
}
