/**
 * A value with its unit, its uncertainty where it was measured, and its origin.
 *
 * `si` is the value in the kind's SI unit (length m, torque N·m, pressure Pa, rotation rad/s, angle rad,
 * temperature K, time s, volume m³, ratio 1 …); `unit` is the unit the person wrote or chose; `written` is what
 * they wrote, word for word; `u` is the standard uncertainty in the SI unit.
 */
export interface Quantity<K extends Kind = Kind> {
  readonly kind: K;
  readonly si: number;
  readonly unit: string;
  readonly written?: string;
  readonly u?: number;
  readonly origin?: Origin;
}

export const kinds = [
  'length',
  'area',
  'volume',
  'mass',
  'density',
  'force',
  'torque',
  'pressure',
  'power',
  'speed',
  'rotation',
  'frequency',
  'time',
  'angle',
  'temperature',
  'flow',
  'kinematic-viscosity',
  'dynamic-viscosity',
  'voltage',
  'current',
  'resistance',
  'capacitance',
  'ratio',
] as const;
export type Kind = (typeof kinds)[number];

/** Where a number comes from. A number without an origin does not exist here. */
export const originKinds = [
  'plate',
  "maker's sheet",
  'standard',
  'measured',
  'rule of thumb',
  "shop's own",
  'owner',
  'computed',
  'invented',
] as const;
export type OriginKind = (typeof originKinds)[number];
export interface Origin {
  readonly from: OriginKind;
  /** page, standard and clause, instrument, person: whatever lets a colleague look it up */
  readonly detail?: string;
}

/** The two systems a reader may ask for. */
export type UnitSystem = 'inch' | 'metric';
