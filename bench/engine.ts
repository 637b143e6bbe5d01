/**
 * A 10-pull compression reading by the cranking cycle beside a naive one (explicit Euler, one fixed small step) at the
 * same error, in the same run; and what the band and the inverse cost. The error is against the cycle at 1e-10.
 */
import { crank } from '../src/engine/cranking/crank.js';
import { expectedCompression } from '../src/engine/cranking/expected.js';
import { leakFromReading } from '../src/engine/cranking/find-leak.js';
import { naiveCrank } from './engine/naive-crank.js';
import { gauge, tenPulls, usualEngine } from './engine/usual-engine.js';

function milliseconds(work: () => unknown, times: number): number {
  work();
  const taken = Array.from({ length: times }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return taken.sort((p, q) => p - q)[Math.floor(times / 2)]!;
}

const converged = crank(usualEngine, gauge, tenPulls, {
  relativeTolerance: 1e-10,
  everyFlow: true,
}).readingPa;
const errorOf = (pascal: number) => Math.abs(pascal / converged - 1);

const own = () => crank(usualEngine, gauge, tenPulls).readingPa;
const ownError = errorOf(own());
const ownMs = milliseconds(own, 31);

console.log(`10 pulls, 40 turns: ${(converged / 6894.757).toFixed(2)} psi`);
console.log(
  `  cranking cycle             ${ownMs.toFixed(1).padStart(8)} ms, error ${ownError.toExponential(1)}`,
);
console.log('  naive Euler, fixed step');
let equalMs = Number.NaN;
for (const step of [0.5, 0.1, 0.02, 0.004]) {
  const naive = () => naiveCrank(usualEngine, gauge, tenPulls, step);
  const ms = milliseconds(naive, step < 0.05 ? 1 : 3);
  const error = errorOf(naive());
  // Euler's error falls in proportion to the step, its time rises so
  equalMs = (ms * error) / Math.max(ownError, 1e-6);
  console.log(
    `    ${String(step).padEnd(6)}°              ${ms.toFixed(1).padStart(8)} ms, error ${error.toExponential(1)}`,
  );
}
console.log(`  naive at equal error / cranking cycle: ${(equalMs / ownMs).toFixed(0)}`);

const geometry = {
  architecture: 'overhead-valve',
  boreMm: 65,
  strokeMm: 62,
  compressionRatio: 8,
  release: 'none',
} as const;
const expected = expectedCompression(geometry, { by: 'rope' });
const bandMs = milliseconds(() => expectedCompression(geometry, { by: 'rope' }), 5);
const inverseMs = milliseconds(
  () =>
    leakFromReading(expected.engine, expected.gauge, expected.conditions, {
      readingPa: 6e5,
      relativeU: 0.05,
    }),
  5,
);
console.log(
  `  a band of an expected reading / one reading: ${(bandMs / ownMs).toFixed(1)} (${bandMs.toFixed(0)} ms)`,
);
console.log(
  `  a leak from a reading / one reading:         ${(inverseMs / ownMs).toFixed(1)} (${inverseMs.toFixed(0)} ms)`,
);
