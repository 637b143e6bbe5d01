import type { EngineArchitecture } from '../cranking/class-engine.js';

/** What stands for a running engine of the class at full throttle and rated speed. Never this engine's own. */
export interface ClassFiring {
  /** fresh air in the cylinder over what the displacement holds of outside air */
  readonly volumetricEfficiency: number;
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

const everyClass = { residualK: 1000, halfBurnedDeg: 8, releasedPart: 0.9, wallK: 460 } as const;

/** Small air-cooled singles: trade judgement, no source. A flat wide chamber burns slower; a two-stroke keeps a quarter. */
export const classFiring: Readonly<Record<EngineArchitecture, ClassFiring>> = {
  'side-valve': { ...everyClass, volumetricEfficiency: 0.68, heatingK: 25, residualPart: 0.08, burnDeg: 65 },
  'overhead-valve': {
    ...everyClass,
    volumetricEfficiency: 0.75,
    heatingK: 20,
    residualPart: 0.06,
    burnDeg: 55,
  },
  'two-stroke': { ...everyClass, volumetricEfficiency: 0.5, heatingK: 30, residualPart: 0.25, burnDeg: 50 },
};

/** Standard uncertainties of the same (trade judgement, no source); `…Ln` of the logarithm. */
export const firingSpreads = {
  volumetricEfficiencyLn: 0.06,
  heatingK: 10,
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
