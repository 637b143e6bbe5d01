import { findUnit } from './find-unit.js';
import type { Kind, Quantity, UnitSystem } from './quantity.js';

/** Which unit a reader of one system expects, by magnitude where it matters (SI values). */
type Choice = (si: number, unit: string) => string;
const always =
  (unit: string): Choice =>
  () =>
    unit;
/** The unit of the last step whose bound the magnitude reaches: steps rise. */
const steps =
  (first: string, ...later: readonly (readonly [from: number, unit: string])[]): Choice =>
  (si) =>
    later.filter(([from]) => Math.abs(si) >= from).at(-1)?.[1] ?? first;
const kept: Choice = (_si, unit) => unit;

const fluidInch = steps('fl oz', [9.46e-4, 'qt'], [3.785e-3, 'gal']);

/** Under this an in-lb wrench is the tool, above it a ft-lb wrench (common practice). */
const footPoundsFromNm = 22.6;

const choices: Readonly<Record<Kind, Readonly<Record<UnitSystem, Choice>>>> = {
  length: {
    inch: (si, unit) => (unit === 'm' || unit === 'km' ? 'ft' : steps('in', [10, 'ft'])(si, unit)),
    metric: (si, unit) => (unit === 'ft' || unit === 'yd' ? 'm' : steps('mm', [10, 'm'])(si, unit)),
  },
  area: { inch: steps('in²', [0.1, 'ft²']), metric: steps('mm²', [1e-3, 'cm²'], [1, 'm²']) },
  volume: {
    inch: (si, unit) => (unit === 'cc' || unit === 'mm³' ? 'cu in' : fluidInch(si, unit)),
    metric: (si, unit) => (unit === 'cu in' ? 'cc' : steps('mL', [1e-3, 'L'])(si, unit)),
  },
  mass: { inch: steps('oz', [0.4535, 'lb']), metric: steps('g', [1, 'kg']) },
  density: { inch: always('lb/ft³'), metric: always('kg/m³') },
  force: { inch: steps('ozf', [4.448, 'lbf']), metric: steps('N', [1e4, 'kN']) },
  torque: { inch: steps('in-lb', [footPoundsFromNm, 'ft-lb']), metric: always('N·m') },
  // a few kilopascals are a crankcase or a manometer, hundreds of megapascals a bolt
  pressure: {
    inch: steps('inH2O', [5e3, 'psi'], [1e8, 'ksi'], [1e10, 'Mpsi']),
    metric: steps('Pa', [100, 'kPa'], [1e6, 'MPa'], [1e10, 'GPa']),
  },
  power: { inch: always('hp'), metric: steps('W', [1e3, 'kW']) },
  speed: {
    inch: (_si, unit) => (unit === 'km/h' ? 'mph' : 'ft/min'),
    metric: (_si, unit) => (unit === 'mph' ? 'km/h' : 'm/s'),
  },
  rotation: { inch: kept, metric: kept },
  frequency: { inch: kept, metric: kept },
  time: { inch: kept, metric: kept },
  angle: { inch: kept, metric: kept },
  temperature: { inch: always('°F'), metric: always('°C') },
  flow: { inch: steps('fl oz/min', [1e-4, 'gal/min']), metric: steps('mL/min', [1e-3 / 60, 'L/min']) },
  'kinematic-viscosity': { inch: kept, metric: kept },
  'dynamic-viscosity': { inch: kept, metric: kept },
  current: { inch: kept, metric: kept },
  voltage: { inch: kept, metric: kept },
  resistance: { inch: kept, metric: kept },
  capacitance: { inch: kept, metric: kept },
  ratio: { inch: kept, metric: kept },
};

/**
 * The unit in which a reader of this system is shown a quantity. A unit of the reader's own system stays, so that
 * an instrument's reading and its limit stay side by side; only a torque that nobody wrote changes between in-lb
 * and ft-lb at about 200 in-lb.
 */
export function readerUnit(quantity: Quantity, system: UnitSystem): string {
  const own = findUnit(quantity.unit);
  const isReaders = own.system === 'both' || own.system === system;
  const mayChange = quantity.kind === 'torque' && quantity.written === undefined && isPound(own.id);
  if (isReaders && !mayChange) return own.id;
  return choices[quantity.kind][system](quantity.si, own.id);
}

function isPound(unit: string): boolean {
  return unit === 'in-lb' || unit === 'ft-lb';
}
