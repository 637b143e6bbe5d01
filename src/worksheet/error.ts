/** The bounds that a figure broke, in a unit of the table or none: what refuses a person can say them in their own unit. */
export interface Bounds {
  readonly least?: number;
  readonly most?: number;
  readonly unit: string;
}

/** A question that cannot be answered as put. Names the field, the value and the bound; each room throws its own kind. */
export class Refusal extends Error {
  constructor(
    message: string,
    readonly field?: string,
    readonly value?: unknown,
    readonly bounds?: Bounds,
  ) {
    super(message);
    this.name = new.target.name;
  }
}

/** What a worksheet refuses to a person, named by the field that they filled in. */
export class WorksheetError extends Refusal {}

/** The usual bounds of figures, each refused as the room's own kind of Refusal; a value within them is handed back. */
export function boundsOf(
  Kind: new (message: string, field: string, value: unknown, bounds?: Bounds) => Refusal,
) {
  const finite = (value: number, field: string): number => {
    if (Number.isFinite(value)) return value;
    throw new Kind(`${field} must be a number; got ${value}.`, field, value);
  };
  const positive = (value: number, field: string, unit = ''): number => {
    if (finite(value, field) > 0) return value;
    const after = unit && ` ${unit}`;
    throw new Kind(`${field} must be above 0${after}; got ${value}${after}.`, field, value);
  };
  const notNegative = (value: number, field: string): number => {
    if (finite(value, field) >= 0) return value;
    throw new Kind(`${field} cannot be below 0; got ${value}.`, field, value);
  };
  /** Between two bounds, both allowed. */
  const within = (value: number, least: number, most: number, field: string, unit = ''): number => {
    if (finite(value, field) >= least && value <= most) return value;
    const after = unit && ` ${unit}`;
    const got = Number(value.toPrecision(6));
    const said = `${field} must lie between ${least} and ${most}${after}; got ${got}${after}.`;
    throw new Kind(said, field, value, { least, most, unit });
  };
  return { finite, positive, notNegative, within };
}
