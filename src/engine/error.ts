/** A question about an engine that cannot be answered as put. Names the field, the value and the bound. */
export class EngineError extends Error {
  constructor(
    message: string,
    readonly field: string,
    readonly value?: unknown,
  ) {
    super(message);
    this.name = 'EngineError';
  }
}

export function requireFinite(value: number, field: string): number {
  if (!Number.isFinite(value))
    throw new EngineError(`${field} must be a number; got ${value}.`, field, value);
  return value;
}

export function requirePositive(value: number, field: string): number {
  if (!(requireFinite(value, field) > 0))
    throw new EngineError(`${field} must be above 0; got ${value}.`, field, value);
  return value;
}

export function requireNotNegative(value: number, field: string): number {
  if (requireFinite(value, field) < 0)
    throw new EngineError(`${field} cannot be below 0; got ${value}.`, field, value);
  return value;
}

/** Between two bounds, both allowed. `unit` stands in the message. */
export function requireWithin(value: number, least: number, most: number, field: string, unit = ''): number {
  if (requireFinite(value, field) < least || value > most) {
    const after = unit && ` ${unit}`;
    throw new EngineError(
      `${field} must lie between ${least} and ${most}${after}; got ${Number(value.toPrecision(6))}${after}.`,
      field,
      value,
    );
  }
  return value;
}
