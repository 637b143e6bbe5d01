import { strengthOf } from '../../src/fasten/grades.js';
import { mmPerInch } from '../../src/fasten/thread-form.js';
import { near, published, same } from '../support/published.js';

const psiPerMpa = 1e6 / 6894.757293168361;
const bolt = (majorIn: number, perInch: number) =>
  ({ system: 'inch', majorMm: majorIn * mmPerInch, pitchMm: mmPerInch / perInch }) as const;

const j429 = published('SAE J429, inch bolt grades');

j429('proof, yield and tensile strength, ksi', 'seen', () =>
  (
    [
      ['SAE 1', 0.25, 20, [33, 36, 60]],
      ['SAE 1', 1.5, 6, [33, 36, 60]],
      ['SAE 2', 0.25, 20, [55, 57, 74]],
      ['SAE 2', 0.75, 10, [55, 57, 74]],
      ['SAE 2', 0.875, 9, [33, 36, 60]],
      ['SAE 4', 0.375, 16, [65, 100, 115]],
      ['SAE 5', 0.3125, 18, [85, 92, 120]],
      ['SAE 5', 1, 8, [85, 92, 120]],
      ['SAE 5', 1.125, 7, [74, 81, 105]],
      ['SAE 8', 0.5, 13, [120, 130, 150]],
    ] as const
  ).flatMap(([grade, size, perInch, ksi]) => {
    const { proofMpa, yieldMpa, tensileMpa } = strengthOf(grade, bolt(size, perInch));
    return [proofMpa, yieldMpa, tensileMpa].map((mpa, i) =>
      near(
        `${grade}, ${size} in, ${['proof', 'yield', 'tensile'][i]}`,
        (mpa * psiPerMpa) / 1000,
        ksi[i]!,
        5e-10,
      ),
    );
  }),
);

function refusal(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return String(error);
  }
  return 'none';
}

j429('Grade 2 stands for bolts up to 6 in long; grades begin at 1/4 in', 'seen', () => [
  same('the note says 6 in', /6 in/.test(strengthOf('SAE 2', bolt(0.375, 16)).note ?? ''), true),
  same(
    'a numbered screw has none',
    /0\.25 to 1 in/.test(refusal(() => strengthOf('SAE 5', bolt(0.19, 24)))),
    true,
  ),
]);
