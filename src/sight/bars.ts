import { parse, QuantityError } from '../quantity/index.js';
import type { Scale } from './view.js';

/** The two bars of a print of the mat as somebody measured them. */
export interface MeasuredBars {
  readonly scale: Scale;
  /** ± at 95 % of every length, as a share of it */
  readonly u: number;
}

/** Of the bar across and the bar along, mm. */
export const barLengths = { across: 100, along: 200 } as const;

/** without a ± of its own: what a steel rule or a caliper on printed ink can tell (common practice), mm at 95 % */
const byHand = 0.1;

/**
 * The bars as they were written, “100.1 mm” and “200.0 mm”; a ± that stands with one is its standard uncertainty.
 * @throws QuantityError in words when one is no length, or not within a quarter of what was drawn
 */
export function readBars(across: string, along: string): MeasuredBars {
  const [a, b] = [readBar(across, barLengths.across), readBar(along, barLengths.along)];
  return { scale: { across: a.share, along: b.share }, u: Math.max(a.u, b.u) };
}

function readBar(given: string, drawn: number): { share: number; u: number } {
  const { si, u } = parse(given, 'length');
  const share = (si * 1000) / drawn;
  if (share < 0.75 || share > 1.25)
    throw new QuantityError('implausible', `The bar of ${drawn} mm cannot have come out as “${given}”`, {
      text: given,
    });
  return { share, u: (u === undefined ? byHand : 2000 * u) / drawn };
}
