import type { ComponentType } from 'react';
import type { Stage } from '../../job/index.js';
import type { SheetProps } from '../frame/sheet.js';
import { Assembly } from './assembly/assembly.js';
import { Findings } from './findings/findings.js';
import { HandOver } from './hand-over.js';
import { Intake } from './intake/intake.js';
import { Measure } from './measure/measure.js';
import { Parts } from './parts/parts.js';
import { RunUp } from './run-up/run-up.js';
import { Teardown } from './teardown/teardown.js';
import { WorthIt } from './worth-it.js';

/** Every stage has its sheet. */
export const sheets: Readonly<Record<Stage, ComponentType<SheetProps>>> = {
  intake: Intake,
  findings: Findings,
  'worth-it': WorthIt,
  parts: Parts,
  teardown: Teardown,
  measure: Measure,
  assembly: Assembly,
  'run-up': RunUp,
  'hand-over': HandOver,
};
