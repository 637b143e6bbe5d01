import { parse, QuantityError } from '../../quantity/index.js';

/** A length measured elsewhere, millimetres; `u` is its standard uncertainty. */
export interface Thickness {
  readonly mm: number;
  readonly u: number;
}

/** a caliper by hand reads to about 0.05 mm (common practice), and a gasket gives under it; standard uncertainty */
const byHand = 0.03;
const most = 60;

/**
 * As it was written, “1.2 mm ± 0.05” or “0.047 in”.
 * @throws QuantityError in words when it is no length or nothing that can lie on the mat
 */
export function readThickness(given: string): Thickness {
  const { si, u } = parse(given, 'length');
  const mm = si * 1000;
  if (mm < 0 || mm > most)
    throw new QuantityError('implausible', `A part on the mat is 0 to ${most} mm thick, not “${given}”`, {
      text: given,
    });
  return { mm, u: u === undefined ? byHand : u * 1000 };
}
