import { torqueParts } from '../../src/fasten/long-form.js';
import { near, published } from '../support/published.js';

/**
 * NASA RP-1228 and NASA-STD-5020: T = F·[P/2π + f·rt/cos 30° + fc·rb], the formula from memory. Worked out by hand
 * for M8×1.25 at 10 kN, f 0.12 and fc 0.14: P/2π = 0.198944 mm, rt = 7.188/2 mm, and the bearing radius that
 * torqueParts names, 1.25 d/2 = 5 mm.
 */
const nasa = published('NASA RP-1228 and NASA-STD-5020, torque of a bolt');
nasa('M8×1.25 at 10 kN, f 0.12, fc 0.14: 1.989, 4.980 and 7.000 N·m', 'calculated', () => {
  const form = { system: 'metric', majorMm: 8, pitchMm: 1.25 } as const;
  const { stretchNm, threadNm, collarNm } = torqueParts(form, 10_000, { thread: 0.12, collar: 0.14 });
  return [
    near('stretch', stretchNm, 1.989, 5e-4),
    near('thread', threadNm, 4.98, 5e-3),
    near('collar', collarNm, 7, 5e-3),
  ];
});
