import { plugTorque, smallEngine14mm } from '../../src/fasten/spark-plug.js';
import { threads } from '../../src/fasten/threads.js';
import { near, published } from '../support/published.js';

const nmPerFtLb = 1.35581794833;
const named = (name: string) => threads.find((each) => each.name === name)!;

// the chart converts round N·m values with 7.2 for ten: half a percent of slack, and it prints three figures
published("a spark plug maker's fitting chart")('torque from and to, lbf·ft', 'seen', () =>
  (
    [
      ['M18×1.5', 'new gasket', 'iron', 25.3, 32.5],
      ['M18×1.5', 'new gasket', 'aluminum', 25.3, 32.5],
      ['M14×1.25', 'new gasket', 'iron', 18, 25.3],
      ['M14×1.25', 'new gasket', 'aluminum', 18, 21.6],
      ['M12×1.25', 'new gasket', 'iron', 10.8, 18],
      ['M12×1.25', 'new gasket', 'aluminum', 10.8, 14.5],
      ['M10×1', 'new gasket', 'iron', 7.2, 10.8],
      ['M10×1', 'new gasket', 'aluminum', 7.2, 8.7],
      ['M18×1.5', 'conical', 'iron', 14.5, 21.6],
      ['M18×1.5', 'conical', 'aluminum', 14.5, 21.6],
      ['M14×1.25', 'conical', 'iron', 10.8, 18],
      ['M14×1.25', 'conical', 'aluminum', 7.2, 14.5],
    ] as const
  ).flatMap(([thread, seat, head, low, high]) => {
    const found = plugTorque(named(thread), seat, head);
    return [
      near(`${thread}, ${seat}, ${head}, from`, found.lowNm / nmPerFtLb, low, 0.03 * low),
      near(`${thread}, ${seat}, ${head}, to`, found.highNm / nmPerFtLb, high, 0.03 * high),
    ];
  }),
);

const manuals = published('small-engine manuals on the 14 mm plug');
manuals('180 lbf·in is usual, and they range from 95 to 264', 'seen', () => {
  const inLb = (nm: number) => nm / (nmPerFtLb / 12);
  return [
    near('usual', inLb(smallEngine14mm.usualNm), 180, 0.5),
    near('lowest', inLb(smallEngine14mm.lowNm), 95, 0.5),
    near('highest', inLb(smallEngine14mm.highNm), 264, 0.5),
  ];
});

manuals('turns after the seat: new gasket ½, used ⅛ to ¼, conical 1/16', 'seen', () =>
  (
    [
      ['new gasket', 0.5, 0.5],
      ['used gasket', 0.125, 0.25],
      ['conical', 0.0625, 0.0625],
    ] as const
  ).flatMap(([seat, from, to]) => {
    const { low, high } = plugTorque(named('M14×1.25'), seat, 'iron').turns;
    return [near(`${seat}, from`, low, from, 0), near(`${seat}, to`, high, to, 0)];
  }),
);
