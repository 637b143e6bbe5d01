import { GaugeError, requireFinite, requireNotNegative } from './error.js';

export const materials = ['steel', 'cast iron', 'aluminum', 'bronze', 'magnesium'] as const;
export type Material = (typeof materials)[number];

export interface Expansion {
  /** linear expansion near room temperature, 1/K */
  readonly perK: number;
  /** half-width of what an unknown alloy of the family may be, 1/K */
  readonly half: number;
  readonly source: string;
}

const table = 'Fundamentals of Materials Science and Engineering, 3rd ed., table B.6';
const doubt = 'half-width: trade judgement, no source';

/** Expansion of engine materials, and how far an unmarked casting may stray from it. */
export const expansions: Readonly<Record<Material, Expansion>> = {
  steel: { perK: 11.5e-6, half: 1e-6, source: `between 1040 (11.3) and 1020 (11.7): ${table}; ${doubt}` },
  'cast iron': { perK: 11.4e-6, half: 1e-6, source: `gray iron: ${table}; ${doubt}` },
  aluminum: {
    perK: 21.5e-6,
    half: 2.1e-6,
    source: `casting alloy 356.0 (wrought 6061 has 23.6): ${table}; ${doubt}`,
  },
  bronze: { perK: 18e-6, half: 1e-6, source: `bearing bronze C93200: ${table}; ${doubt}` },
  magnesium: { perK: 26e-6, half: 1e-6, source: `alloy AZ91D: ${table}; ${doubt}` },
};

/** Sizes on drawings hold at this temperature. Source: ISO 1:2016. */
export const referenceC = 20;

export interface ThermalReading {
  readonly read: number;
  readonly part: Material;
  readonly partC: number;
  /** what the scale or micrometer frame is made of; steel when left out */
  readonly tool?: Material | undefined;
  /** as the part when left out */
  readonly toolC?: number | undefined;
  /** how far each temperature may be off, ± K; 1 when left out */
  readonly doubtK?: number | undefined;
}

export interface ThermalCorrection {
  /** the size at 20 °C */
  readonly size: number;
  /** size less reading */
  readonly correction: number;
  /** standard uncertainty of the correction */
  readonly u: number;
}

/**
 * A length read at shop temperature, brought to 20 °C.
 *
 * Source: JCGM 100:2008, H.1.2: l·(1 + α·θ) of part and tool agree at the temperatures they have.
 * Method: size = read·(1 + αt·(tt − 20))/(1 + αp·(tp − 20)); first-order uncertainty from the rectangular doubts of
 * both coefficients and of both temperatures.
 * Validity: −20 … 60 °C, where the coefficients hold; refused outside.
 * Special cases: part and tool of one material at one temperature need no correction.
 * Example: an aluminum piston 65.000 mm read at 30 °C with a steel micrometer at 30 °C is 64.9935 mm at 20 °C.
 */
export function atReference(given: ThermalReading): ThermalCorrection {
  const { read, part, tool = 'steel', doubtK = 1 } = given;
  const partC = requireShop(given.partC, 'partC');
  const toolC = requireShop(given.toolC ?? given.partC, 'toolC');
  requireNotNegative(doubtK, 'doubtK');
  const p = expansions[part];
  const t = expansions[tool];
  const size =
    (requireFinite(read, 'read') * (1 + t.perK * (toolC - referenceC))) / (1 + p.perK * (partC - referenceC));
  const sameAlloy = part === tool ? 0 : 1;
  const halves = [
    sameAlloy * p.half * (partC - referenceC),
    sameAlloy * t.half * (toolC - referenceC),
    p.perK * doubtK,
    t.perK * doubtK,
  ];
  return { size, correction: size - read, u: (Math.abs(read) * Math.hypot(...halves)) / Math.sqrt(3) };
}

function requireShop(celsius: number, field: string): number {
  if (!(requireFinite(celsius, field) >= -20 && celsius <= 60))
    throw new GaugeError(`${field} must lie from −20 to 60 °C; got ${celsius}.`, field, celsius);
  return celsius;
}

export interface Mating {
  readonly size: number;
  readonly material: Material;
  /** running temperature */
  readonly hotC: number;
}

/**
 * The clearance of a hot pair from sizes at 20 °C (hole less shaft).
 *
 * Source: linear expansion; coefficients as in `expansions`. Validity: the coefficients are means near room
 * temperature; at 250 °C aluminum expands about 10 % more than they say (trade judgement, no source), inside the
 * uncertainty only in part. Neither piston ovality nor uneven bore heating is in it.
 * Example: iron bore 65.00 mm at 150 °C, aluminum piston 64.93 mm at 200 °C → clearance −0.085 mm: seizes.
 */
export function hotClearance(hole: Mating, shaft: Mating): { clearance: number; u: number } {
  const grown = ({ size, material, hotC }: Mating) =>
    size * (1 + expansions[material].perK * (hotC - referenceC));
  const half = ({ size, material, hotC }: Mating) => size * expansions[material].half * (hotC - referenceC);
  for (const { size, hotC } of [hole, shaft]) requireFinite(size + hotC, 'size and temperature');
  return { clearance: grown(hole) - grown(shaft), u: Math.hypot(half(hole), half(shaft)) / Math.sqrt(3) };
}
