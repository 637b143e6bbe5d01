/** A measurement question that cannot be answered as put. Names the field, the value and the bound. */
export class GaugeError extends Error {
  constructor(
    message: string,
    readonly field: string,
    readonly value?: unknown,
  ) {
    super(message);
    this.name = 'GaugeError';
  }
}

export function requireFinite(value: number, field: string): number {
  if (!Number.isFinite(value)) throw new GaugeError(`${field} must be a number; got ${value}.`, field, value);
  return value;
}

export function requirePositive(value: number, field: string): number {
  if (!(requireFinite(value, field) > 0))
    throw new GaugeError(`${field} must be above 0; got ${value}.`, field, value);
  return value;
}

export function requireNotNegative(value: number, field: string): number {
  if (requireFinite(value, field) < 0)
    throw new GaugeError(`${field} cannot be below 0; got ${value}.`, field, value);
  return value;
}

/** The share of cases a decision is to be right in; at one half it decides nothing. */
export function requireConfidence(confidence: number): void {
  if (!(confidence > 0.5 && confidence < 1))
    throw new GaugeError(
      `confidence must lie between 0.5 and 1; got ${confidence}.`,
      'confidence',
      confidence,
    );
}
