import { of, showBoth } from '../../quantity/index.js';
import {
  amount,
  computed,
  type Given,
  number,
  standard,
  type Worksheet,
  WorksheetError,
  words,
} from '../../worksheet/index.js';
import { figure } from '../check.js';
import { strengthOf } from '../grades.js';
import { longFormClamp, longFormTorque, torqueParts, usualCollarMm } from '../long-form.js';
import { type JointKind, proofShares, torqueForBolt } from '../preload.js';
import { sources } from '../sources.js';
import { stressAreaMm2 } from '../thread-form.js';
import { clampForTorque, clampRange, torqueForClamp } from '../torque.js';
import { chosenFactor, factorAnswers } from './factor.js';
import { conditionField, factorField, gradeField, threadField, torqueField } from './fields.js';
import { loadLine } from './load-line.js';

const equation827 = `T = K·d·F, ${sources.machineDesign}, Eq. 8-27`;
const equation826 = `${sources.machineDesign}, Eq. 8-26`;
const scatterWords = `±25 % scatter of a torque wrench, ${sources.fastenerStandards}`;
const engineFirst = "The engine's own figure goes before anything computed here.";
const force = (newton: number) => showBoth(of(newton, 'N'), 'inch');
const torque = (newtonMeter: number) => showBoth(of(newtonMeter, 'N·m'), 'inch');

export const clampFromTorque: Worksheet = {
  id: 'clamp-from-torque',
  title: 'Clamp load from torque',
  question: 'How hard does this torque clamp?',
  purpose: 'What the bolt pulls when the wrench clicks, and how far that can be off.',
  fields: [torqueField('As set on the wrench.'), threadField, conditionField(), factorField()],
  compute: (given) => {
    const [torqueNm, { majorMm }, factor] = [
      given.in('torque', 'N·m'),
      given.thread('thread'),
      chosenFactor(given),
    ];
    const clamp = (nutFactor: number) => clampForTorque({ torqueNm, nutFactor, majorMm });
    const [least, most] = clampRange(clamp(factor.k));
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
      expect: { clamp: { value: 1275, unit: 'lbf', tolerance: 2 } },
      source: sources.joining,
      mark: 'seen',
    },
  ],
};

const joiningRows: readonly (readonly [string, number])[] = [
  ['0.30', 72.7],
  ['0.25', 60.6],
  ['0.20', 48.5],
  ['0.15', 36.3],
  ['0.10', 24.2],
];

export const torqueFromClamp: Worksheet = {
  id: 'torque-from-clamp',
  title: 'Torque from clamp load',
  question: 'What torque gives this clamp load?',
  purpose: 'The setting for a wanted clamp load, with what each published friction figure would make of it.',
  fields: [
    {
      id: 'clamp',
      label: 'Clamp load',
      help: 'The pull wanted in the bolt.',
      kind: 'force',
      hint: '3300 lbf',
    },
    threadField,
    conditionField(),
    factorField(),
  ],
  compute: (given) => {
    const [clampN, { majorMm }, factor] = [
      given.in('clamp', 'N'),
      given.thread('thread'),
      chosenFactor(given),
    ];
    const set = (nutFactor: number) => torqueForClamp({ clampN, nutFactor, majorMm });
    return [
      amount('torque', 'Torque', set(factor.k), 'N·m', computed(equation827), {
        picture: loadLine({ torqueNm: set(factor.k), nutFactor: factor.k, majorMm }),
      }),
      ...factorAnswers(factor, (k) => torque(set(k))),
    ];
  },
  cautions: [engineFirst],
  sources: [equation827, sources.boltedJoints, sources.fastenerStandards],
  examples: [
    ...joiningRows.map(([k, lbfIn]) => ({
      title: `d 0.190 in, 1275 lbf, K ${k} gives ${lbfIn} lbf·in`,
      given: { clamp: '1275 lbf', thread: '#10-24', condition: 'bare-dry', k },
      expect: { torque: { value: lbfIn, unit: 'in-lb', tolerance: 0.06 } },
      source: sources.joining,
      mark: 'seen' as const,
    })),
    {
      title: 'Example 8-3 (b): 3/4-16, 25 000 lbf, K 0.20 gives 3750 lbf·in',
      given: { clamp: '25000 lbf', thread: '3/4-16', condition: 'bare-dry', k: '0.20' },
      expect: { torque: { value: 3750, unit: 'in-lb', tolerance: 0.5 } },
      source: `${sources.machineDesign}, Example 8-3`,
      mark: 'memory, recomputed',
    },
  ],
};

export const torqueForBoltSheet: Worksheet = {
  id: 'torque-for-bolt',
  title: 'Torque for a bolt of known grade',
  question: 'How tight can this bolt go, if nobody says?',
  purpose: 'A torque from the strength of the bolt alone, for a joint without a figure of its own.',
  fields: [
    threadField,
    gradeField,
    conditionField(),
    factorField(),
    {
      id: 'joint',
      label: 'Joint',
      help: 'Comes apart again: three quarters of the proof load. Stays for good: nine tenths.',
      kind: 'choice',
      choices: [
        { id: 'reusable', label: 'comes apart again' },
        { id: 'permanent', label: 'stays for good' },
      ],
      standard: 'reusable',
    },
  ],
  compute: (given) => {
    const form = given.thread('thread');
    const strength = strengthOf(given.choice('grade'), form);
    const share = proofShares[given.choice('joint') as JointKind];
    const factor = chosenFactor(given);
    const at = (nutFactor: number) => torqueForBolt({ form, strength, nutFactor, share });
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
      ...factorAnswers(factor, (k) => torque(at(k).torqueNm)),
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
      expect: { torque: { value: 378, unit: 'in-lb', tolerance: 0.6 } },
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
        torque: { value: lbfIn, unit: 'in-lb', tolerance: lbfIn * 0.001 },
        clamp: { value: lbf, unit: 'lbf', tolerance: lbf * 0.001 },
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
        torque: { value: newtonMeter, unit: 'N·m', tolerance: newtonMeter * 0.002 },
        clamp: { value: newton, unit: 'N', tolerance: newton * 0.002 },
      },
      source: equation827,
      mark: 'calculated' as const,
    })),
  ],
};

const strengthWords = (grade: string, proofMpa: number) =>
  `${grade}, proof stress ${showBoth(of(proofMpa, 'MPa'), 'inch')}`;
const overProof = (share: number) =>
  `With the scatter of a wrench this can reach ${figure(share * 100)} % of the proof load; the bolt may take a set`;

export const boltStrength: Worksheet = {
  id: 'bolt-strength',
  title: 'Strength of a bolt',
  question: 'What can this bolt hold?',
  purpose: 'Proof, yield and breaking load from grade and thread.',
  fields: [threadField, gradeField],
  compute: (given) => {
    const form = given.thread('thread');
    const strength = strengthOf(given.choice('grade'), form);
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
    expect: { proof: { value: newton, unit: 'N', tolerance: 100 } },
    source: sources.isoStrength,
    mark: 'memory' as const,
  })),
};

function exactlyOne(given: Given): 'torque' | 'clamp' {
  if (given.has('torque') === given.has('clamp')) {
    throw new WorksheetError('give either the torque or the clamp load, and leave the other empty', 'torque');
  }
  return given.has('torque') ? 'torque' : 'clamp';
}

export const torqueLongForm: Worksheet = {
  id: 'torque-long-form',
  title: 'Torque with friction known',
  question: 'What torque, or what clamp load, with the friction coefficients known?',
  purpose: 'The screw equation with thread and head friction apart, both ways, and where the torque goes.',
  fields: [
    threadField,
    { ...torqueField('Leave empty to find it from the clamp load.'), required: false },
    {
      id: 'clamp',
      label: 'Clamp load',
      help: 'Leave empty to find it from the torque.',
      kind: 'force',
      required: false,
      hint: '25000 lbf',
    },
    {
      id: 'f',
      label: 'Friction in the thread',
      help: 'Coefficient f; 0.15 is usual for plain steel (same source).',
      kind: 'number',
      standard: '0.15',
    },
    {
      id: 'fc',
      label: 'Friction under the head',
      help: 'Coefficient fc; 0.15 is usual for plain steel (same source).',
      kind: 'number',
      standard: '0.15',
    },
    {
      id: 'dc',
      label: 'Mean diameter of the head face',
      help: 'Left empty it is taken as 1.25 times the bolt, as in the source.',
      kind: 'length',
      required: false,
      hint: '0.4 in',
    },
  ],
  compute: (given) => {
    const form = given.thread('thread');
    const friction = { thread: given.number('f'), collar: given.number('fc') };
    const collarMm = given.has('dc') ? given.in('dc', 'mm') : usualCollarMm(form);
    const clampN =
      exactlyOne(given) === 'clamp'
        ? given.in('clamp', 'N')
        : longFormClamp(form, given.in('torque', 'N·m'), friction, collarMm);
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
  cautions: [engineFirst],
  sources: [equation826, sources.spacecraft],
  examples: [
    {
      title: 'Example 8-3 (c): 3/4-16, 25 000 lbf, f = fc = 0.15 gives 3551 lbf·in',
      given: { thread: '3/4-16', clamp: '25000 lbf', f: '0.15', fc: '0.15' },
      expect: { torque: { value: 3551, unit: 'in-lb', tolerance: 1 } },
      source: `${sources.machineDesign}, Example 8-3`,
      mark: 'memory, recomputed',
    },
  ],
};
