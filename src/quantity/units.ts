import type { Kind, UnitSystem } from './quantity.js';
import type { Unit } from './unit.js';

/**
 * The unit table. Every factor is a product of the exact bases of NIST SP 811:2008 App. B:
 * 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, standard gravity 9.806 65 m/s², 1 US gal = 231 in³,
 * 1 imperial gal = 4.546 09 L. No factor is a rounded figure of a table.
 *
 * Water and mercury columns are the *conventional* ones of SP 811 (water 1000 kg/m³, mercury 13 595.1 kg/m³ at
 * standard gravity): 249.0889 Pa and 3386.389 Pa an inch. Water at 39.2 °F would be 249.082 Pa and at 60 °F
 * 248.84 Pa, at most 0.1 % less: far below what a bench gauge can tell. Mercury at 60 °F is 0.3 % less.
 */

const inch = 0.0254;
const foot = 12 * inch;
const poundMass = 0.45359237;
const ounceMass = poundMass / 16;
const standardGravity = 9.80665;
const poundForce = poundMass * standardGravity;
const ounceForce = poundForce / 16;
const usGallon = 231 * inch ** 3;
const imperialGallon = 4.54609e-3;
const waterMeter = 1000 * standardGravity;
const mercuryMeter = 13595.1 * standardGravity;
const minute = 60;
const hour = 60 * minute;
const day = 24 * hour;
/** mean year of the Gregorian calendar, 400 years of 146 097 days */
const year = (146097 / 400) * day;
const turn = 2 * Math.PI;

interface Extra {
  readonly offset?: number;
  readonly whenWanted?: readonly string[];
  readonly whole?: true;
  readonly note?: string;
}

const all: Unit[] = [];

function unit(
  kind: Kind,
  system: UnitSystem | 'both',
  id: string,
  factor: number,
  spellings: readonly string[],
  extra: Extra = {},
): void {
  const { offset = 0, whenWanted = [], whole = false, note } = extra;
  all.push({ kind, system, id, factor, offset, spellings, whenWanted, whole, ...(note && { note }) });
}

/** Every first word before every second word and the other way round: "in-lb" and "lb-in". */
function eitherWay(firsts: readonly string[], seconds: readonly string[]): string[] {
  return firsts.flatMap((a) => seconds.flatMap((b) => [`${a}-${b}`, `${b}-${a}`, `${a}/${b}`]));
}

function inTurn(firsts: readonly string[], seconds: readonly string[]): string[] {
  return firsts.flatMap((a) => seconds.map((b) => `${a} ${b}`));
}

const inches = ['in', 'inch', 'inches', '"'];
const feet = ['ft', 'foot', 'feet'];
const pounds = ['lb', 'lbs', 'lbf', 'lbsf', 'pound', 'pounds', 'pound force', 'pounds force'];
const ounces = ['oz', 'ozf', 'ozs', 'ounce', 'ounces'];
const meters = ['m', 'meter', 'meters', 'metre', 'metres'];
const centimeters = ['cm', 'centimeter', 'centimeters', 'centimetre', 'centimetres'];
const newtons = ['N', 'newton', 'newtons'];
const kilograms = ['kgf', 'kg', 'kp', 'kilogram', 'kilograms', 'kilogram force', 'kilograms force'];
const mercury = ['Hg', 'of Hg', 'mercury', 'of mercury'];
const water = [
  'H2O',
  'of H2O',
  'water',
  'of water',
  'WC',
  'WG',
  'water column',
  'of water column',
  'water gauge',
  'water gage',
];

unit('length', 'metric', 'mm', 1e-3, ['millimeter', 'millimeters', 'millimetre', 'millimetres']);
unit('length', 'metric', 'cm', 1e-2, centimeters.slice(1));
unit('length', 'metric', 'm', 1, meters.slice(1));
unit('length', 'metric', 'km', 1e3, ['kilometer', 'kilometers', 'kilometre', 'kilometres']);
unit('length', 'metric', 'µm', 1e-6, ['um', 'micron', 'microns', 'micrometer', 'micrometers', 'micrometre'], {
  whole: true,
});
unit('length', 'inch', 'in', inch, ['inch', 'inches', '"']);
unit(
  'length',
  'inch',
  'thou',
  inch / 1000,
  ['thous', 'thousandth', 'thousandths', 'thousandths of an inch'],
  { whole: true },
);
unit('length', 'inch', 'ft', foot, ['foot', 'feet', "'"]);
unit('length', 'inch', 'yd', 3 * foot, ['yard', 'yards']);

unit('area', 'metric', 'mm²', 1e-6, ['sq mm', 'square millimeters', 'square millimetres']);
unit('area', 'metric', 'cm²', 1e-4, ['sq cm', 'square centimeters', 'square centimetres']);
unit('area', 'metric', 'm²', 1, ['sq m', 'square meters', 'square metres']);
unit('area', 'inch', 'in²', inch ** 2, [
  'sq in',
  'square inch',
  'square inches',
  'sq inch',
  'sq inches',
  '"2',
]);
unit('area', 'inch', 'ft²', foot ** 2, ['sq ft', 'square foot', 'square feet']);

unit('volume', 'metric', 'mL', 1e-6, ['milliliter', 'milliliters', 'millilitre', 'millilitres'], {
  whole: true,
});
unit(
  'volume',
  'metric',
  'cc',
  1e-6,
  ['cm3', 'ccm', 'cu cm', 'cubic centimeter', 'cubic centimeters', 'cubic centimetres'],
  { whole: true },
);
unit('volume', 'metric', 'L', 1e-3, ['liter', 'liters', 'litre', 'litres', 'ltr', 'dm3', 'ℓ']);
unit('volume', 'metric', 'mm³', 1e-9, ['cu mm', 'cubic millimeters', 'cubic millimetres']);
unit('volume', 'metric', 'm³', 1, ['cu m', 'cubic meter', 'cubic meters', 'cubic metres']);
unit('volume', 'inch', 'cu in', inch ** 3, [
  'in3',
  'cubic inch',
  'cubic inches',
  'cu inch',
  'cu inches',
  'cuin',
  'cid',
  'ci',
]);
unit('volume', 'inch', 'ft³', foot ** 3, ['cu ft', 'cubic foot', 'cubic feet']);
unit(
  'volume',
  'inch',
  'fl oz',
  usGallon / 128,
  ['fluid ounce', 'fluid ounces', 'fluid oz', 'fl ozs', 'US fl oz'],
  {
    whenWanted: ['oz', 'ozs', 'ounce', 'ounces'],
    note: 'US fluid ounce, 1/128 of a US gallon',
  },
);
unit('volume', 'inch', 'pt', usGallon / 8, ['pint', 'pints', 'pts', 'US pt', 'US pint', 'US pints'], {
  note: 'US liquid pint',
});
unit('volume', 'inch', 'qt', usGallon / 4, ['quart', 'quarts', 'qts', 'US qt', 'US quart', 'US quarts'], {
  note: 'US liquid quart',
});
unit('volume', 'inch', 'gal', usGallon, ['gallon', 'gallons', 'gals', 'US gal', 'US gallon', 'US gallons'], {
  note: 'US gallon, 231 cu in',
});
unit(
  'volume',
  'inch',
  'imp fl oz',
  imperialGallon / 160,
  ['imperial fluid ounce', 'imperial fluid ounces', 'imp oz', 'UK fl oz'],
  {
    note: 'imperial fluid ounce, 4 % smaller than the US one',
  },
);
unit(
  'volume',
  'inch',
  'imp pt',
  imperialGallon / 8,
  ['imperial pint', 'imperial pints', 'UK pt', 'UK pint', 'UK pints'],
  {
    note: 'imperial pint, 20 % larger than the US one',
  },
);
unit('volume', 'inch', 'imp qt', imperialGallon / 4, ['imperial quart', 'imperial quarts', 'UK qt'], {
  note: 'imperial quart, 20 % larger than the US one',
});
unit(
  'volume',
  'inch',
  'imp gal',
  imperialGallon,
  ['imperial gallon', 'imperial gallons', 'UK gal', 'UK gallon', 'UK gallons'],
  {
    note: 'imperial gallon, 20 % larger than the US one',
  },
);

unit('mass', 'metric', 'mg', 1e-6, ['milligram', 'milligrams']);
unit('mass', 'metric', 'g', 1e-3, ['gram', 'grams', 'gm', 'gms']);
unit('mass', 'metric', 'kg', 1, ['kilogram', 'kilograms', 'kgs', 'kilo', 'kilos']);
unit('mass', 'inch', 'oz', ounceMass, ['ozs', 'ounce', 'ounces']);
unit('mass', 'inch', 'lb', poundMass, ['lbs', 'pound', 'pounds', 'lbm']);

unit('density', 'metric', 'kg/m³', 1, ['kg/cu m'], { whole: true });
unit('density', 'metric', 'g/cm³', 1e3, ['g/cc', 'g/mL', 'kg/L', 'kg/dm3']);
unit('density', 'metric', 'g/L', 1, []);
unit('density', 'inch', 'lb/ft³', poundMass / foot ** 3, ['lb/cu ft', 'lbs/cu ft', 'lbs/ft3']);
unit('density', 'inch', 'lb/gal', poundMass / usGallon, ['lbs/gal', 'lb/US gal', 'pounds per gallon']);

unit('force', 'metric', 'N', 1, newtons.slice(1), { whole: true });
unit('force', 'metric', 'kN', 1e3, ['kilonewton', 'kilonewtons']);
unit('force', 'metric', 'kgf', standardGravity, ['kp', 'kilogram force', 'kilograms force', 'kilopond'], {
  whenWanted: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'],
});
unit('force', 'inch', 'lbf', poundForce, ['lbsf', 'pound force', 'pounds force'], {
  whenWanted: ['lb', 'lbs', 'pound', 'pounds'],
  whole: true,
});
unit('force', 'inch', 'ozf', ounceForce, ['ounce force', 'ounces force'], {
  whenWanted: ['oz', 'ozs', 'ounce', 'ounces'],
});
unit('force', 'inch', 'kip', 1000 * poundForce, ['kips', 'klbf']);

unit('torque', 'inch', 'in-lb', inch * poundForce, eitherWay(inches, pounds), {
  whenWanted: ['lb/in', 'lbs/in', 'lbf/in', 'pounds/inch'],
  whole: true,
});
unit('torque', 'inch', 'ft-lb', foot * poundForce, eitherWay(feet, pounds), {
  whenWanted: ['lb/ft', 'lbs/ft', 'lbf/ft', 'pounds/foot'],
  whole: true,
});
unit('torque', 'inch', 'in-oz', inch * ounceForce, eitherWay(inches, ounces), { whole: true });
unit(
  'torque',
  'metric',
  'N·m',
  1,
  eitherWay(meters, newtons).filter((s) => !/^m-|[/]/.test(s)),
);
unit(
  'torque',
  'metric',
  'N·cm',
  1e-2,
  eitherWay(centimeters, newtons).filter((s) => !s.includes('/')),
);
unit(
  'torque',
  'metric',
  'kgf·m',
  standardGravity,
  eitherWay(meters, kilograms).filter((s) => !s.includes('/')),
);
unit(
  'torque',
  'metric',
  'kgf·cm',
  standardGravity / 100,
  eitherWay(centimeters, kilograms).filter((s) => !s.includes('/')),
);

unit('pressure', 'metric', 'Pa', 1, ['pascal', 'pascals'], { whole: true });
unit('pressure', 'metric', 'hPa', 100, ['hectopascal', 'hectopascals']);
unit('pressure', 'metric', 'kPa', 1e3, ['kilopascal', 'kilopascals']);
unit('pressure', 'metric', 'MPa', 1e6, ['megapascal', 'megapascals', 'N/mm2']);
unit('pressure', 'metric', 'GPa', 1e9, ['gigapascal', 'gigapascals']);
unit('pressure', 'metric', 'bar', 1e5, ['bars']);
unit('pressure', 'metric', 'mbar', 100, ['millibar', 'millibars']);
unit('pressure', 'metric', 'kgf/cm²', standardGravity * 1e4, ['kg/cm2', 'kp/cm2', 'kg/sq cm', 'ksc']);
unit('pressure', 'metric', 'atm', 101325, ['atmosphere', 'atmospheres']);
unit('pressure', 'metric', 'Torr', 101325 / 760, []);
unit(
  'pressure',
  'metric',
  'mmHg',
  mercuryMeter / 1000,
  inTurn(['mm', 'millimeters', 'millimetres'], mercury),
  {
    note: 'conventional mercury, 13 595.1 kg/m³ (0 °C)',
  },
);
unit('pressure', 'metric', 'mmH2O', waterMeter / 1000, inTurn(['mm', 'millimeters', 'millimetres'], water), {
  note: 'conventional water, 1000 kg/m³ (4 °C)',
});
unit('pressure', 'metric', 'cmH2O', waterMeter / 100, inTurn(centimeters, water), {
  note: 'conventional water, 1000 kg/m³ (4 °C)',
});
unit(
  'pressure',
  'inch',
  'psi',
  poundForce / inch ** 2,
  [
    ...['psig', 'lb/in2', 'lbs/in2', 'lbf/in2', 'lb/sq in', 'lbs/sq in', 'lbf/sq in'],
    ...['pound per square inch', 'pounds per square inch', 'lb per sq in', 'lbs per sq in'],
  ],
  { whole: true },
);
unit('pressure', 'inch', 'ksi', (1000 * poundForce) / inch ** 2, ['kpsi']);
unit('pressure', 'inch', 'Mpsi', (1e6 * poundForce) / inch ** 2, ['Msi']);
unit('pressure', 'inch', 'inH2O', waterMeter * inch, inTurn(inches, water), {
  note: 'conventional water, 1000 kg/m³ (4 °C)',
});
unit('pressure', 'inch', 'inHg', mercuryMeter * inch, inTurn(inches, mercury), {
  note: 'conventional mercury, 13 595.1 kg/m³ (0 °C)',
});

unit('power', 'metric', 'W', 1, ['watt', 'watts'], { whole: true });
unit('power', 'metric', 'kW', 1e3, ['kilowatt', 'kilowatts']);
unit('power', 'metric', 'PS', 75 * standardGravity, ['metric hp', 'metric horsepower', 'cv', 'pk'], {
  note: 'metric horsepower, 75 kgf·m/s, 1.4 % less than hp',
});
unit('power', 'inch', 'hp', 550 * foot * poundForce, ['bhp', 'horsepower', 'horse power'], {
  note: 'mechanical horsepower, 550 ft·lbf/s',
});

unit('speed', 'metric', 'm/s', 1, ['m per s', 'meters per second', 'metres per second', 'mps']);
unit('speed', 'metric', 'mm/s', 1e-3, []);
unit('speed', 'metric', 'km/h', 1000 / hour, ['kph', 'kmh', 'km/hr', 'kmph']);
unit(
  'speed',
  'inch',
  'ft/min',
  foot / minute,
  ['fpm', 'feet per minute', 'ft per min', 'feet/min', 'ft/minute'],
  { whole: true },
);
unit('speed', 'inch', 'ft/s', foot, ['fps', 'ft/sec', 'feet per second', 'ft per s', 'ft per sec']);
unit('speed', 'inch', 'in/s', inch, ['ips', 'in/sec', 'inches per second']);
unit('speed', 'inch', 'mph', (5280 * foot) / hour, ['mi/h', 'miles per hour']);

unit(
  'rotation',
  'both',
  'rpm',
  turn / minute,
  [
    ...[
      'rev/min',
      'revs/min',
      'r/min',
      'revolutions per minute',
      'turns/min',
      '1/min',
      'revs per minute',
      'revs per min',
    ],
  ],
  { whenWanted: ['revs'], whole: true },
);
unit('rotation', 'both', 'rad/s', 1, ['rad/sec', 'radians per second']);
unit('rotation', 'both', 'rev/s', turn, ['rps', 'r/s', 'revs/s', 'rev/sec', 'revolutions per second']);
unit('rotation', 'both', '°/s', turn / 360, ['deg/s', 'degrees per second', 'deg/sec']);

unit('frequency', 'both', 'Hz', 1, ['hertz', 'cps', 'cycles per second', '1/s'], { whole: true });
unit('frequency', 'both', 'kHz', 1e3, ['kilohertz']);

unit('time', 'both', 's', 1, ['sec', 'secs', 'second', 'seconds']);
unit('time', 'both', 'ms', 1e-3, ['millisecond', 'milliseconds', 'msec']);
unit('time', 'both', 'min', minute, ['mins', 'minute', 'minutes']);
unit('time', 'both', 'h', hour, ['hr', 'hrs', 'hour', 'hours'], { whole: true });
unit('time', 'both', 'days', day, ['d', 'day'], { whole: true });
unit('time', 'both', 'weeks', 7 * day, ['week', 'wk', 'wks']);
unit('time', 'both', 'months', year / 12, ['month', 'mo', 'mos'], {
  note: 'a twelfth of the mean calendar year',
});
unit('time', 'both', 'years', year, ['year', 'yr', 'yrs'], { note: 'mean calendar year, 365.2425 days' });

unit('angle', 'both', '°', turn / 360, [
  'deg',
  'degs',
  'degree',
  'degrees',
  'deg crank',
  '° crank',
  'degrees of crank',
]);
unit('angle', 'both', 'rad', 1, ['radian', 'radians']);
unit('angle', 'both', 'turns', turn, ['turn', 'a turn', 'of a turn', 'rev', 'revolution', 'revolutions'], {
  whenWanted: ['revs'],
});

unit(
  'temperature',
  'metric',
  '°C',
  1,
  ['C', 'deg C', 'degC', 'degrees C', 'degree C', 'celsius', 'deg celsius', 'degrees celsius'],
  {
    offset: 273.15,
  },
);
unit(
  'temperature',
  'inch',
  '°F',
  5 / 9,
  ['F', 'deg F', 'degF', 'degrees F', 'degree F', 'fahrenheit', 'deg fahrenheit', 'degrees fahrenheit'],
  {
    offset: (459.67 * 5) / 9,
  },
);
unit('temperature', 'metric', 'K', 1, ['kelvin', 'kelvins']);

unit(
  'flow',
  'metric',
  'mL/min',
  1e-6 / minute,
  ['cc/min', 'ml per min', 'ml per minute', 'cm3/min', 'milliliters per minute'],
  { whole: true },
);
unit('flow', 'metric', 'L/min', 1e-3 / minute, [
  'lpm',
  'l per min',
  'liters per minute',
  'litres per minute',
]);
unit('flow', 'metric', 'L/h', 1e-3 / hour, ['lph', 'l/hr', 'liters per hour', 'litres per hour']);
unit('flow', 'metric', 'm³/s', 1, ['cubic meters per second']);
unit('flow', 'metric', 'm³/h', 1 / hour, ['m3/hr']);
unit('flow', 'inch', 'fl oz/min', usGallon / 128 / minute, ['oz/min', 'fluid ounces per minute']);
unit('flow', 'inch', 'gal/h', usGallon / hour, ['gph', 'gal/hr', 'gallons per hour', 'US gal/h']);
unit('flow', 'inch', 'gal/min', usGallon / minute, ['gpm', 'gallons per minute', 'US gal/min']);
unit('flow', 'inch', 'ft³/min', foot ** 3 / minute, ['cfm', 'cu ft/min', 'cubic feet per minute']);

unit('kinematic-viscosity', 'both', 'mm²/s', 1e-6, ['cSt', 'centistokes', 'centistoke', 'sq mm/s']);
unit('kinematic-viscosity', 'both', 'm²/s', 1, ['sq m/s']);
unit('dynamic-viscosity', 'both', 'mPa·s', 1e-3, ['cP', 'centipoise']);
unit('dynamic-viscosity', 'both', 'Pa·s', 1, ['pascal seconds', 'pascal second']);

unit('voltage', 'both', 'mV', 1e-3, ['millivolt', 'millivolts']);
unit('voltage', 'both', 'V', 1, ['volt', 'volts', 'VDC', 'VAC', 'V DC', 'V AC']);
unit('voltage', 'both', 'kV', 1e3, ['kilovolt', 'kilovolts']);
unit('current', 'both', 'mA', 1e-3, ['milliampere', 'milliamperes', 'milliamp', 'milliamps']);
unit('current', 'both', 'A', 1, ['amp', 'amps', 'ampere', 'amperes', 'AAC', 'A AC', 'A DC']);
unit('resistance', 'both', 'mΩ', 1e-3, ['mohm', 'mohms', 'milliohm', 'milliohms']);
unit('resistance', 'both', 'Ω', 1, ['ohm', 'ohms'], { whenWanted: ['R'] });
unit(
  'resistance',
  'both',
  'kΩ',
  1e3,
  ['kohm', 'kohms', 'k ohm', 'k ohms', 'kiloohm', 'kiloohms', 'kilohm', 'kilohms'],
  {
    whenWanted: ['k', 'K'],
  },
);
unit(
  'resistance',
  'both',
  'MΩ',
  1e6,
  ['Mohm', 'Mohms', 'Megohm', 'Megohms', 'megaohm', 'megaohms', 'meg ohm', 'meg ohms'],
  {
    whenWanted: ['M', 'meg'],
  },
);
unit('capacitance', 'both', 'pF', 1e-12, ['picofarad', 'picofarads']);
unit('capacitance', 'both', 'nF', 1e-9, ['nanofarad', 'nanofarads']);
unit('capacitance', 'both', 'µF', 1e-6, ['uF', 'mfd', 'microfarad', 'microfarads']);
unit('capacitance', 'both', 'farad', 1, ['farads']);

unit('ratio', 'both', '%', 0.01, ['percent', 'per cent', 'pct']);
unit('ratio', 'both', '1', 1, ['times', '×', 'x']);

/** Every unit by its id. */
export const units: Readonly<Record<string, Unit>> = Object.fromEntries(all.map((each) => [each.id, each]));
