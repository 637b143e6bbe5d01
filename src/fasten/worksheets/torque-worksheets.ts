import { of, showBoth } from '../../quantity/index.js';
import {
  amount,
  ask,
  computed,
  near,
  number,
  optional,
  standard,
  words,
  worksheet,
} from '../../worksheet/index.js';
import { figure } from '../figure.js';
import { strengthOf } from '../grades.js';
import { longFormClamp, longFormTorque, torqueParts, usualCollarMm } from '../long-form.js';
import { proofShares, torqueForBolt } from '../preload.js';
import { sources } from '../sources.js';
import { stressAreaMm2 } from '../thread-form.js';
import { clampForTorque, clampRange, torqueForClamp } from '../torque.js';
import { chosenFactor, doubtOf, factorAnswers } from './factor.js';
import { conditionField, factorField, grade, thread, torqueField } from './fields.js';
import { loadLine } from './load-line.js';

const equation827 = `T = K·d·F, ${sources.machineDesign}, Eq. 8-27`;
const equation826 = `${sources.machineDesign}, Eq. 8-26`;
const scatterWords = `±25 % scatter of a torque wrench, ${sources.fastenerStandards}; with it, in quadrature, what the sources differ about the nut factor`;
const engineFirst = "The engine's own figure goes before anything computed here.";
const force = (newton: number) => showBoth(of(newton, 'N'), 'inch');
const moment = (newtonMeter: number) => showBoth(of(newtonMeter, 'N·m'), 'inch');

export const clampFromTorque = worksheet({
  id: 'clamp-from-torque',
  group: 'How tight?',
  title: 'Clamp load from torque',
  question: 'How hard does this torque clamp?',
  purpose: 'What the bolt pulls when the wrench clicks, and how far that can be off.',
  fields: {
    torque: torqueField('As set on the wrench.'),
    thread,
    condition: conditionField(),
    k: factorField(),
  },
  compute: ({ torque: torqueNm, thread: { majorMm }, condition, k: own }) => {
    const factor = chosenFactor(condition, own);
    const clamp = (nutFactor: number) => clampForTorque({ torqueNm, nutFactor, majorMm });
    const [least, most] = clampRange(clamp(factor.k), undefined, doubtOf(factor));
    return [
      amount('clamp', 'Clamp load', clamp(factor.k), 'N', computed(equation827), {
        picture: loadLine({ torqueNm, nutFactor: factor.k, majorMm }),
      }),
      amount('clamp-least', 'At the least', least, 'N', computed(scatterWords)),
      amount('clamp-most', 'At the most', most, 'N', computed(scatterWords)),
      ...factorAnswers(factor, (k) => force(clamp(k))),
    ];
  },
  cautions: ['Torque is a poor measure of clamp load: most of it is friction.'],
  sources: [equation827, sources.boltedJoints, sources.fastenerStandards],
  examples: [
    {
      title: 'd 0.190 in, 48.5 lbf·in, K 0.20 gives 1275 lbf',
      given: { torque: '48.5 in-lb', thread: '#10-24', condition: 'bare-dry', k: '0.20' },
      expect: { clamp: near(1275, 2, 'lbf') },
      source: sources.joining,
      mark: 'seen',
    },
  ],
});

const joiningRows: readonly (readonly [string, number])[] = [
  ['0.30', 72.7],
  ['0.25', 60.6],
  ['0.20', 48.5],
  ['0.15', 36.3],
  ['0.10', 24.2],
];

export const torqueFromClamp = worksheet({
  id: 'torque-from-clamp',
  group: 'How tight?',
  title: 'Torque from clamp load',
  question: 'What torque gives this clamp load?',
  purpose: 'The setting for a wanted clamp load, with what each published friction figure would make of it.',
  fields: {
    clamp: ask.in('N', 'Clamp load', 'The pull wanted in the bolt.', {
      hint: '3300 lbf',
      within: ['10 N', '500 kN'],
    }),
    thread,
    condition: conditionField(),
    k: factorField(),
  },
  compute: ({ clamp: clampN, thread: { majorMm }, condition, k: own }) => {
    const factor = chosenFactor(condition, own);
    const set = (nutFactor: number) => torqueForClamp({ clampN, nutFactor, majorMm });
    return [
      amount('torque', 'Torque', set(factor.k), 'N·m', computed(equation827), {
        picture: loadLine({ torqueNm: set(factor.k), nutFactor: factor.k, majorMm }),
      }),
      ...factorAnswers(factor, (k) => moment(set(k))),
    ];
  },
  cautions: [engineFirst],
  sources: [equation827, sources.boltedJoints, sources.fastenerStandards],
  examples: [
    ...joiningRows.map(([k, lbfIn]) => ({
      title: `d 0.190 in, 1275 lbf, K ${k} gives ${lbfIn} lbf·in`,
      given: { clamp: '1275 lbf', thread: '#10-24', condition: 'bare-dry', k },
      expect: { torque: near(lbfIn, 0.06, 'in-lb') },
      source: sources.joining,
      mark: 'seen' as const,
    })),
    {
      title: 'Example 8-3 (b): 3/4-16, 25 000 lbf, K 0.20 gives 3750 lbf·in',
      given: { clamp: '25000 lbf', thread: '3/4-16', condition: 'bare-dry', k: '0.20' },
      expect: { torque: near(3750, 0.5, 'in-lb') },
      source: `${sources.machineDesign}, Example 8-3`,
      mark: 'memory, recomputed',
    },
  ],
});

export const torqueForBoltSheet = worksheet({
  id: 'torque-for-bolt',
  group: 'How tight?',
  title: 'Torque for a bolt of known grade',
  question: 'How tight can this bolt go, if nobody says?',
  purpose: 'A torque from the strength of the bolt alone, for a joint without a figure of its own.',
  fields: {
    thread,
    grade,
    condition: conditionField(),
    k: factorField(),
    joint: ask.choice(
      'Joint',
      'Comes apart again: three quarters of the proof load. Stays for good: nine tenths.',
      { reusable: 'comes apart again', permanent: 'stays for good' },
      'reusable',
    ),
  },
  compute: ({ thread: form, grade, condition, k: own, joint }) => {
    const strength = strengthOf(grade, form);
    const share = proofShares[joint];
    const factor = chosenFactor(condition, own);
    const at = (nutFactor: number) =>
      torqueForBolt({ form, strength, nutFactor, share, doubt: doubtOf(factor) });
    const bolt = at(factor.k);
    const how = computed(`${equation827} and 8-31: ${share} of the proof load`);
    return [
      amount('torque', 'Torque', bolt.torqueNm, 'N·m', how, {
        note: strength.note,
        picture: loadLine({
          torqueNm: bolt.torqueNm,
          nutFactor: factor.k,
          majorMm: form.majorMm,
          proofN: bolt.clampN / share,
        }),
      }),
      ...(factor.spread
        ? [
            amount('torque-least', 'Lowest by any source', at(factor.spread.low).torqueNm, 'N·m', how),
            amount('torque-most', 'Highest by any source', at(factor.spread.high).torqueNm, 'N·m', how),
          ]
        : []),
      amount('clamp', 'Clamp load', bolt.clampN, 'N', how),
      amount('clamp-least', 'Clamp load at the least', bolt.clampRangeN[0], 'N', computed(scatterWords)),
      amount('clamp-most', 'Clamp load at the most', bolt.clampRangeN[1], 'N', computed(scatterWords)),
      words(
        'strength',
        'Strength taken',
        strengthWords(strength.grade, strength.proofMpa),
        standard(strength.source),
        { note: strength.note },
      ),
      ...(bolt.worstShareOfProof > 1
        ? [words('caution', 'Mind', overProof(bolt.worstShareOfProof), computed(scatterWords))]
        : []),
      ...factorAnswers(factor, (k) => moment(at(k).torqueNm)),
    ];
  },
  cautions: [
    engineFirst,
    'For a steel bolt and nut. Into aluminum, into a gasket, or with a short thread it is too much.',
  ],
  sources: [equation827, sources.saeGrades, sources.isoStrength],
  examples: [
    {
      title: '3/8-24 SAE 5, lubricated, K 0.18, three quarters of proof gives 378 lbf·in',
      given: { thread: '3/8-24', grade: 'SAE 5', condition: 'oiled', joint: 'reusable' },
      expect: { torque: near(378, 0.6, 'in-lb') },
      source: `solutions manual to ${sources.machineDesign}, ch. 8`,
      mark: 'seen',
    },
    ...(
      [
        ['1/4-20', 2027, 101.4],
        ['5/16-18', 3340, 208.8],
        ['3/8-16', 4941, 370.5],
        ['7/16-14', 6777, 593],
        ['1/2-13', 9046, 904.6],
      ] as const
    ).map(([thread, lbf, lbfIn]) => ({
      title: `${thread} SAE 5, K 0.20 gives ${lbfIn} lbf·in`,
      given: { thread, grade: 'SAE 5', condition: 'bare-dry', k: '0.20' },
      expect: {
        torque: near(lbfIn, lbfIn * 0.001, 'in-lb'),
        clamp: near(lbf, lbf * 0.001, 'lbf'),
      },
      source: equation827,
      mark: 'calculated' as const,
    })),
    ...(
      [
        ['M5', 6177, 6.18],
        ['M6', 8744, 10.49],
        ['M8', 15_921, 25.5],
        ['M10', 25_230, 50.5],
        ['M12', 36_670, 88],
      ] as const
    ).map(([thread, newton, newtonMeter]) => ({
      title: `${thread} class 8.8, K 0.20 gives ${newtonMeter} N·m`,
      given: { thread, grade: '8.8', condition: 'bare-dry', k: '0.20' },
      expect: {
        torque: near(newtonMeter, newtonMeter * 0.002, 'N·m'),
        clamp: near(newton, newton * 0.002, 'N'),
      },
      source: equation827,
      mark: 'calculated' as const,
    })),
  ],
});

const strengthWords = (grade: string, proofMpa: number) =>
  `${grade}, proof stress ${showBoth(of(proofMpa, 'MPa'), 'inch')}`;
const overProof = (share: number) =>
  `With the scatter of a wrench this can reach ${figure(share * 100)} % of the proof load; the bolt may take a set`;

export const boltStrength = worksheet({
  id: 'bolt-strength',
  group: 'How tight?',
  title: 'Strength of a bolt',
  question: 'What can this bolt hold?',
  purpose: 'Proof, yield and breaking load from grade and thread.',
  fields: { thread, grade },
  compute: ({ thread: form, grade }) => {
    const strength = strengthOf(grade, form);
    const areaMm2 = stressAreaMm2(form);
    const how = computed(`${strength.source}, times the tensile stress area`);
    return [
      amount('proof', 'Proof load', strength.proofMpa * areaMm2, 'N', how, { note: strength.note }),
      amount('yield', 'Yield load', strength.yieldMpa * areaMm2, 'N', how),
      amount('breaking', 'Breaking load', strength.tensileMpa * areaMm2, 'N', how),
      amount('proof-stress', 'Proof stress', strength.proofMpa, 'MPa', standard(strength.source)),
      amount('area', 'Tensile stress area', areaMm2, 'mm²', computed('thread form')),
      words('mark', 'On the head', strength.headMark, standard(strength.source)),
    ];
  },
  cautions: ['Least strength of a new bolt. A stretched, rusted, heated or bent one promises nothing.'],
  sources: [sources.saeGrades, sources.isoStrength],
  examples: (
    [
      ['M6', 11_600],
      ['M8', 21_200],
      ['M10', 33_700],
      ['M12', 48_900],
    ] as const
  ).map(([thread, newton]) => ({
    title: `proof load of ${thread} class 8.8 is ${newton} N`,
    given: { thread, grade: '8.8' },
    expect: { proof: near(newton, 100, 'N') },
    source: sources.isoStrength,
    mark: 'memory' as const,
  })),
});

const frictionHelp = (id: string) => `Coefficient ${id}; 0.15 is usual for plain steel (same source).`;

export const torqueLongForm = worksheet({
  id: 'torque-long-form',
  group: 'How tight?',
  title: 'Torque with friction known',
  question: 'What torque, or what clamp load, with the friction coefficients known?',
  purpose: 'The screw equation with thread and head friction apart, both ways, and where the torque goes.',
  fields: {
    thread,
    torque: optional(torqueField('Leave empty to find it from the clamp load.')),
    clamp: ask.in('N', 'Clamp load', 'Leave empty to find it from the torque.', {
      hint: '25000 lbf',
      optional: true,
      within: ['10 N', '500 kN'],
    }),
    f: ask.number('Friction in the thread', frictionHelp('f'), { standard: '0.15', within: [0.02, 0.6] }),
    fc: ask.number('Friction under the head', frictionHelp('fc'), { standard: '0.15', within: [0.02, 0.6] }),
    dc: ask.in(
      'mm',
      'Mean diameter of the head face',
      'Left empty it is taken as 1.25 times the bolt, as in the source.',
      { hint: '0.4 in', optional: true, within: ['2 mm', '100 mm'] },
    ),
  },
  compute: ({ thread: form, torque, clamp, f, fc, dc: collarMm = usualCollarMm(form) }) => {
    const friction = { thread: f, collar: fc };
    const clampN = clamp ?? longFormClamp(form, torque!, friction, collarMm);
    const torqueNm = longFormTorque(form, clampN, friction, collarMm);
    const parts = torqueParts(form, clampN, friction, collarMm);
    const total = parts.stretchNm + parts.threadNm + parts.collarNm;
    return [
      amount('torque', 'Torque', torqueNm, 'N·m', computed(equation826)),
      amount('clamp', 'Clamp load', clampN, 'N', computed(equation826)),
      number(
        'k',
        'Nut factor K that this makes',
        torqueNm / (clampN * (form.majorMm / 1000)),
        3,
        computed('K = T/(d·F)'),
      ),
      words(
        'parts',
        'Where the torque goes',
        `${figure((100 * parts.stretchNm) / total, 2)} % stretches the bolt, ${figure((100 * parts.threadNm) / total, 2)} % is lost in the thread, ${figure((100 * parts.collarNm) / total, 2)} % under the head`,
        computed(sources.spacecraft),
      ),
    ];
  },
  oneOf: [{ ids: ['torque', 'clamp'], wanted: true }],
  cautions: [engineFirst],
  sources: [equation826, sources.spacecraft],
  examples: [
    {
      title: 'Example 8-3 (c): 3/4-16, 25 000 lbf, f = fc = 0.15 gives 3551 lbf·in',
      given: { thread: '3/4-16', clamp: '25000 lbf', f: '0.15', fc: '0.15' },
      expect: { torque: near(3551, 1, 'in-lb') },
      source: `${sources.machineDesign}, Example 8-3`,
      mark: 'memory, recomputed',
    },
  ],
});
