import { positive } from './error.js';

export const tappedMetals = ['aluminum', 'iron', 'steel'] as const;
export type TappedMetal = (typeof tappedMetals)[number];

/** Diameters of thread engagement for full bolt strength: aluminum 2, iron and steel 1.25. Source: IFI Fastener Standards, 5th ed. */
export const neededDiameters: Readonly<Record<TappedMetal, number>> = {
  aluminum: 2,
  iron: 1.25,
  steel: 1.25,
};

/** The torque for steel is cut by this part, or more, into aluminum. Source: IFI Fastener Standards, 5th ed., N-12 and N-16. */
export const aluminumCut = 0.3;

export interface IntoAluminum {
  /** not more than this */
  readonly mostNm: number;
  readonly neededMm: number;
  /** undefined when the engagement was not measured */
  readonly engagedEnough?: boolean;
  /** engaged length in diameters */
  readonly engagedDiameters?: number;
}

/** Thread engagement that a metal needs, mm. Example: 5/16-18 into aluminum needs 15.9 mm. */
export function neededEngagementMm(majorMm: number, metal: TappedMetal): number {
  return neededDiameters[metal] * positive(majorMm, 'thread', 'mm');
}

/**
 * Torque for a bolt into aluminum from the torque of the same bolt into steel: less 30 % or more, and at least two
 * diameters of engagement.
 *
 * Source: IFI Fastener Standards, 5th ed., N-12 and N-16. An upper bound, not a target: the engine's own figure goes
 * first, and with less than two diameters the rule gives no figure at all for full strength.
 * Example: 5/16-18 at 209 in-lb into steel gives not more than 146 in-lb into aluminum.
 */
export function intoAluminum({
  steelTorqueNm,
  majorMm,
  engagementMm,
}: {
  steelTorqueNm: number;
  majorMm: number;
  engagementMm?: number | undefined;
}): IntoAluminum {
  positive(steelTorqueNm, 'torque', 'N·m');
  const neededMm = neededEngagementMm(majorMm, 'aluminum');
  const mostNm = steelTorqueNm * (1 - aluminumCut);
  if (engagementMm === undefined) return { mostNm, neededMm };
  positive(engagementMm, 'engagement', 'mm');
  return {
    mostNm,
    neededMm,
    engagedEnough: engagementMm >= neededMm - 1e-9,
    engagedDiameters: engagementMm / majorMm,
  };
}
