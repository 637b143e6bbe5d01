import type { OldWorksheet as Worksheet } from '../../worksheet/index.js';
import { firingLoad } from './firing-load-sheet.js';
import { expectedPowerSheet } from './power-sheet.js';
import { ratioChange } from './ratio-change-sheet.js';

/** What the firing stroke gives: power, push on the head, and what another ratio does to both. */
export const firingSheets: readonly Worksheet[] = [expectedPowerSheet, firingLoad, ratioChange];
