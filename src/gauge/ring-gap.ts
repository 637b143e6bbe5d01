import { GaugeError, requireFinite, requireNotNegative, requirePositive } from './error.js';
import { expansions, type Material, referenceC } from './thermal.js';

/**
 * The end gap of one ring at another place of the bore: a ring's gap opens by π for each unit of diameter.
 *
 * Source: geometry of a closed circle (the ring keeps its length). Validity: the ring stands square and touches all
 * around. Example: gap 0.010 in a bore of 2.5625; in 2.5655 → 0.0194.
 */
export function gapInBore(gap: number, fromBore: number, toBore: number): number {
  requireNotNegative(gap, 'gap');
  const there = gap + Math.PI * (requirePositive(toBore, 'toBore') - requirePositive(fromBore, 'fromBore'));
  if (there < 0)
    throw new GaugeError(
      `The ring ends would meet and overlap by ${-there} in a bore of ${toBore}.`,
      'toBore',
      toBore,
    );
  return there;
}

/**
 * How much wider a bore is where a ring's gap is larger: gap difference/π. A taper measured with feelers alone.
 *
 * Source: as `gapInBore`. `u` is the standard uncertainty of one gap; the result's is √2·u/π, so feelers good to
 * 0.001 in see a taper of 0.0005 in. Example: gaps 0.019 and 0.010 → 0.00286 wider.
 */
export function growthFromGaps(gap: number, unwornGap: number, u: number): { growth: number; u: number } {
  requireNotNegative(gap, 'gap');
  requireNotNegative(unwornGap, 'unwornGap');
  return { growth: (gap - unwornGap) / Math.PI, u: (Math.SQRT2 * requireNotNegative(u, 'u')) / Math.PI };
}

export interface HotRing {
  readonly bore: number;
  readonly boreMaterial: Material;
  readonly boreC: number;
  readonly ringMaterial: Material;
  readonly ringC: number;
}

/**
 * How much an end gap closes when ring and bore come to running temperature.
 *
 * Source: linear expansion along the ring's length π·bore; coefficients as in `expansions`. A gap smaller than this
 * lets the ends butt and the ring break. Validity: see `hotClearance`.
 * Example: bore 65.09 mm of iron at 150 °C, iron ring at 200 °C → 0.117 mm.
 */
export function gapClosing({ bore, boreMaterial, boreC, ringMaterial, ringC }: HotRing): number {
  const ring = expansions[ringMaterial].perK * (requireFinite(ringC, 'ringC') - referenceC);
  const wall = expansions[boreMaterial].perK * (requireFinite(boreC, 'boreC') - referenceC);
  return Math.PI * requirePositive(bore, 'bore') * (ring - wall);
}

/**
 * The gap range a public handbook gives for a cast-iron ring: at least 0.0035, at most 0.008 for each unit of bore.
 * Typical of the class, not this engine's. (The handbook's own table disagrees with its rule by a seventh.)
 * Example: bore 2.5625 in → 0.0090 to 0.0205 in.
 */
export function classRingGap(bore: number): { least: number; most: number } {
  requirePositive(bore, 'bore');
  return { least: 0.0035 * bore, most: 0.008 * bore };
}
