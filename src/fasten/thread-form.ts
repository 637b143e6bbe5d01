import type { ThreadName } from '../quantity/index.js';

/** What the 60° form needs to know of a thread; every ThreadName is one. */
export type ThreadForm = Pick<ThreadName, 'system' | 'majorMm' | 'pitchMm'>;

export const mmPerInch = 25.4;

/** Height of the sharp 60° triangle, H = (√3/2)·P. All the thread constants below are multiples of it. */
const sharpHeight = Math.sqrt(3) / 2;

/**
 * Basic pitch diameter, mm: d2 = d − 0.649519·P.
 *
 * Source: ASME B1.1 (E) and ISO 724 (d2). Exact for the basic form; a real thread lies within its tolerance below.
 * Example: 1/4-20 gives 0.2175 in, M8×1.25 gives 7.188 mm.
 */
export function pitchDiameterMm({ majorMm, pitchMm }: ThreadForm): number {
  return majorMm - 0.75 * sharpHeight * pitchMm;
}

/**
 * Basic minor diameter of the internal thread, mm: D1 = d − 1.082532·P.
 *
 * Source: ASME B1.1 and ISO 724. Example: 1/4-20 gives 0.1959 in, M8×1.25 gives 6.647 mm.
 */
export function minorInternalMm({ majorMm, pitchMm }: ThreadForm): number {
  return majorMm - 1.25 * sharpHeight * pitchMm;
}

/**
 * Three figures are printed as "the minor diameter of the bolt". They differ by up to 0.11·P, so each is asked for by name.
 *
 * - `unr`: d − 1.190785·P, the rounded-root Unified form of ASME B1.1-2003
 * - `older`: d − 1.226869·P, Unified sheets before it; the same multiple as the metric d3 of ISO 898-1
 * - `iso-d3`: d − 1.226869·P
 * - `sharp-root`: d − 1.299038·P, the root diameter dr of Mechanical Engineering Design, 9th ed., Table 8-1/8-2
 */
export const externalMinors = ['unr', 'older', 'iso-d3', 'sharp-root'] as const;
export type ExternalMinor = (typeof externalMinors)[number];

const externalMinorHeights: Readonly<Record<ExternalMinor, number>> = {
  unr: 11 / 8,
  older: 17 / 12,
  'iso-d3': 17 / 12,
  'sharp-root': 3 / 2,
};

/** Minor diameter of the bolt, mm, by the named convention. Example: 1/4-20, `older`, gives 0.1887 in. */
export function minorExternalMm({ majorMm, pitchMm }: ThreadForm, which: ExternalMinor): number {
  return majorMm - externalMinorHeights[which] * sharpHeight * pitchMm;
}

/**
 * Tensile stress area, mm²: the area of a plain rod as strong as the threaded bolt.
 *
 * Inch: At = (π/4)(d − 0.9743/n)², ASME B1.1. Metric: As = (π/4)((d2 + d3)/2)² = (π/4)(d − 0.938194·P)², ISO 898-1.
 * The two rules differ by design: the metric one would give 1.6 % more on 5/16-18. Tables round to three figures.
 * Example: 1/4-20 gives 0.0318 in² (20.5 mm²), M8×1.25 gives 36.6 mm².
 */
export function stressAreaMm2(form: ThreadForm): number {
  const equivalentMm =
    form.system === 'inch'
      ? form.majorMm - 0.9743 * form.pitchMm
      : (pitchDiameterMm(form) + minorExternalMm(form, 'iso-d3')) / 2;
  return (Math.PI / 4) * equivalentMm ** 2;
}
