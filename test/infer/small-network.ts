import { readNetwork } from '../../src/infer/index.js';

/** Three faults, one of them brought about by another, and three signs, one of which nothing explains. */
export const small = readNetwork({
  faults: [
    { id: 'stale-fuel', prior: 0.3 },
    { id: 'weak-coil', prior: 0.05 },
    { id: 'wet-plug', prior: 0.1 },
  ],
  links: [{ from: 'stale-fuel', to: 'wet-plug', p: 0.2 }],
  signs: [
    {
      id: 'spark',
      outcomes: ['strong', 'weak', 'none'],
      leak: [0.94, 0.04, 0.02],
      causes: [
        { fault: 'weak-coil', outcome: [0.1, 0.5, 0.4] },
        { fault: 'wet-plug', outcome: [0.3, 0.3, 0.4] },
      ],
    },
    {
      id: 'smell',
      outcomes: ['fresh', 'flat'],
      leak: [0.9, 0.1],
      causes: [{ fault: 'stale-fuel', outcome: [0.2, 0.8] }],
    },
    { id: 'paint', outcomes: ['whole', 'flaked', 'gone'], leak: [0.7, 0.2, 0.1], causes: [] },
  ],
  seen: [
    { sign: 'spark', outcome: 'none' },
    { sign: 'smell', outcome: 'flat' },
  ],
});
