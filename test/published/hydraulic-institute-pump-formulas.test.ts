import { pipeSpeed } from '../../src/driven/pipe.js';
import { suctionHead, waterPower } from '../../src/driven/pump.js';
import { near, published } from '../support/published.js';

const gallonPerMinute = 3.785411784e-3 / 60;
const institute = published('Hydraulic Institute, pump formulas');

// 3960 is a rounded figure of water at 62 °F
institute('water horsepower: gal/min·ft/3960', 'from memory', () =>
  (
    [
      [100, 100],
      [50, 80],
      [150, 40],
    ] as const
  ).map(([gpm, feet]) => {
    const hp = waterPower(gpm * gallonPerMinute, feet * 0.3048, 998.9) / 745.699872;
    return near(`${gpm} gal/min over ${feet} ft`, hp, (gpm * feet) / 3960, 1e-3 * hp);
  }),
);

institute('speed in a pipe: 0.4085·gal/min/in²', 'from memory', () =>
  (
    [
      [10, 0.5, 16.34],
      [50, 1.5, 9.078],
      [100, 2, 10.21],
    ] as const
  ).map(([gpm, inches, fps]) =>
    near(`${gpm} in ${inches} in`, pipeSpeed(gpm * gallonPerMinute, inches * 0.0254) / 0.3048, fps, 6e-3),
  ),
);

published('Cameron Hydraulic Data, suction head')(
  'one atmosphere carries 33.9 ft of cold water',
  'from memory',
  () => [
    near(
      'ft',
      suctionHead({ airPressure: 101_325, boiling: 0, density: 999.97, liftM: 0, lossM: 0 }) / 0.3048,
      33.9,
      0.05,
    ),
  ],
);
