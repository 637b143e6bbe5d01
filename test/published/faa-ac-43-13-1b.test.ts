import { faaOrificeMm, faaSupplyPa, leakPercent } from '../../src/engine/leak-down.js';
import { near, published } from '../support/published.js';

const circular = published('FAA AC 43.13-1B, 8-14 (change 1, 2001)');
circular('orifice 0.040 in for a bore under 5.00 in, 0.060 in from there on; 80 psi', 'seen', () => [
  near('in, under 5', faaOrificeMm.under5In / 25.4, 0.04, 5e-13),
  near('in, from 5', faaOrificeMm.from5In / 25.4, 0.06, 5e-13),
  near('psi', faaSupplyPa / 6894.757293168361, 80, 5e-10),
]);

published('the customary floor of aviation')('60 of 80 psi is 25 % lost', 'from memory', () => [
  near('%', leakPercent({ supplyPa: faaSupplyPa }, 0.75 * faaSupplyPa), 25, 5e-10),
]);
