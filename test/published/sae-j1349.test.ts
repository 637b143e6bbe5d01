import { iso1585Factor, saeJ1349Factor } from '../../src/engine/power-correction.js';
import { near, published } from '../support/published.js';

const j1349 = published('SAE J1349 (June 1990), power correction');
j1349('990 mbar and 25 °C are the standard; 850 mbar give about 1.19', 'seen', () => [
  near('990 mbar, 25 °C', saeJ1349Factor(99_000, 25), 1, 0.0005),
  near('850 mbar, 25 °C', saeJ1349Factor(85_000, 25), 1.19, 0.005),
]);
j1349('1.180 (990/p) √((t + 273)/298) − 0.18, worked out apart', 'calculated', () => [
  near('960 mbar, 35 °C', saeJ1349Factor(96_000, 35), 1.0571, 5.1e-4),
  near('1000 mbar, 10 °C', saeJ1349Factor(100_000, 10), 0.9584, 5.1e-4),
]);

const iso1585 = published('ISO 1585 / ISO 3046-1, power correction for spark ignition');
iso1585('99 kPa and 25 °C are the standard', 'from memory', () => [
  near('factor', iso1585Factor(99_000, 25), 1, 5e-13),
]);
iso1585('(99/p)^1.2 · (T/298)^0.6, worked out apart', 'calculated', () => [
  near('96 kPa, 35 °C', iso1585Factor(96_000, 35), 1.0584, 5.1e-4),
]);
