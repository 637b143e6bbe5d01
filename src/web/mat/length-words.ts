import { of, to, type UnitSystem } from '../../quantity/index.js';

/** A length from the mat in the reader's unit: to a hundredth of a millimetre or a thousandth of an inch, coarse ones to a tenth or a hundredth. */
export function lengthWords(mm: number, system: UnitSystem, fine: 'fine' | 'coarse' = 'fine'): string {
  const unit = system === 'inch' ? 'in' : 'mm';
  const decimals = (system === 'inch' ? 2 : 1) + (fine === 'fine' ? 1 : 0);
  return `${to(of(mm, 'mm'), unit).toFixed(decimals)} ${unit}`;
}
