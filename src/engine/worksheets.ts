import { adopt } from '../worksheet/index.js';
import { airSheets } from './worksheets/air-sheets.js';
import { compressionSheets } from './worksheets/compression-sheets.js';
import { firingSheets } from './worksheets/firing-sheets.js';
import { fuelSheets } from './worksheets/fuel-sheets.js';
import { geometrySheets } from './worksheets/geometry-sheets.js';
import { ignitionSheets } from './worksheets/ignition-sheets.js';
import { leakDownSheets } from './worksheets/leak-down-sheets.js';
import { oilSheets } from './worksheets/oil-sheets.js';
import { speedSheets } from './worksheets/speed-sheets.js';

/** The physics of one cylinder, and what it drinks and breathes. */
export const worksheets = adopt([
  ...compressionSheets,
  ...leakDownSheets,
  ...geometrySheets,
  ...firingSheets,
  ...speedSheets,
  ...airSheets,
  ...oilSheets,
  ...fuelSheets,
  ...ignitionSheets,
]);
