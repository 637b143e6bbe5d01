import { generatorHz, rpmAtTipSpeed, tipSpeed, tipSpeedLimit } from '../../src/engine/speeds.js';
import { near, published, same } from '../support/published.js';

const b71 = published('ANSI B71.1, lawn mowers');

b71('19 000 ft/min at the blade tip is 96.52 m/s', 'seen', () => [near('m/s', tipSpeedLimit, 96.52, 5e-10)]);

b71('the speed at which a cut of so many inches reaches it, a public table', 'seen', () =>
  (
    [
      [19, 3820],
      [20, 3629],
      [21, 3456],
      [22, 3299],
      [23, 3155],
      [24, 3024],
    ] as const
  ).map(([inches, rpm]) => near(`${inches} in`, rpmAtTipSpeed(25.4 * inches), rpm, 0.6)),
);

// the page divides by 3.82 where 12/π is 3.8197
b71('21 in at 3100 rpm is 17 042 ft/min, a public page', 'seen', () => [
  near('ft/min', (tipSpeed(533.4, 3100) * 60) / 0.3048, 17_042, 1.5),
]);

published('a generator manual, read second-hand')('two poles, 62 Hz without load: 3720 rpm', 'seen', () => [
  same('Hz', generatorHz(3720, 2), 62),
]);
