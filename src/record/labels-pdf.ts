import type { Job } from '../job/index.js';
import { RecordError } from './error.js';
import { type LabelKind, labelsOf } from './labels.js';
import type { RecordFonts } from './pdf/fonts.js';
import type { Paper } from './pdf/theme.js';
import { requireTime } from './printed-at.js';

/** A roll of labels: one label a page, `length` along the roll. Millimetres. */
export interface Roll {
  readonly width: number;
  readonly length: number;
}

/** Millimetres: below, nothing can be read at arm's length; above, it is a sheet. */
export const rollLimits = { width: [20, 120], length: [20, 200] } as const;

export interface LabelOptions {
  readonly fonts: RecordFonts;
  /** ISO 8601 with offset */
  readonly printedAt: string;
  /** letter when left out */
  readonly paper?: Paper | Roll;
  /** where a phone of the shop reaches the bench: "http://wristpin.local:4747" */
  readonly address?: string | undefined;
}

/**
 * Labels for the bags of a teardown or the parts that wait: ten a sheet, to be cut along the lines, or one after the other
 * on a roll.
 *
 * @throws RecordError for a roll that is none
 */
export async function labelsPdf(job: Job, kind: LabelKind, options: LabelOptions): Promise<Uint8Array> {
  requireTime(options.printedAt);
  const { paper = 'letter' } = options;
  if (typeof paper === 'object') requireRoll(paper);
  const { drawLabels } = await import('./pdf/draw-labels.js');
  const labels = labelsOf(job, kind, options.address);
  return drawLabels(labels, { ...options, paper, kind, tag: job.tag });
}

function requireRoll(roll: Roll): void {
  for (const side of ['width', 'length'] as const) {
    const [least, most] = rollLimits[side];
    const mm = roll[side];
    if (!(mm >= least && mm <= most))
      throw new RecordError(`A label is ${least} to ${most} mm in ${side}; asked for is ${mm}.`);
  }
}
