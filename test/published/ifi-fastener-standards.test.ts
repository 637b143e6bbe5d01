import { aluminumCut, intoAluminum, neededDiameters } from '../../src/fasten/aluminum.js';
import { factorsFor } from '../../src/fasten/friction.js';
import { clampRange } from '../../src/fasten/torque.js';
import { near, published, same } from '../support/published.js';

const own = (condition: string) =>
  factorsFor(condition)
    .rows.filter(({ source }) => source.startsWith('IFI'))
    .map(({ k }) => k);

const ifi = published('IFI Fastener Standards, 5th ed., N-12 and N-16');

ifi('K of plain and of plated bolts, and 10 % off the torque for oil', 'seen', () => [
  same('not plated', own('bare-dry'), [0.2]),
  same('plated', own('zinc-dry'), [0.15]),
  near('oiled over plain', own('oiled')[0]! / own('bare-dry')[0]!, 0.9, 5e-13),
]);

ifi('the preload scatters by ±25 %', 'seen', () => [same('of 1000', clampRange(1000), [750, 1250])]);

ifi('into aluminum 30 % off or more, and two diameters of thread; steel and iron 1.25', 'seen', () => [
  same('part taken off', aluminumCut, 0.3),
  same('aluminum, diameters', neededDiameters.aluminum, 2),
  same('iron, diameters', neededDiameters.iron, 1.25),
  same('steel, diameters', neededDiameters.steel, 1.25),
  same('10 N·m, 8 mm', intoAluminum({ steelTorqueNm: 10, majorMm: 8 }), { mostNm: 7, neededMm: 16 }),
]);
