import { inPercent } from '../../phrase/index.js';
import { type Origin, of } from '../../quantity/index.js';
import { amount, ask, type Picture } from '../../worksheet/index.js';
import type { BandShare } from '../band.js';
import type { EngineArchitecture } from '../cranking/class-engine.js';
import type { KnownGeometry } from '../cranking/likely-engine.js';
import type { Weather } from '../moist-air.js';

export const psi = of(1, 'psi').si;

/** An ordinary day at sea level. */
export const shopAir: Weather = { pascal: 101_325, celsius: 20, humidity: 0.5 };

/** What can be meant of the air and of a small engine. */
export const heightSpan = ['-500 m', '9000 m'] as const;
export const airPressureSpan = ['400 hPa', '1100 hPa'] as const;
export const airSpan = ['-45 °C', '60 °C'] as const;
export const ratioSpan = ['2:1', '16:1'] as const;
export const runningSpan = ['100 rpm', '15000 rpm'] as const;
export const gaugeSpan = ['0 kPa', '3000 kPa'] as const;
export const openingSpan = ['50 mm²', '400 cm²'] as const;

export const bore = ask.in('mm', 'Bore', 'Diameter of the cylinder.', {
  hint: '2.5625 in',
  within: ['15 mm', '200 mm'],
});
const aStroke = [
  'Stroke',
  'Travel of the piston from top to bottom.',
  { hint: '2.4375 in', within: ['10 mm', '200 mm'] },
] as const;
export const stroke = ask.in('mm', ...aStroke);
export const strokeAsWritten = ask.quantity('length', ...aStroke);
export const rod = ask.in(
  'mm',
  'Connecting rod',
  'Center to center. Left empty, 1.75 strokes stands (trade judgement, no source).',
  { hint: '108 mm', optional: true, within: ['15 mm', '500 mm'] },
);
export const altitude = ask.in('m', 'Altitude', 'Above sea level, as a map gives it.', {
  hint: '1500 m',
  within: heightSpan,
});

export const humidity = ask.in(
  '1',
  'Humidity',
  'Relative; 50 % stands as an ordinary day (common practice).',
  { standard: '50 %', within: ['0 %', '100 %'] },
);
export const shopAltitude = ask.in('m', 'Altitude', 'Of the shop; sea level stands.', {
  standard: '0 m',
  hint: '500 m',
  within: heightSpan,
});

/** At a worksheet that takes the altitude as well. */
export const barometer = ask.in(
  'Pa',
  'Barometer',
  'At the place itself, not reduced to sea level. Left empty, the standard atmosphere at the altitude.',
  { hint: '980 hPa', optional: true, within: airPressureSpan },
);

/** One of the architectures, in words. */
export const kind = <A extends EngineArchitecture>(allowed: readonly A[], help: string) =>
  ask.choice(
    'Kind of engine',
    help,
    Object.fromEntries(allowed.map((each) => [each, each.replace('-', ' ')])) as Record<A, string>,
  );

export const compressionRatio = (help: string) =>
  ask.in('1', 'Compression ratio', `From the maker’s sheet or the compression-ratio worksheet. ${help}`, {
    hint: '8.3:1',
    optional: true,
    within: ratioSpan,
  });

/** What a person gave of the engine, for the room's functions. */
export const geometryOf = (given: {
  readonly architecture: EngineArchitecture;
  readonly bore: number;
  readonly stroke: number;
  readonly ratio: number | undefined;
  readonly rod: number | undefined;
}): KnownGeometry => ({
  ...{ architecture: given.architecture, boreMm: given.bore, strokeMm: given.stroke },
  ...{ rodMm: given.rod, compressionRatio: given.ratio },
});

/** The five widest shares of a band. */
export const shareWords = (shares: readonly BandShare[]) =>
  shares
    .slice(0, 5)
    .map(
      ({ what, down, up }) =>
        `${what}: −${inPercent(1 - Math.exp(-down), 1)}, +${inPercent(Math.exp(up) - 1, 1)}`,
    );

/** An effective area, printed in mm² whoever reads. */
export const leakAmount = (id: string, label: string, mm2: number, how: Origin, shown?: Picture) =>
  amount(id, label, mm2, 'mm²', how, { keepUnit: true, picture: shown });

/** At most some 120 points of a trace, the last one kept; two steps at one angle would draw a stair. */
export function thinned<T>(points: readonly T[]): readonly T[] {
  const every = Math.ceil(points.length / 120);
  return points.filter((_, i) => i % every === 0 || i === points.length - 1);
}
