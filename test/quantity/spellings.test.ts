import { describe, expect, test } from 'vitest';
import { type Kind, parse } from '../../src/quantity/index.js';
import { expectRefusal } from './refusal.js';

/** Each line: value and unit that all its texts must mean. */
const written: readonly (readonly [value: number, unit: string, texts: readonly string[]])[] = [
  [
    140,
    'in-lb',
    [
      ...[
        '140 in-lb',
        '140in-lb',
        '140 in·lb',
        '140 in lb',
        '140 in-lbs',
        '140 in.-lb.',
        '140 in.lbs.',
        '140 inlb',
      ],
      ...[
        '140 inch pounds',
        '140 inch-pounds',
        '140 inch lbs',
        '140 inch-lb',
        '140 Inch Pounds',
        '140 IN-LB',
      ],
      ...[
        '140 lbf in',
        '140 lbf·in',
        '140 lbf.in',
        '140 lb-in',
        '140 lb·in',
        '140 lb in',
        '140 lbs-in',
        '140 in-lbf',
      ],
      ...[
        '140 pound-inch',
        '140 pound inches',
        '140 lbf-in',
        '140 in/lbs',
        '140 in‑lb',
        '140 in–lb',
        '140 in⋅lb',
        '140 in*lb',
      ],
      ...['140. in-lb', '140.0 in-lb', '1.4e2 in-lb', '  140 in-lb  ', '+140 in-lb'],
    ],
  ],
  [
    15,
    'ft-lb',
    [
      ...[
        '15 ft-lb',
        '15 ft·lb',
        '15 ft lbs',
        '15 ft-lbs',
        '15 ft. lbs.',
        '15 foot pounds',
        '15 foot-pounds',
        '15 FT-LBS',
      ],
      ...[
        '15 lbf·ft',
        '15 lb-ft',
        '15 lb ft',
        '15 lbs-ft',
        '15 ft/lbs',
        '15 foot lbs',
        '15 pound-feet',
        '15 ftlb',
        '15 lbf ft',
      ],
    ],
  ],
  [
    20.3,
    'N·m',
    [
      '20.3 N·m',
      '20.3 Nm',
      '20.3 N-m',
      '20.3 N m',
      '20.3N.m',
      '20.3 N⋅m',
      '20.3 nm',
      '20.3 NM',
      '20,3 Nm',
      '20.3 newton meters',
      '20.3 newton-metres',
    ],
  ],
  [
    1.4,
    'kgf·m',
    ['1.4 kgf·m', '1.4 kgf-m', '1.4 kgf m', '1.4 kg-m', '1.4 kg·m', '1.4 kgm', '1.4 mkg', '1.4 kp·m'],
  ],
  [140, 'kgf·cm', ['140 kgf·cm', '140 kgf-cm', '140 kg-cm', '140 kg cm', '140 kgcm']],
  [
    0.03,
    'in',
    [
      ...[
        '.030"',
        '0.030 in',
        '0.030in',
        '0.030 in.',
        '.030 inch',
        '.03 inches',
        '0.030″',
        '0.030”',
        "0.030''",
        '.030 "',
        '0,03 in',
        ',030 in',
      ],
      ...['0.030 Inch', '0.030 IN'],
    ],
  ],
  [30, 'thou', ['30 thou', '30 thousandths', '30 thousandths of an inch', '30 thous']],
  [3 / 64, 'in', ['3/64 in', '3/64"', '3/64in', '3 / 64 in', '3⁄64 in', '3/64-in']],
  [
    1.25,
    'in',
    [
      '1-1/4 in',
      '1 1/4"',
      '1 1/4 in',
      '1-1/4"',
      '1¼ in',
      '1 ¼"',
      '1-¼ in',
      '1 and 1/4 in',
      '1.25 in',
      '1–1/4 in',
      '5/4 in',
    ],
  ],
  [0.5, 'in', ['half an inch', 'half inch', '1/2"', '½ in', '½"', 'a half inch', '.5 in']],
  [
    0.76,
    'mm',
    ['0.76mm', '0.76 mm', '0,76 mm', '.76 mm', '0.76 MM', '0.76 millimeters', '0.76 millimetres', '0.760 mm'],
  ],
  [12, 'µm', ['12 µm', '12 μm', '12 um', '12 microns', '12 micrometers']],
  [
    60,
    'psi',
    [
      '60 psi',
      '60 PSI',
      '60psi',
      '60 psig',
      '60 lb/in²',
      '60 lbs/sq in',
      '60 lbf/in2',
      '60 pounds per square inch',
    ],
  ],
  [4.1, 'bar', ['4.1 bar', '4,1 bar', '4.1 BAR', '4.1 bars']],
  [415, 'kPa', ['415 kPa', '415 kpa', '415 KPA', '415 kilopascals']],
  [580, 'MPa', ['580 MPa', '580 mpa', '580 MPA', '580 N/mm²', '580 N/mm2']],
  [85, 'ksi', ['85 ksi', '85 KSI', '85 kpsi']],
  [
    4,
    'inH2O',
    [
      ...[
        '4 inH2O',
        '4 in H2O',
        '4 in. H2O',
        '4 inH₂O',
        '4" H2O',
        '4 in. w.c.',
        '4 in WC',
        '4 inWC',
        '4" w.c.',
        '4 in wg',
        '4 "WG',
      ],
      ...[
        '4 inches of water',
        '4 inches water',
        '4 inch water column',
        '4 inches of water column',
        '4 in of water',
        '4 INH2O',
      ],
    ],
  ],
  [
    13,
    'inHg',
    [
      '13 in Hg',
      '13 inHg',
      '13 in. Hg',
      '13" Hg',
      '13 inches of mercury',
      '13 inches Hg',
      '13 inch mercury',
      '13 in of Hg',
      '13 inhg',
    ],
  ],
  [330, 'mmHg', ['330 mmHg', '330 mm Hg', '330 mm of mercury']],
  [
    20,
    'fl oz',
    ['20 fl oz', '20 fl. oz.', '20 floz', '20 fluid ounces', '20 fl-oz', '20 FL OZ', '20 fluid oz'],
  ],
  [0.75, 'qt', ['3/4 qt', '3/4 quart', '¾ qt', '.75 quarts', '0.75 QT', 'three quarters of a quart']],
  [1.5, 'pt', ['1-1/2 pints', '1½ pt', '1.5 pts']],
  [2, 'gal', ['2 gal', '2 gallons', '2 US gal', '2 gals.']],
  [600, 'mL', ['600 mL', '600 ml', '600ML', '600 milliliters', '600 millilitres']],
  [190, 'cc', ['190 cc', '190 CC', '190 cm³', '190 cm3', '190 ccm', '190 c.c.']],
  [0.6, 'L', ['0.6 L', '0.6 l', '0,6 L', '.6 liter', '0.6 litres']],
  [11.6, 'cu in', ['11.6 cu in', '11.6 cu. in.', '11.6 cubic inches', '11.6 in³', '11.6 in3', '11.6 CID']],
  [
    3600,
    'rpm',
    [
      '3600 rpm',
      '3,600 rpm',
      '3600 RPM',
      '3600 r.p.m.',
      '3600 rev/min',
      '3600 r/min',
      '3600 1/min',
      '3\u202f600 rpm',
      '3600 revolutions per minute',
    ],
  ],
  [25, 'h', ['25 h', '25 hr', '25 hrs', '25 hours', '25h', '25 HOURS']],
  [15, 'min', ['15 min', '15 mins', '15 minutes', '15 min.']],
  [8, 'months', ['8 months', '8 mos', '8 Months']],
  [2, 'turns', ['2 turns', '2 turn', '2 revolutions']],
  [1.5, 'turns', ['1-1/2 turns', '1½ turns', '1 1/2 turns', '1.5 turns']],
  [0.5, 'turns', ['½ turn', '1/2 turn', 'half a turn', 'half turn', '1/2 of a turn', 'a half turn']],
  [0.25, 'turns', ['quarter turn', 'a quarter turn', 'a quarter of a turn', '¼ turn']],
  [12, '°', ['12°', '12 °', '12 deg', '12 degrees', '12º']],
  [10, '°C', ['10 °C', '10°C', '10 C', '10C', '10 deg C', '10 degrees C', '10 ℃', '10 celsius', '10 ºC']],
  [-5, '°C', ['-5 °C', '−5 °C', '–5 °C', '-5°C', '- 5 C']],
  [68, '°F', ['68 °F', '68°F', '68 F', '68 deg F', '68 degrees Fahrenheit', '68 ℉']],
  [46, '%', ['46 %', '46%', '46 percent', '46 per cent', '46 pct']],
  [1200, 'ft/min', ['1200 ft/min', '1,200 fpm', '1200 feet per minute']],
  [3.5, 'hp', ['3.5 hp', '3.5 HP', '3-1/2 horsepower', '3½ hp', '3.5 bhp']],
  [2.6, 'kW', ['2.6 kW', '2.6 kw', '2.6 KW', '2.6 kilowatts']],
  [150, 'mL/min', ['150 mL/min', '150 ml/min', '150 cc/min', '150 ml per minute']],
  [100, 'mm²/s', ['100 mm²/s', '100 mm2/s', '100 cSt', '100 cst', '100 centistokes']],
  [80, 'mPa·s', ['80 mPa·s', '80 mPa s', '80 cP', '80 centipoise']],
  [5, 'kΩ', ['5 kΩ', '5 kΩ', '5 kohm', '5 k ohms', '5 kilohms', '5 KOHM']],
  [5, 'MΩ', ['5 MΩ', '5 Mohm', '5 megohm', '5 megohms']],
  [5, 'mΩ', ['5 mΩ', '5 mohm', '5 milliohms']],
  [0.8, 'Ω', ['0.8 Ω', '0.8 ohm', '0.8 Ohms']],
  [0.2, 'µF', ['0.2 µF', '0.2 μF', '0.2 uF', '.2 mfd', '0.2 microfarads']],
  [12.6, 'V', ['12.6 V', '12.6 volts', '12.6 VDC', '12.6v', '12.6 V DC']],
  [1234.5, 'psi', ['1,234.5 psi', '1.234,5 psi', '1234.5 psi', '1\u00a0234.5 psi']],
  [1234567, 'Pa', ['1,234,567 Pa', '1234567 Pa', '1\u2009234\u2009567 Pa']],
  [0.76, 'MPa', ['0,760 MPa']],
];

describe('a quantity is read in every usual spelling', () => {
  for (const [value, unit, texts] of written) {
    test(`${value} ${unit}`, () => {
      for (const text of texts) {
        const quantity = parse(text);
        expect(quantity.unit, text).toBe(unit);
        expect(quantity.si, text).toBeCloseTo(parse(`${value} ${unit}`).si, 14);
        expect(quantity.written, text).toBe(text.trim());
      }
    });
  }
});

/** Words that several kinds share, settled by the kind that is wanted. */
const settled: readonly (readonly [text: string, want: Kind, unit: string])[] = [
  ['20 oz', 'volume', 'fl oz'],
  ['20 oz', 'mass', 'oz'],
  ['4 oz', 'force', 'ozf'],
  ['12 lb', 'force', 'lbf'],
  ['12 lb', 'mass', 'lb'],
  ['3 kg', 'force', 'kgf'],
  ['3 kg', 'mass', 'kg'],
  ['2.5k', 'resistance', 'kΩ'],
  ['2.5 K', 'resistance', 'kΩ'],
  ['2.5 K', 'temperature', 'K'],
  ['1 M', 'resistance', 'MΩ'],
  ['15 lb/ft', 'torque', 'ft-lb'],
  ['3000 revs', 'rotation', 'rpm'],
  ['3 revs', 'angle', 'turns'],
];

test.each(settled)('%s where %s is wanted is in %s', (text, want, unit) => {
  expect(parse(text, want)).toMatchObject({ kind: want, unit });
});

test('a word with two meanings is refused, with both said', () => {
  expectRefusal(() => parse('5 mils'), 'ambiguous', 'thousandth of an inch', 'millimeter');
  expectRefusal(() => parse('400 mPa'), 'ambiguous', 'MPa');
  expectRefusal(() => parse('5 MOHM'), 'ambiguous', 'mΩ', 'MΩ');
  expectRefusal(() => parse('2.5k'), 'ambiguous', 'kΩ');
  expectRefusal(() => parse('10 degrees', 'temperature'), 'ambiguous', '°C or °F');
});
