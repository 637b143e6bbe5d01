import { inchDrills } from '../../src/fasten/drills.js';
import { mmPerInch } from '../../src/fasten/thread-form.js';
import { near, published } from '../support/published.js';

const sizeIn = (name: string) => {
  const drill = inchDrills.find((each) => each.name === name);
  if (!drill) throw new Error(`${name} is not listed`);
  return drill.diameterMm / mmPerInch;
};
const b94 = published('ASME B94.11M, twist drills');

b94('number and letter drills, in', 'seen', () =>
  (
    [
      ['#1', 0.228],
      ['#2', 0.221],
      ['#3', 0.213],
      ['#4', 0.209],
      ['#7', 0.201],
      ['#10', 0.1935],
      ['#21', 0.159],
      ['#25', 0.1495],
      ['#29', 0.136],
      ['#35', 0.11],
      ['#43', 0.089],
      ['#53', 0.0595],
      ['F', 0.257],
      ['U', 0.368],
      ['X', 0.397],
      ['A', 0.234],
      ['Z', 0.413],
    ] as const
  ).map(([name, inches]) => near(name, sizeIn(name), inches, 5e-10)),
);

/** The drills whose size was not seen in a public copy, in order from #5 and from B; in inches. */
const numbers: Readonly<Record<number, number>> = {
  ...{ 5: 0.2055, 6: 0.204, 8: 0.199, 9: 0.196, 11: 0.191, 12: 0.189, 13: 0.185, 14: 0.182, 15: 0.18 },
  ...{ 16: 0.177, 17: 0.173, 18: 0.1695, 19: 0.166, 20: 0.161, 22: 0.157, 23: 0.154, 24: 0.152, 26: 0.147 },
  ...{ 27: 0.144, 28: 0.1405, 30: 0.1285, 31: 0.12, 32: 0.116, 33: 0.113, 34: 0.111, 36: 0.1065, 37: 0.104 },
  ...{
    38: 0.1015,
    39: 0.0995,
    40: 0.098,
    41: 0.096,
    42: 0.0935,
    44: 0.086,
    45: 0.082,
    46: 0.081,
    47: 0.0785,
  },
  ...{ 48: 0.076, 49: 0.073, 50: 0.07, 51: 0.067, 52: 0.0635, 54: 0.055, 55: 0.052, 56: 0.0465, 57: 0.043 },
  ...{ 58: 0.042, 59: 0.041, 60: 0.04 },
};
const letters: Readonly<Record<string, number>> = {
  ...{ B: 0.238, C: 0.242, D: 0.246, E: 0.25, G: 0.261, H: 0.266, I: 0.272, J: 0.277, K: 0.281, L: 0.29 },
  ...{ M: 0.295, N: 0.302, O: 0.316, P: 0.323, Q: 0.332, R: 0.339, S: 0.348, T: 0.358, V: 0.377, W: 0.386 },
  ...{ Y: 0.404 },
};

b94('the other number drills, in', 'from memory', () =>
  Object.entries(numbers).map(([number, inches]) => near(`#${number}`, sizeIn(`#${number}`), inches, 5e-10)),
);

b94('the other letter drills, in', 'from memory', () =>
  Object.entries(letters).map(([name, inches]) => near(name, sizeIn(name), inches, 5e-10)),
);

b94('fractional drills as printed to four places, in', 'from memory', () =>
  (
    [
      ['1/16 in', 0.0625],
      ['5/64 in', 0.0781],
      ['3/32 in', 0.0938],
      ['7/64 in', 0.1094],
      ['1/8 in', 0.125],
      ['9/64 in', 0.1406],
      ['5/32 in', 0.1562],
      ['11/64 in', 0.1719],
      ['3/16 in', 0.1875],
      ['13/64 in', 0.2031],
      ['7/32 in', 0.2188],
      ['15/64 in', 0.2344],
      ['17/64 in', 0.2656],
      ['5/16 in', 0.3125],
      ['21/64 in', 0.3281],
      ['25/64 in', 0.3906],
      ['27/64 in', 0.4219],
      ['29/64 in', 0.4531],
    ] as const
  ).map(([name, inches]) => near(name, sizeIn(name), inches, 5.1e-5)),
);
