import { boreMapSheet, boreOversize } from './worksheets/bore-sheets.js';
import {
  crankpinClearance,
  guideClearance,
  guideWobble,
  journalWear,
  pistonClearance,
} from './worksheets/clearance-sheets.js';
import { decideLimit, settleReading } from './worksheets/decide-sheets.js';
import { endPlayGasket } from './worksheets/end-play-sheet.js';
import {
  flatnessSheet,
  flatnessStraightedge,
  flatnessSurvey,
  roundnessSheet,
} from './worksheets/face-sheets.js';
import { boreGrowthFromGaps, ringEndGap } from './worksheets/ring-sheets.js';
import { runningClearance, thermalLength } from './worksheets/thermal-sheets.js';
import { pooledReadings, uncertaintyBudget } from './worksheets/uncertainty-sheets.js';
import {
  valveClearanceOverhead,
  valveClearanceRecheck,
  valveClearanceSideValve,
} from './worksheets/valve-sheets.js';

/** Everything that is measured on the bench, and what the reading means. */
export const worksheets = [
  boreMapSheet,
  boreOversize,
  boreGrowthFromGaps,
  ringEndGap,
  pistonClearance,
  crankpinClearance,
  journalWear,
  roundnessSheet,
  guideClearance,
  guideWobble,
  flatnessSheet,
  flatnessStraightedge,
  flatnessSurvey,
  valveClearanceSideValve,
  valveClearanceRecheck,
  valveClearanceOverhead,
  endPlayGasket,
  runningClearance,
  decideLimit,
  settleReading,
  pooledReadings,
  uncertaintyBudget,
  thermalLength,
];
