import {
  minorExternalMm,
  minorInternalMm,
  mmPerInch,
  pitchDiameterMm,
  stressAreaMm2,
} from '../../src/fasten/thread-form.js';
import { boltDiameterLimits, nutBoreLimits } from '../../src/fasten/thread-limits.js';
import { threads } from '../../src/fasten/threads.js';
import { near, published } from '../support/published.js';

/** Tolerance: half of the last printed digit. */
const named = (name: string) => {
  const thread = threads.find((each) => each.name === name);
  if (!thread) throw new Error(`${name} is not listed`);
  return thread;
};
const inches = (mm: number) => mm / mmPerInch;
const fourPlaces = 0.000_051;
/** The UNR column is printed from rounded pitch diameters and pitches, so its last digit may be one off. */
const oneUnit = 0.000_11;

const coarse = [
  // name, pitch diameter E, minor of the hole D1, older external minor, UNR external minor
  ['#4-40', 0.0958, 0.0849, 0.0813, 0.0822],
  ['#5-40', 0.1088, 0.0979, 0.0943, 0.0952],
  ['#6-32', 0.1177, 0.1042, 0.0997, 0.1008],
  ['#8-32', 0.1437, 0.1302, 0.1257, 0.1268],
  ['#10-24', 0.1629, 0.1449, 0.1389, 0.1404],
  ['#12-24', 0.1889, 0.1709, 0.1649, 0.1664],
  ['1/4-20', 0.2175, 0.1959, 0.1887, 0.1905],
  ['5/16-18', 0.2764, 0.2524, 0.2443, 0.2464],
  ['3/8-16', 0.3344, 0.3073, 0.2983, 0.3005],
  ['7/16-14', 0.3911, 0.3602, 0.3499, 0.3525],
  ['1/2-13', 0.45, 0.4167, 0.4056, 0.4084],
] as const;

const fine = [
  // name, E, D1, UNR external minor, tensile stress area
  ['#4-48', 0.0985, 0.0894, 0.0871, 0.00661],
  ['#5-44', 0.1102, 0.1004, 0.0979, 0.0083],
  ['#6-40', 0.1218, 0.1109, 0.1082, 0.01015],
  ['#8-36', 0.146, 0.1339, 0.1309, 0.01474],
  ['#10-32', 0.1697, 0.1562, 0.1528, 0.02],
  ['#12-28', 0.1928, 0.1773, 0.1734, 0.0258],
  ['1/4-28', 0.2268, 0.2113, 0.2074, 0.0364],
  ['5/16-24', 0.2854, 0.2674, 0.2629, 0.058],
  ['3/8-24', 0.3479, 0.3299, 0.3254, 0.0878],
  ['7/16-20', 0.405, 0.3834, 0.378, 0.1187],
  ['1/2-20', 0.4675, 0.4459, 0.4405, 0.1599],
] as const;

const b11 = published('ASME B1.1, Unified inch screw threads');

b11('UNC basic diameters, public tables', 'seen', () =>
  coarse.flatMap(([name, pitchIn, holeIn, olderIn, unrIn]) => {
    const thread = named(name);
    return [
      near(`${name} E`, inches(pitchDiameterMm(thread)), pitchIn, fourPlaces),
      near(`${name} D1`, inches(minorInternalMm(thread)), holeIn, fourPlaces),
      near(`${name} older minor`, inches(minorExternalMm(thread, 'older')), olderIn, fourPlaces),
      near(`${name} UNR minor`, inches(minorExternalMm(thread, 'unr')), unrIn, oneUnit),
    ];
  }),
);

b11('UNF basic diameters, public tables', 'seen', () =>
  fine.flatMap(([name, pitchIn, holeIn, unrIn]) => {
    const thread = named(name);
    return [
      near(`${name} E`, inches(pitchDiameterMm(thread)), pitchIn, fourPlaces),
      near(`${name} D1`, inches(minorInternalMm(thread)), holeIn, fourPlaces),
      near(`${name} UNR minor`, inches(minorExternalMm(thread, 'unr')), unrIn, oneUnit),
    ];
  }),
);

const areas = [
  ['#4-40', 0.00604],
  ['#6-32', 0.00909],
  ['#8-32', 0.014],
  ['#10-24', 0.0175],
  ['1/4-20', 0.0318],
  ['5/16-18', 0.0524],
  ['3/8-16', 0.0775],
  ['7/16-14', 0.1063],
  ['1/2-13', 0.1419],
  ...fine.map(([name, , , , area]) => [name, area] as const),
] as const;

b11('tensile stress areas, in²', 'seen', () =>
  areas.map(([name, areaIn2]) => {
    const area = stressAreaMm2(named(name)) / mmPerInch ** 2;
    // tables are computed from rounded diameters: the last place is trusted to one and a half units
    const lastPlace = 10 ** -Math.max(4, String(areaIn2).length - 2);
    return near(name, area, areaIn2, 1.5 * lastPlace);
  }),
);

// the three minor diameters in use are three different figures
b11('minor diameter of 1/4-20 by the form of root: UNR, older, sharp', 'seen', () => {
  const minor = (root: 'unr' | 'older' | 'sharp-root') => inches(minorExternalMm(named('1/4-20'), root));
  return [
    near('UNR', minor('unr'), 0.1905, 5e-5),
    near('older', minor('older'), 0.1887, 5e-5),
    near('sharp root', minor('sharp-root'), 0.185, 5e-5),
  ];
});

/** Class 2A across the bolt, least and most; class 2B in the nut's bore, least and most. */
const classes = [
  ['#8-32', 0.1571, 0.1631, 0.13, 0.139],
  ['#10-24', 0.1818, 0.189, 0.145, 0.156],
  ['#10-32', 0.1831, 0.1891, 0.156, 0.164],
  ['1/4-20', 0.2408, 0.2489, 0.196, 0.207],
  ['1/4-28', 0.2425, 0.249, 0.211, 0.22],
  ['5/16-18', 0.3026, 0.3113, 0.252, 0.265],
  ['5/16-24', 0.3042, 0.3114, 0.267, 0.277],
  ['3/8-16', 0.3643, 0.3737, 0.307, 0.321],
  ['3/8-24', 0.3667, 0.3739, 0.33, 0.34],
  ['7/16-14', 0.4258, 0.4361, 0.36, 0.376],
  ['7/16-20', 0.4281, 0.4362, 0.383, 0.395],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: as it is printed
  ['1/2-13', 0.4876, 0.4985, 0.417, 0.434],
  ['1/2-20', 0.4906, 0.4987, 0.446, 0.457],
] as const;

b11('across a bolt of class 2A, least and most', 'from memory', () =>
  classes.flatMap(([name, least, most]) => {
    const { leastMm, mostMm } = boltDiameterLimits(named(name));
    return [
      near(`${name} least`, inches(leastMm), least, 0.0001),
      near(`${name} most`, inches(mostMm), most, 0.0001),
    ];
  }),
);

b11('the bore of a nut of class 2B, least and most, printed to three places', 'from memory', () =>
  classes.flatMap(([name, , , least, most]) => {
    const { leastMm, mostMm } = nutBoreLimits(named(name));
    return [
      near(`${name} least`, inches(leastMm), least, 0.0006),
      near(`${name} most`, inches(mostMm), most, 0.0006),
    ];
  }),
);

b11('major diameter of the numbered sizes', 'from memory', () =>
  (
    [
      ['#4-40', 0.112],
      ['#5-40', 0.125],
      ['#6-32', 0.138],
      ['#8-32', 0.164],
      ['#10-24', 0.19],
      ['#12-24', 0.216],
    ] as const
  ).map(([name, majorIn]) => near(name, inches(named(name).majorMm), majorIn, 1e-9)),
);
