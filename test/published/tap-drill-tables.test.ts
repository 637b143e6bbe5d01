import { tapDrill, tapHoleMm } from '../../src/fasten/tap-drill.js';
import { mmPerInch } from '../../src/fasten/thread-form.js';
import { threads } from '../../src/fasten/threads.js';
import { near, published, same } from '../support/published.js';

const named = (name: string) => {
  const thread = threads.find((each) => each.name === name);
  if (!thread) throw new Error(`${name} is not listed`);
  return thread;
};

const shop = published("the trade's tap drill tables, about 75 % of thread");

/** Thread and drill as the tables print them. */
const unc = {
  ...{ '#4-40': '#43', '#5-40': '#38', '#6-32': '#36', '#8-32': '#29', '#10-24': '#25', '#12-24': '#16' },
  ...{ '1/4-20': '#7', '5/16-18': 'F', '3/8-16': '5/16 in', '7/16-14': 'U', '1/2-13': '27/64 in' },
};
const unf = {
  ...{ '#4-48': '#42', '#5-44': '#37', '#6-40': '#33', '#8-36': '#29', '#10-32': '#21', '#12-28': '#14' },
  ...{ '1/4-28': '#3', '5/16-24': 'I', '3/8-24': 'Q', '7/16-20': '25/64 in', '1/2-20': '29/64 in' },
};
const drills = (table: Readonly<Record<string, string>>) =>
  Object.entries(table).flatMap(([name, drill]) => [
    same(`${name} as listed`, named(name).usualDrill, drill),
    same(`${name} by the rule`, tapDrill(named(name)).inch.drill.name, drill),
  ]);
shop('coarse inch threads', 'from memory', () => drills(unc));
shop('fine inch threads', 'from memory', () => drills(unf));

/** The metric tables take d − P, which is 77 %, so the rule may land one step higher. */
const metric = {
  ...{ 'M3×0.5': 2.5, 'M3.5×0.6': 2.9, 'M4×0.7': 3.3, 'M5×0.8': 4.2, 'M6×1': 5, 'M7×1': 6, 'M8×1.25': 6.8 },
  ...{
    'M10×1.5': 8.5,
    'M12×1.75': 10.2,
    'M14×2': 12,
    'M6×0.75': 5.2,
    'M8×1': 7,
    'M10×1.25': 8.8,
    'M10×1': 9,
  },
  ...{ 'M12×1.25': 10.8, 'M12×1.5': 10.5, 'M14×1.5': 12.5, 'M14×1.25': 12.8, 'M18×1.5': 16.5 },
};
published('ISO 2306, drills for metric threads')('as listed, and by the rule, mm', 'from memory', () =>
  Object.entries(metric).flatMap(([name, mm]) => [
    same(`${name} as listed`, named(name).usualDrill, `${mm} mm`),
    near(`${name} by the rule`, tapHoleMm(named(name)), mm, 0.11),
  ]),
);

shop('d − 0.01299·75/n is within 0.0035 in of the table’s drill, in', 'calculated', () =>
  (
    [
      ['#8-32', 0.136],
      ['#10-24', 0.1495],
      ['#10-32', 0.159],
      ['1/4-20', 0.201],
      ['1/4-28', 0.213],
      ['5/16-18', 0.257],
      ['5/16-24', 0.272],
      ['3/8-16', 0.3125],
      ['3/8-24', 0.332],
      ['7/16-14', 0.368],
      ['1/2-13', 0.4219],
    ] as const
  ).map(([name, drillIn]) => near(name, tapHoleMm(named(name)) / mmPerInch, drillIn, 0.0035)),
);
