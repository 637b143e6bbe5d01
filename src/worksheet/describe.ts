import type { Worksheet } from './worksheet.js';

/** A worksheet as plain data, for the wire and for forms: everything but `compute`. */
export type WorksheetDescription = Omit<Worksheet, 'compute'>;

/** Plain data that survives JSON unchanged. */
export function describe(worksheet: Worksheet): WorksheetDescription {
  const { compute: _, ...rest } = worksheet;
  return rest;
}
