import type { ComponentType } from 'react';
import type { Stage } from '../../job/index.js';
import type { SheetProps } from '../frame/sheet.js';
import { later } from '../later.js';

/** Every stage has its sheet. */
export const sheets: Readonly<Record<Stage, ComponentType<SheetProps>>> = {
  intake: later(() => import('./intake/intake.js').then((m) => m.Intake)),
  findings: later(() => import('./findings/findings.js').then((m) => m.Findings)),
  'worth-it': later(() => import('./worth-it.js').then((m) => m.WorthIt)),
  parts: later(() => import('./parts/parts.js').then((m) => m.Parts)),
  teardown: later(() => import('./teardown/teardown.js').then((m) => m.Teardown)),
  measure: later(() => import('./measure/measure.js').then((m) => m.Measure)),
  assembly: later(() => import('./assembly/assembly.js').then((m) => m.Assembly)),
  'run-up': later(() => import('./run-up/run-up.js').then((m) => m.RunUp)),
  'hand-over': later(() => import('./hand-over.js').then((m) => m.HandOver)),
};
