import { inPercent } from '../../phrase/index.js';
import { ask, computed, lines, near, number, words, worksheet } from '../../worksheet/index.js';
import { type Budget, type BudgetLine, budget, type UncertaintySource } from '../budget.js';
import { decide } from '../decide.js';
import { GaugeError } from '../error.js';
import { repeats, scattersTooMuch } from '../pooled.js';
import { verdict } from './answers.js';
import { limitOf } from './fields.js';

const guide = 'JCGM 100:2008';
const how = computed(`${guide}, 4.2, 4.3, 5.1.2, G.4.1, G.6.4`);

const halves = (label: string, when: string) =>
  ask.numbers(label, `Half-widths (± a), one a source. ${when}`, {
    hint: '0.0005; 0.0002',
    optional: true,
    within: [0, 1e6],
  });

export const uncertaintyBudget = worksheet({
  id: 'uncertainty-budget',
  group: 'Can I trust this reading?',
  title: 'Uncertainty budget',
  question: 'How good is this measurement, with everything in it?',
  purpose: 'Combined and expanded uncertainty from all sources, with degrees of freedom.',
  fields: {
    repeats: ask.numbers('Repeats', 'Readings of the same thing; their mean is used.', {
      hint: '2.5641; 2.5643; 2.5642',
      optional: true,
    }),
    standard: ask.text(
      'Known standard uncertainties',
      'Each with its degrees of freedom after a slash, if they are known; times its sensitivity, in the unit of the result.',
      { hint: '25/18; 9.7/25.6; 2.9', optional: true },
    ),
    expanded: ask.numbers('Expanded uncertainties, k = 2', 'From instrument list or certificate.', {
      hint: '0.0003',
      optional: true,
      within: [0, 1e6],
    }),
    rectangular: halves(
      'Anywhere within',
      'Nothing is known but the bounds: resolution, tolerance of a standard.',
    ),
    triangular: halves('Mostly in the middle', 'The bounds are known and the middle is likelier.'),
    arcsine: halves('Swinging to and fro', 'A value that cycles: temperature under a thermostat.'),
    coverage: ask.number('Coverage, %', 'How often the interval shall hold the true value. 95 % is usual.', {
      standard: '95',
      hint: '95',
      within: [50, 99.999],
    }),
  },
  names: { lines: 'standard' },
  compute: ({ coverage, repeats: readings, standard = '', expanded = [], ...bounds }) => {
    const found = budget(
      named([
        ...(readings ? [{ type: 'repeats' as const, readings }] : []),
        ...readStandards(standard),
        ...expanded.map((U) => ({ type: 'expanded' as const, U, k: 2 })),
        ...(['rectangular', 'triangular', 'arcsine'] as const).flatMap((type) =>
          (bounds[type] ?? []).map((half) => ({ type, half })),
        ),
      ]),
      coverage / 100,
    );
    return [
      number('u', 'Combined standard uncertainty', found.u, undefined, how),
      degreesAnswer(found),
      number('k', 'Coverage factor', found.k, 2, how),
      number('expanded', 'Expanded uncertainty', found.expanded, undefined, how, {
        note: `${coverage} % coverage`,
      }),
      lines('shares', 'Share of each source', sharesOf(found), how, { note: 'work on the largest first' }),
    ];
  },
  cautions: [
    'First order only: a source whose sensitivity is 0 here may still matter (H.1.7 of the Guide finds 34 nm in place of 32).',
  ],
  sources: [guide],
  examples: [
    {
      title: 'End-gauge calibration: u 32 nm, 16 degrees of freedom, k 2.92, U 93 nm at 99 %',
      given: { standard: '25/18; 9.7/25.6; 2.9/50; 16.6/2', coverage: '99' },
      expect: {
        u: near(32, 0.5),
        degrees: near(16.7, 0.1),
        k: near(2.92, 0.005),
        expanded: near(93, 0.7),
      },
      source: `${guide}, H.1, from its rounded contributions`,
      mark: 'seen',
    },
  ],
});

function degreesAnswer({ effectiveDegreesOfFreedom }: Budget) {
  const [id, label] = ['degrees', 'Effective degrees of freedom'] as const;
  return Number.isFinite(effectiveDegreesOfFreedom)
    ? number(id, label, effectiveDegreesOfFreedom, 1, how)
    : words(id, label, 'no bound: all sources are known exactly', how);
}

const named = (sources: readonly UncertaintySource[]): BudgetLine[] =>
  sources.map((from, i) => ({ name: `${from.type} ${i + 1}`, from }));

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
    .map(({ name, share }) => `${name}: ${inPercent(share)}`);
}

export const pooledReadings = worksheet({
  id: 'pooled-readings',
  group: 'Can I trust this reading?',
  title: 'Repeats pooled',
  question: 'I read it several times: what is the value, and how sure?',
  purpose: 'Mean of the repeats, and its uncertainty with that of the instrument.',
  fields: {
    readings: ask.numbers(
      'Readings',
      'Same place, same direction, same tool, one unit; part and tool set anew each time.',
      '0.0050; 0.0055; 0.0045',
    ),
    uncertainty: ask.number(
      'Instrument, k = 2',
      'Expanded uncertainty (k = 2) of one reading, from your shop list. Repeats do not lower it.',
      { hint: '0.0005', within: [0, 1e6] },
    ),
    zero: ask.number(
      'Zero error',
      'What the tool shows on its standard less what the standard is; taken off. 0 if it reads right.',
      { standard: '0', hint: '0' },
    ),
    least: ask.number('Least allowed', 'If you want a decision too.', { hint: '0.002', optional: true }),
    most: ask.number('Most allowed', 'If you want a decision too.', { hint: '0.008', optional: true }),
  },
  names: { u: 'uncertainty', limit: 'most' },
  compute: ({ readings: read, uncertainty, zero, least, most }) => {
    const readings = read.map((reading) => reading - zero);
    const { mean, sd, count, degreesOfFreedom, u } = repeats(readings);
    const summed = budget([
      { name: 'instrument', from: { type: 'standard', u: uncertainty / 2 } },
      ...(count > 1 ? [{ name: 'scatter', from: { type: 'standard' as const, u, degreesOfFreedom } }] : []),
    ]);
    const limit = limitOf(least, most);
    return [
      number('mean', 'Mean, zero error taken off', mean, 6, how),
      number('scatter', 'Scatter of one reading', sd, undefined, how, {
        note: count === 1 ? 'one reading shows no scatter' : undefined,
      }),
      number('expanded', 'Uncertainty, 95 %', summed.expanded, undefined, how, {
        note: `k = ${summed.k.toFixed(2)}`,
      }),
      words('agree', 'Do they agree?', agreeWords(readings, uncertainty), how),
      ...(Object.keys(limit).length > 0
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
  },
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
        mean: near(4, 1e-9),
        scatter: near(2, 1e-9),
        expanded: near(4.968, 0.005),
      },
      source: 'own arithmetic: 2/√3 · t(0.975, 2) = 1.1547 · 4.3027',
      mark: 'calculated',
    },
  ],
});

const freedomOf = ({ effectiveDegreesOfFreedom }: Budget) =>
  Number.isFinite(effectiveDegreesOfFreedom) ? { degreesOfFreedom: effectiveDegreesOfFreedom } : {};

function agreeWords(readings: readonly number[], expandedU: number): string {
  if (readings.length < 2) return 'Only one reading: take a second.';
  return scattersTooMuch(readings, expandedU)
    ? 'No: they differ by more than the tool explains. Look for dirt, place and technique, then read again.'
    : 'Yes, within what the tool explains.';
}
