import { gasOf } from '../../src/engine/firing/gas.js';
import { carbonDioxide, nitrogen, oxygen, type Species, waterVapor } from '../../src/engine/species.js';
import { between, near, published } from '../support/published.js';

const molarGasConstant = 8.314462618;
const cpOf = (species: Species, kelvin: number) =>
  gasOf(species, molarGasConstant).heat(kelvin) + molarGasConstant;

const janaf = published('NIST-JANAF Thermochemical Tables, 4th ed. (1998)');
/** Our polynomials are a fit to such tables. */
const rows = (species: Species, table: readonly (readonly [kelvin: number, cp: number])[]) =>
  table.map(([kelvin, cp]) => near(`${kelvin} K`, cpOf(species, kelvin), cp, 3e-3 * cp));

janaf('heat capacity of nitrogen, J/(mol·K)', 'from memory', () =>
  rows(nitrogen, [
    [298.15, 29.124],
    [500, 29.58],
    [1000, 32.697],
    [1500, 34.852],
    [2000, 35.971],
  ]),
);
janaf('heat capacity of oxygen, J/(mol·K)', 'from memory', () =>
  rows(oxygen, [
    [298.15, 29.376],
    [500, 31.091],
    [1000, 34.87],
    [1500, 36.544],
    [2000, 37.741],
  ]),
);
janaf('heat capacity of carbon dioxide, J/(mol·K)', 'from memory', () =>
  rows(carbonDioxide, [
    [298.15, 37.129],
    [500, 44.627],
    [1000, 54.308],
    [1500, 58.379],
    [2000, 60.35],
  ]),
);
janaf('heat capacity of water vapor, J/(mol·K)', 'from memory', () => [
  ...rows(waterVapor, [
    [298.15, 33.59],
    [500, 35.226],
    [1000, 41.268],
  ]),
  // later work on its spectrum, on which our polynomials rest, puts hot water vapor up to 1.2 % higher (from memory)
  ...between('1500 K', cpOf(waterVapor, 1500), 47.09, 1.012 * 47.09),
  ...between('2000 K', cpOf(waterVapor, 2000), 51.18, 1.012 * 51.18),
]);
