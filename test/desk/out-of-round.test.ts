import { expect, test } from 'vitest';
import { findWorksheet } from '../../src/desk/index.js';
import { printJson, run } from '../../src/worksheet/index.js';

const answers = (id: string, given: Record<string, string>) =>
  Object.fromEntries(printJson(run(findWorksheet(id)!, given)).map((a) => [a.id, a]));

/** Distances from an axis half a millimeter beside the center of a true circle: e·cos θ + √(R² − e²·sin² θ). */
const offCenter = (count: number) =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return (0.5 * Math.cos(angle) + Math.sqrt(12.5 ** 2 - (0.5 * Math.sin(angle)) ** 2)).toFixed(5);
  }).join('; ');

test('a true journal set up half a millimeter off center is round: by geometry, to the last digit read', () => {
  const { zone, squares } = answers('roundness', {
    radii: `${offCenter(12)} mm`,
    most: '0.01 mm',
    uncertainty: '0.001 mm',
  });
  // a linearized fit gives 0.005 mm: e²/4R
  expect(zone!.si).toBeLessThan(2e-8);
  expect(squares!.si).toBeLessThan(2e-8);
});

test('four readings of a part with three lobes do not pass it: they cannot see the lobes', () => {
  const lobed = [0, 1, 2, 3].map((i) => (25 + 0.02 * Math.cos((3 * Math.PI * i) / 2)).toFixed(4)).join('; ');
  const { verdict } = answers('roundness', {
    radii: `${lobed} mm`,
    most: '0.01 mm',
    uncertainty: '0.001 mm',
  });
  expect(verdict!.verdict).toBe('cannot-decide');
  expect(verdict!.text).toMatch(/cannot see three lobes: read at 8 places or more/);
});

test('three eighths of an inch is 9.525 mm, and shown with one digit less it is rounded, not cut', () => {
  // 25.4 mm to the inch exactly (NIST SP 811, B.8)
  expect(answers('convert', { quantity: '3/8 in' }).converted!.text).toBe('9.525 mm');
  expect(answers('convert', { quantity: '0.375 in' }).converted!.text).toBe('9.53 mm');
});
