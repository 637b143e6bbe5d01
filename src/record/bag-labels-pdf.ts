import type { Job } from '../job/index.js';
import { bagLabels } from './bag-labels.js';
import type { RecordFonts } from './pdf/fonts.js';
import type { Paper } from './pdf/theme.js';
import { requireTime } from './printed-at.js';

export interface BagLabelOptions {
  readonly fonts: RecordFonts;
  /** ISO 8601 with offset */
  readonly printedAt: string;
  /** letter when left out */
  readonly paper?: Paper;
}

/** A sheet of labels for the bags of a teardown, ten a page, to be cut along the lines. */
export async function bagLabelsPdf(job: Job, options: BagLabelOptions): Promise<Uint8Array> {
  requireTime(options.printedAt);
  const { drawBagLabels } = await import('./pdf/draw-bag-labels.js');
  return drawBagLabels(bagLabels(job), { ...options, paper: options.paper ?? 'letter', tag: job.tag });
}
