import { mmPerInch } from '../../src/fasten/thread-form.js';
import { threads } from '../../src/fasten/threads.js';
import {
  insertDrill,
  insertHoleDepthMm,
  insertThreadMm,
  insertThroughMm,
} from '../../src/fasten/wire-insert.js';
import { near, published, same } from '../support/published.js';

const named = (name: string) => threads.find((each) => each.name === name)!;
const b1829 = published('ASME B18.29.1 and B18.29.2M, helical wire inserts');

b1829('M8×1.25 × 12 free running: insert thread 23.5 mm deep', 'seen', () => [
  near('plug tap', insertHoleDepthMm(named('M8×1.25'), 12, 'plug'), 23.5, 5e-10),
]);

b1829('a bottoming tap saves two pitches and its point, the rule', 'seen', () => [
  near('M8×1.25, bottoming', insertHoleDepthMm(named('M8×1.25'), 12, 'bottoming'), 17, 5e-10),
  near('M10×1.5, plug', insertHoleDepthMm(named('M10×1.5'), 15, 'plug'), 24, 5e-10),
]);

b1829(
  '1/4-20 × 1.5 d: insert thread at least 0.430 in deep, the length and one pitch rounded up',
  'seen',
  () => [near('in', insertThroughMm(named('1/4-20'), 1.5 * 6.35) / mmPerInch, 0.43, 0.0055)],
);

b1829('insert threads, minor and major, mm', 'from memory', () =>
  (
    [
      ['M6×1', 6.217, 7.299],
      ['M8×1.25', 8.271, 9.624],
      ['M10×1.5', 10.325, 11.949],
    ] as const
  ).flatMap(([name, minor, major]) => {
    const found = insertThreadMm(named(name));
    return [
      near(`${name} minor`, found.minorMm, minor, 0.0006),
      near(`${name} major`, found.majorMm, major, 0.0006),
    ];
  }),
);

published('tables packed with insert kits')('the drill for the insert thread', 'from memory', () =>
  (
    [
      ['1/4-20', '17/64 in'],
      ['5/16-18', '21/64 in'],
      ['3/8-16', '25/64 in'],
      ['M5×0.8', '5.2 mm'],
      ['M6×1', '6.3 mm'],
      ['M8×1.25', '8.3 mm'],
      ['M10×1.5', '10.4 mm'],
    ] as const
  ).map(([name, drill]) => same(name, insertDrill(named(name))?.name, drill)),
);
