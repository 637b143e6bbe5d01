import { openBelt, staticTension, tensionFromDeflection } from '../../src/driven/belt.js';
import { near, published } from '../support/published.js';

published('Mechanical Engineering Design, 9th ed., chapter 17')(
  'example 17-4: initial tension of each of three belts for 12 hp at 3390 ft/min, lbf',
  'from memory, recomputed',
  () => {
    const { wrapDegrees } = openBelt({ oneMm: 7.4 * 25.4, otherMm: 11 * 25.4, centersMm: 42.4 * 25.4 });
    const newtons = staticTension({
      powerW: 12 * 745.699872,
      beltMetersPerSecond: (3390 * 0.3048) / 60,
      wrapDegrees,
      belts: 3,
      massPerMeterKg: 0, // the book's initial tension leaves the centrifugal part out
    });
    return [near('lbf', newtons / 4.4482216, 29.75, 0.2)];
  },
);

published('belt makers’ deflection rule')(
  'a sixty-fourth of the span: tension is sixteen times the force',
  'common practice',
  () =>
    [300, 500, 800].map((span) => near(`${span} mm`, tensionFromDeflection(10, span, span / 64), 160, 1e-9)),
);
