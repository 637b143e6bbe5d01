import { listed } from '../phrase/index.js';
import type { Kind } from './quantity.js';

/** How a quantity of each kind is written at the bench; each must parse. */
export const examples: Readonly<Record<Kind, readonly string[]>> = {
  length: ['0.030 in', '3/64 in', '0.76 mm'],
  area: ['2.5 cm²', '0.4 in²'],
  volume: ['20 fl oz', '3/4 qt', '600 mL'],
  mass: ['12 oz', '340 g'],
  density: ['0.75 g/cm³', '750 kg/m³'],
  force: ['2000 lbf', '8.9 kN'],
  torque: ['140 in-lb', '15 ft-lb', '20.3 N·m'],
  pressure: ['60 psi', '4.1 bar', '4 inH2O', '13 inHg'],
  power: ['3.5 hp', '2.6 kW'],
  speed: ['1200 ft/min', '6.1 m/s'],
  rotation: ['3600 rpm'],
  frequency: ['60 Hz'],
  time: ['25 h', '15 min', '8 months'],
  angle: ['12°', '1-1/2 turns'],
  temperature: ['20 °C', '68 °F'],
  flow: ['150 mL/min', '0.4 gal/h'],
  'kinematic-viscosity': ['100 mm²/s', '100 cSt'],
  'dynamic-viscosity': ['80 mPa·s', '80 cP'],
  voltage: ['12.6 V', '15 kV'],
  current: ['8.3 A', '120 mA'],
  resistance: ['5 kΩ', '0.8 ohm'],
  capacitance: ['0.2 µF'],
  ratio: ['46 %', '50:1', '0.46'],
};

/** "torque is written like 140 in-lb, 15 ft-lb or 20.3 N·m"; without a kind, a few of each. */
export function spellingHint(kind: Kind | undefined): string {
  if (!kind)
    return `write it like ${listed(['140 in-lb', '0.030 in', '60 psi', '20 fl oz', '3600 rpm'], 'or')}`;
  return `${kind} is written like ${listed(examples[kind], 'or')}`;
}
