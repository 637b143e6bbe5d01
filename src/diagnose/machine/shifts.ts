import type { MachineFacts } from './case.js';

/**
 * What the intake's facts do to the odds of a fault, where the catalog has no frequency for just such machines.
 * Every factor is trade judgement, no source. A fact that is not known shifts nothing: the frequencies stand for
 * machines of which it is not known.
 */
interface Shift {
  readonly faults: readonly string[];
  readonly oddsTimes: (facts: MachineFacts) => number;
}

const byMonths = (months: number | undefined, factors: readonly (readonly [number, number])[]): number =>
  months === undefined ? 1 : (factors.findLast(([from]) => months >= from)?.[1] ?? 1);
const byAnswer = (said: string | undefined, yes: number, no: number): number =>
  said === 'yes' ? yes : said === 'no' ? no : 1;

const shifts: readonly Shift[] = [
  {
    faults: ['stale-fuel'],
    oddsTimes: (f) =>
      byMonths(f.storedMonths, [
        [0, 0.1],
        [1, 0.4],
        [3, 1],
        [12, 2],
        [24, 3],
      ]) * byAnswer(f.fuelLeftIn, 1.5, 0.2),
  },
  {
    faults: [
      'main-jet-plugged',
      'idle-passages-plugged',
      'inlet-needle-stuck-shut',
      'diaphragm-stiff-or-torn',
      'fuel-tap-or-solenoid-shut',
    ],
    oddsTimes: (f) =>
      byMonths(f.storedMonths, [
        [0, 0.3],
        [3, 0.7],
        [6, 1],
        [12, 1.5],
        [24, 2],
      ]) * byAnswer(f.fuelLeftIn, 1.3, 0.5),
  },
  {
    faults: ['water-in-fuel', 'tank-rusty-or-dirty', 'engine-locked', 'exhaust-valve-stuck-open'],
    oddsTimes: (f) =>
      byMonths(f.storedMonths, [
        [0, 0.6],
        [12, 1.2],
        [36, 2],
      ]),
  },
  { faults: ['oil-in-cylinder'], oddsTimes: (f) => byAnswer(f.tipped, 6, 0.7) },
  { faults: ['flywheel-key-part-sheared', 'crankshaft-bent'], oddsTimes: (f) => byAnswer(f.struck, 4, 0.5) },
  { faults: ['blade-loose'], oddsTimes: (f) => byAnswer(f.struck, 3, 0.8) },
  { faults: ['wrong-fuel'], oddsTimes: (f) => byAnswer(f.wrongFuel, 200, 0.5) },
];

/** The probability after the facts. */
export function shifted(fault: string, probability: number, facts: MachineFacts): number {
  const times = shifts
    .filter((s) => s.faults.includes(fault))
    .reduce((product, s) => product * s.oddsTimes(facts), 1);
  return (probability * times) / (1 - probability + probability * times);
}
