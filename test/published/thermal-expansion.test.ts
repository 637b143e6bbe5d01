import { expansions } from '../../src/gauge/thermal.js';
import { near, published } from '../support/published.js';

const book = published('Fundamentals of Materials Science and Engineering, 3rd ed., table B.6');

book('gray iron G3000, aluminum 356.0, bronze C93200, magnesium AZ91D, per million and kelvin', 'seen', () =>
  (
    [
      ['cast iron', 11.4],
      ['aluminum', 21.5],
      ['bronze', 18],
      ['magnesium', 26],
    ] as const
  ).map(([material, perK]) => near(material, expansions[material].perK * 1e6, perK, 5e-7)),
);

book('steel 1040 and 1020, and wrought aluminum 6061, lie inside what is taken', 'seen', () => [
  near('1040', expansions.steel.perK * 1e6, 11.3, expansions.steel.half * 1e6),
  near('1020', expansions.steel.perK * 1e6, 11.7, expansions.steel.half * 1e6),
  near('6061', expansions.aluminum.perK * 1e6, 23.6, expansions.aluminum.half * 1e6 + 1e-6),
]);

published('JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement')(
  'H.1: an end gauge of steel, 11.5 per million and kelvin',
  'seen',
  () => [near('steel', expansions.steel.perK * 1e6, 11.5, 5e-7)],
);
