import { oldAsk as ask, type OldGiven as Given, oldOptional as optional } from '../../worksheet/index.js';

export const bore = ask('length', 'bore', 'Bore', 'Diameter of the cylinder.', '2.5625 in');
export const stroke = ask(
  'length',
  'stroke',
  'Stroke',
  'Travel of the piston from top to bottom.',
  '2.4375 in',
);
export const rod = optional(
  ask(
    'length',
    'rod',
    'Connecting rod',
    'Center to center. Left empty, 1.75 strokes stands (trade judgement, no source).',
    '108 mm',
  ),
);
export const altitude = ask(
  'length',
  'altitude',
  'Altitude',
  'Above sea level, as a map gives it.',
  '1500 m',
);

/** At a worksheet that takes the altitude as well. */
export const barometer = optional(
  ask(
    'pressure',
    'barometer',
    'Barometer',
    'At the place itself, not reduced to sea level. Left empty, the standard atmosphere at the altitude.',
    '980 hPa',
  ),
);

/** A length field in millimeters, if it is given. */
export const optionalMm = (given: Given, id: string): number | undefined =>
  given.has(id) ? given.in(id, 'mm') : undefined;
