import { factorsFor, nutFactors } from '../../src/fasten/friction.js';
import { strengthOf } from '../../src/fasten/grades.js';
import { longFormTorque } from '../../src/fasten/long-form.js';
import { proofShares, torqueForBolt } from '../../src/fasten/preload.js';
import { minorExternalMm, mmPerInch, stressAreaMm2 } from '../../src/fasten/thread-form.js';
import { threads } from '../../src/fasten/threads.js';
import { clampForTorque, clampRange, torqueForClamp } from '../../src/fasten/torque.js';
import { near, published, same } from '../support/published.js';

const newtonPerLbf = 4.4482216152605;
const nmPerLbfIn = newtonPerLbf * 0.0254;
const threeQuarter16 = { system: 'inch', majorMm: 0.75 * mmPerInch, pitchMm: mmPerInch / 16 } as const;
const preloadN = 25_000 * newtonPerLbf;
const named = (name: string) => threads.find((each) => each.name === name)!;

const med9 = published('Mechanical Engineering Design, 9th ed.');

med9('Table 8-15: K', 'seen', () =>
  (
    [
      ['bare-dry', 0.3],
      ['zinc-dry', 0.2],
      ['oiled', 0.18],
      ['cadmium', 0.16],
      ['anti-seize', 0.12],
      ['locknut', 0.09],
    ] as const
  ).map(([condition, k]) => {
    const own = nutFactors.find((row) => row.condition === condition && row.source.includes('Table 8-15'));
    return same(condition, own?.k, k);
  }),
);

med9('Example 8-3, 3/4-16 grade 5: tensile stress area', 'seen', () => [
  near('area, in²', stressAreaMm2(threeQuarter16) / mmPerInch ** 2, 0.373, 5e-4),
]);

med9('Example 8-3: root diameter by d − 1.299038·P, in', 'calculated', () => [
  near('in', minorExternalMm(threeQuarter16, 'sharp-root') / mmPerInch, 0.6688, 5e-5),
]);

// inputs seen
med9(
  'Example 8-3 (b) short form 3750 and (c) long form with f = fc = 0.15 3551 lbf·in',
  'from memory, recomputed',
  () => [
    near(
      '(b)',
      torqueForClamp({ clampN: preloadN, nutFactor: 0.2, majorMm: threeQuarter16.majorMm }) / nmPerLbfIn,
      3750,
      5e-7,
    ),
    near(
      '(c)',
      longFormTorque(threeQuarter16, preloadN, { thread: 0.15, collar: 0.15 }) / nmPerLbfIn,
      3551,
      0.6,
    ),
  ],
);

/** kN, ten lubricated bolts M12×1.25 at 90 N·m, Table 8-14: rows from memory; their mean 34.18 and spread 2.88 seen. */
const measured = [30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5];
const meanKn = 34.18;

med9(
  'Table 8-14: all ten bolts lie within the ±25 % that a torque wrench is given round their mean',
  'from memory',
  () => {
    const [least, most] = clampRange(meanKn);
    return measured.map((kilonewton, i) => ({ what: `bolt ${i + 1}`, got: kilonewton, least, most }));
  },
);

med9('Table 8-14: 90 N·m with the K of lubricated threads, their mean within the ±25 %', 'seen', () => {
  const clampN = clampForTorque({ torqueNm: 90, nutFactor: factorsFor('oiled').taken.k, majorMm: 12 });
  return [near('kN', clampN / 1000, meanKn, 0.25 * meanKn)];
});

published('solutions manual to Mechanical Engineering Design, 9th ed., ch. 8')(
  '3/8-24 grade 5, K 0.18, three quarters of proof: 378 lbf·in',
  'seen',
  () => {
    const form = named('3/8-24');
    const { torqueNm } = torqueForBolt({
      form,
      strength: strengthOf('SAE 5', form),
      nutFactor: factorsFor('oiled').taken.k,
      share: proofShares.reusable,
    });
    return [near('lbf·in', torqueNm / nmPerLbfIn, 378, 0.6)];
  },
);

const threeQuarters = (name: string, grade: string) => {
  const form = named(name);
  return torqueForBolt({ form, strength: strengthOf(grade, form), nutFactor: 0.2, share: 0.75 });
};

// worked out on rounded areas
med9('Eq. 8-27 with 8-31, SAE grade 5, K 0.20: lbf and lbf·in', 'calculated', () =>
  (
    [
      ['1/4-20', 2027, 101.4],
      ['5/16-18', 3340, 208.8],
      ['3/8-16', 4941, 370.5],
      ['7/16-14', 6777, 593],
      ['1/2-13', 9046, 904.6],
    ] as const
  ).flatMap(([name, lbf, lbfIn]) => {
    const found = threeQuarters(name, 'SAE 5');
    return [
      near(`${name}, lbf`, found.clampN / newtonPerLbf, lbf, 0.001 * lbf),
      near(`${name}, lbf·in`, found.torqueNm / nmPerLbfIn, lbfIn, 0.001 * lbfIn),
    ];
  }),
);

med9('Eq. 8-27 with 8-31, class 8.8, K 0.20: N and N·m', 'calculated', () =>
  (
    [
      ['M5×0.8', 6177, 6.18],
      ['M6×1', 8744, 10.49],
      ['M8×1.25', 15_921, 25.5],
      ['M10×1.5', 25_230, 50.5],
      ['M12×1.75', 36_670, 88],
    ] as const
  ).flatMap(([name, newton, newtonMeter]) => {
    const found = threeQuarters(name, '8.8');
    return [
      near(`${name}, N`, found.clampN, newton, 0.002 * newton),
      near(`${name}, N·m`, found.torqueNm, newtonMeter, 0.002 * newtonMeter),
    ];
  }),
);
