import { byFault, inferExactly, readNetwork } from '../../src/infer/index.js';
import { near, published } from '../support/published.js';

/**
 * Faults over signs by leaky noisy-OR: P(sign normal | faults) = (1 − leak) Π (1 − q). Definitions from memory
 * ("Probabilistic Reasoning in Intelligent Systems", 1988, §4.3). The case is calculated twice, by enumeration and
 * by the alternating sum of the Quickscore form (Proc. 5th Conf. Uncertainty in Artificial Intelligence, 1989),
 * which agree in all digits given.
 */
const q = [
  [0.8, 0, 0.3],
  [0.6, 0.9, 0],
  [0, 0.4, 0.7],
  [0.5, 0.5, 0.5],
];
const priors = [0.05, 0.02, 0.1, 0.01];
const leaks = [0.01, 0.02, 0.05];

const network = readNetwork({
  faults: priors.map((prior, i) => ({ id: `d${i + 1}`, prior })),
  signs: leaks.map((leak, s) => ({
    id: `f${s + 1}`,
    outcomes: ['normal', 'abnormal'],
    leak: [1 - leak, leak],
    causes: q.map((row, i) => ({ fault: `d${i + 1}`, outcome: [1 - row[s]!, row[s]!] })),
  })),
  seen: [
    { sign: 'f1', outcome: 'abnormal' },
    { sign: 'f2', outcome: 'abnormal' },
    { sign: 'f3', outcome: 'normal' },
  ],
});

const sheet = published(
  'Probabilistic Reasoning in Intelligent Systems, §4.3, and the Quickscore form of UAI 1989',
);

sheet('four faults, three signs, f1 and f2 abnormal, f3 normal', 'calculated', () => {
  const inference = inferExactly(network);
  const want = { d1: 0.115572, d2: 0.814635, d3: 0.067795, d4: 0.102199 };
  return [
    near('P(evidence)', inference.evidence, 0.011836925839289, 5e-16),
    ...Object.entries(want).map(([fault, p]) => near(`P(${fault})`, byFault(inference)[fault]!, p, 5e-7)),
  ];
});
