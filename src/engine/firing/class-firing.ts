import type { EngineArchitecture } from '../cranking/class-engine.js';

/** What stands for a running engine of the class at full throttle and rated speed. Never this engine's own. */
export interface ClassFiring {
  /** fresh air in the cylinder over what the displacement holds of outside air */
  readonly volumetricEfficiency: number;
  /** standard uncertainty of its logarithm: a two-stroke's hangs on its exhaust */
  readonly fillingLn: number;
  /** what the way in adds to the air's temperature, K */
  readonly heatingK: number;
  /** burned gas left, by mass, and its temperature */
  readonly residualPart: number;
  readonly residualK: number;
  /** degrees from the first to 99.3 % burned */
  readonly burnDeg: number;
  /** degrees after top at which half has burned; 8 is about the best spark (ICEF 1988, §9.3, from memory) */
  readonly halfBurnedDeg: number;
  /** of the fuel's heat that is released: small engines run rich, and hot gas comes apart */
  readonly releasedPart: number;
  readonly wallK: number;
}

const everyClass = { halfBurnedDeg: 8, releasedPart: 0.9, wallK: 460 } as const;
const fourStroke = { ...everyClass, residualK: 1000, fillingLn: 0.06 } as const;

/**
 * Small air-cooled singles: trade judgement, no source. A flat wide chamber burns slower. A two-stroke keeps a quarter of
 * what it burned, cooler because it has blown down and been stirred into the fresh charge, and traps two fifths of its
 * stroke's air: closed at about the outside's pressure it could not hold much more.
 */
export const classFiring: Readonly<Record<EngineArchitecture, ClassFiring>> = {
  'side-valve': { ...fourStroke, volumetricEfficiency: 0.68, heatingK: 25, residualPart: 0.08, burnDeg: 65 },
  'overhead-valve': {
    ...{ ...fourStroke, volumetricEfficiency: 0.75 },
    ...{ heatingK: 20, residualPart: 0.06, burnDeg: 55 },
  },
  'two-stroke': {
    ...{ ...everyClass, residualK: 800, volumetricEfficiency: 0.4, fillingLn: 0.15 },
    ...{ heatingK: 30, residualPart: 0.25, burnDeg: 50 },
  },
};

/** Standard uncertainties of the same (trade judgement, no source); `…Ln` of the logarithm. */
export const firingSpreads = {
  heatingK: 10,
  /** of the odds, burned to fresh */
  residualLn: 0.3,
  burnLn: 0.12,
  halfBurnedDeg: 3,
  releasedPart: 0.03,
  heatLn: 0.3,
  /** a factor of 1.6 at k = 2 */
  frictionLn: 0.235,
  /** peak pressure differs from cycle to cycle by a tenth (ICEF 1988, §9.4, from memory) */
  cycleLn: 0.1,
  modelLn: 0.04,
} as const;
