import {
  intoAluminumSheet,
  lubricantCorrection,
  plugTorqueSheet,
  torquePlausible,
} from './worksheets/correction-worksheets.js';
import {
  looseningOrderSheet,
  tighteningOrderSheet,
  tighteningPasses,
} from './worksheets/order-worksheets.js';
import { nameThreadSheet, tapDrillSheet, threadData, threadRepair } from './worksheets/thread-worksheets.js';
import {
  boltStrength,
  clampFromTorque,
  torqueForBoltSheet,
  torqueFromClamp,
  torqueLongForm,
} from './worksheets/torque-worksheets.js';
import { wrenchAdapter, wrenchFit } from './worksheets/wrench-worksheets.js';

/** Every calculation of this room that a person can do alone. */
export const worksheets = [
  torqueForBoltSheet,
  torqueFromClamp,
  clampFromTorque,
  torqueLongForm,
  torquePlausible,
  lubricantCorrection,
  intoAluminumSheet,
  boltStrength,
  plugTorqueSheet,
  wrenchAdapter,
  wrenchFit,
  tighteningOrderSheet,
  tighteningPasses,
  looseningOrderSheet,
  nameThreadSheet,
  threadData,
  tapDrillSheet,
  threadRepair,
];
