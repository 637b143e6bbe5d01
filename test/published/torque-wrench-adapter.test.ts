import { adapterSetting } from '../../src/fasten/wrench.js';
import { near, published } from '../support/published.js';

const pages = published('public worked examples of torque wrench adapters');

pages('what to set', 'seen', () =>
  (
    [
      // wanted, L, E, setting; one length unit and one torque unit a row
      [70, 12, 2, 60, 0.005],
      [135, 10, 1.5, 117.39, 0.006],
      [135, 10, -1.5, 158.82, 0.006],
      [50, 16, 2, 44.44, 0.006],
      [130, 500, 150, 100, 0.005],
    ] as const
  ).map(([wantedNm, wrenchMm, adapterMm, setting, half]) =>
    near(
      `${wantedNm}, L ${wrenchMm}, E ${adapterMm}`,
      adapterSetting({ wantedNm, wrenchMm, adapterMm }),
      setting,
      half,
    ),
  ),
);

pages('L 500, drawn out to 650 mm: 100 set gives 130 N·m', 'seen', () => [
  near('N·m', adapterSetting({ wantedNm: 130, wrenchMm: 500, adapterMm: 150 }), 100, 5e-10),
]);

pages(
  'an angled adapter lengthens the wrench by E·cos θ; square to the side it changes nothing',
  'seen',
  () => {
    const at = (angleDeg: number) =>
      adapterSetting({ wantedNm: 100, wrenchMm: 400, adapterMm: 100, angleDeg });
    return [
      near('60°', at(60), 88.889, 5e-4),
      near('90°', at(90), 100, 5e-10),
      near('180°', at(180), 133.333, 5e-4),
    ];
  },
);
