import type { Kind, UnitSystem } from './quantity.js';

/** A unit of measure: `si = value·factor + offset`. */
export interface Unit {
  /** how it is printed, and how code names it: "in-lb", "N·m", "mm" */
  readonly id: string;
  readonly kind: Kind;
  /** how many SI units make one of this */
  readonly factor: number;
  /** the SI value at zero on this scale (temperatures; 0 for every other kind) */
  readonly offset: number;
  /** whose unit it is; "both" where the two systems share it (rpm, s, V) */
  readonly system: UnitSystem | 'both';
  /** what people write, beside the id */
  readonly spellings: readonly string[];
  /** read so only when a quantity of this kind is wanted: "oz" is fluid where a volume is wanted */
  readonly whenWanted: readonly string[];
  /** at the bench read in whole numbers, so that "3,600" can only mean thousands */
  readonly whole: boolean;
  /** which definition, where several circulate */
  readonly note?: string;
}
