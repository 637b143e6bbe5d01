import { type Kind, parse, type Quantity, requirePlausible } from '../quantity/index.js';
import { WorksheetError } from './error.js';

/** Least and most that can be meant, both allowed: with units ("10 mm") or, of plain numbers, without. */
export type Span = readonly [least: string, most: string] | readonly [least: number, most: number];

/** What can be meant at a bench where a field does not say: nothing negative but angles and temperatures. */
const usual: Readonly<Record<Kind | 'number' | 'count', Span>> = {
  length: ['0 mm', '2 m'],
  area: ['0 mm²', '1 m²'],
  volume: ['0 mL', '200 L'],
  mass: ['0 g', '1000 kg'],
  density: ['0 kg/m³', '25000 kg/m³'],
  force: ['0 N', '1000 kN'],
  torque: ['0 N·m', '1000 N·m'],
  pressure: ['0 kPa', '20 MPa'],
  power: ['0 W', '100 kW'],
  speed: ['0 m/s', '300 m/s'],
  rotation: ['0 rpm', '20000 rpm'],
  frequency: ['0 Hz', '1000 Hz'],
  time: ['0 s', '100 years'],
  angle: ['-720 deg', '720 deg'],
  temperature: ['-60 °C', '400 °C'],
  flow: ['0 L/min', '1000 L/min'],
  'kinematic-viscosity': ['0.2 mm²/s', '100000 mm²/s'],
  'dynamic-viscosity': ['0.1 mPa·s', '100000 mPa·s'],
  voltage: ['0 V', '100 kV'],
  current: ['0 A', '1000 A'],
  resistance: ['0 Ω', '100 MΩ'],
  capacitance: ['0 farad', '1 farad'],
  ratio: ['0 %', '10000 %'],
  number: [-1e6, 1e6],
  count: [0, 1000],
};

/** What a slip of the pen may have meant, the likeliest first. */
const likelyUnits: Readonly<Partial<Record<Kind, readonly string[]>>> = {
  length: ['in', 'mm', 'thou', 'ft', 'm'],
  torque: ['in-lb', 'ft-lb', 'N·m'],
  pressure: ['psi', 'kPa', 'hPa', 'bar', 'inHg'],
  volume: ['cc', 'cu in', 'fl oz', 'L'],
  temperature: ['°C', '°F'],
  speed: ['ft/min', 'm/s'],
};

/** The span of a field: its own, or what is usual of its kind. */
export const spanOf = (kind: Kind | 'number' | 'count', own: Span | undefined): Span => own ?? usual[kind];

/** The quantity itself; QuantityError 'implausible' with the bound in the unit that was written, when it cannot be meant. */
export function quantityWithin<K extends Kind>(kind: K, span: Span): (quantity: Quantity<K>) => Quantity<K> {
  const [low, high] = [parse(String(span[0]), kind), parse(String(span[1]), kind)];
  return (quantity) => requirePlausible(quantity, { low, high, likelyUnits: likelyUnits[kind] ?? [] });
}

/** The number itself; WorksheetError with the bound, when it cannot be meant. */
export function numberWithin(span: Span): (value: number) => number {
  const [least, most] = [Number(span[0]), Number(span[1])];
  return (value) => {
    if (value >= least && value <= most) return value;
    const [side, end, bound] = value > most ? ['above', 'most', most] : ['below', 'least', least];
    throw new WorksheetError(`${value} is ${side} what can be meant here (at ${end} ${bound})`);
  };
}
