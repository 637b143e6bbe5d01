import type { Worksheet } from '../worksheet/index.js';
import { bladeBalance } from './worksheets/balance-sheet.js';
import { beltSheets } from './worksheets/belt-sheets.js';
import { chainSheets } from './worksheets/chain-sheets.js';
import { knifeSheets } from './worksheets/knife-sheets.js';
import { loadSheets } from './worksheets/load-sheets.js';
import { pressureSheets } from './worksheets/pressure-sheets.js';
import { pumpSheets } from './worksheets/pump-sheets.js';
import { beltSlipSheet } from './worksheets/slip-sheet.js';
import { bladeStop } from './worksheets/stop-sheet.js';

/** What the engine drives: blades, belts, chains, knives, alternators, pumps and rams, as the desk shows them. */
export const worksheets: readonly Worksheet[] = [
  ...[bladeBalance, bladeStop],
  ...knifeSheets,
  ...beltSheets,
  beltSlipSheet,
  ...chainSheets,
  ...loadSheets,
  ...pumpSheets,
  ...pressureSheets,
];
