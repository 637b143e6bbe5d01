import type { Shop } from '../../job/index.js';
import { QuantityError } from '../../quantity/index.js';
import { type MeasuredBars, readBars } from '../../sight/index.js';

/** The bars of the shop's print as they were last measured; undefined where nobody did, or what was written is none. */
export function barsOf({ settings }: Shop): MeasuredBars | undefined {
  const { 'mat-bar-100': across, 'mat-bar-200': along } = settings;
  if (!across || !along) return undefined;
  try {
    return readBars(across, along);
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}
