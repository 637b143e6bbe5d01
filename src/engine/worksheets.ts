import type { Worksheet } from '../worksheet/index.js';
import { airSheets } from './worksheets/air-sheets.js';
import { compressionSheets } from './worksheets/compression-sheets.js';
import { firingLoad } from './worksheets/firing-load-sheet.js';
import { fuelSheets } from './worksheets/fuel-sheets.js';
import { geometrySheets } from './worksheets/geometry-sheets.js';
import { ignitionSheets } from './worksheets/ignition-sheets.js';
import { leakDownSheets } from './worksheets/leak-down-sheets.js';
import { oilSheets } from './worksheets/oil-sheets.js';
import { expectedPowerSheet } from './worksheets/power-sheet.js';
import { ratioChange } from './worksheets/ratio-change-sheet.js';
import { speedSheets } from './worksheets/speed-sheets.js';

/** The physics of one cylinder, and what it drinks and breathes; each group in the order in which the desk shows it. */
export const worksheets: readonly Worksheet[] = [
  ...compressionSheets,
  ...leakDownSheets,
  ...geometrySheets,
  ...[expectedPowerSheet, firingLoad, ratioChange],
  ...speedSheets,
  ...ignitionSheets,
  ...fuelSheets,
  ...airSheets,
  ...oilSheets,
];
