import { classFigures, classLimit } from '../../src/gauge/class-figures.js';
import { near, published } from '../support/published.js';

/** Inches. Figures of the class that decide nothing by themselves: they are shown beside the maker's own. */
type Row = readonly [figure: keyof typeof classFigures, end: 'min' | 'max', inches: number];
const rows = (table: readonly Row[]) =>
  table.map(([figure, end, inches]) => {
    const limit = classLimit(classFigures[figure], 'in');
    return near(`${figure}, ${end}`, limit[end] ?? Number.NaN, inches, 1e-9);
  });

published('public manual excerpts on small engines, read second-hand')(
  'wear and clearances, in',
  'seen',
  () =>
    rows([
      ['boreTaper', 'max', 0.002],
      ['ringGap', 'max', 0.03],
      ['crankpinClearance', 'min', 0.001],
      ['crankpinClearance', 'max', 0.0025],
      ['journalOutOfRound', 'max', 0.0005],
      ['overheadIntake', 'min', 0.0031],
      ['overheadIntake', 'max', 0.0047],
      ['overheadExhaust', 'min', 0.0051],
      ['overheadExhaust', 'max', 0.0067],
    ]),
);

published('US Army technical manuals on small engines')('clearances, in', 'seen', () =>
  rows([
    ['ringGap', 'min', 0.007],
    ['guideClearance', 'min', 0.002],
    ['guideClearance', 'max', 0.0045],
    ['endPlay', 'min', 0.002],
    ['endPlay', 'max', 0.008],
  ]),
);

published('figures of the trade for small engines')('wear and clearances, in', 'common practice', () =>
  rows([
    ['boreWear', 'max', 0.003],
    ['boreOutOfRound', 'max', 0.0015],
    ['pistonClearance', 'min', 0.0015],
    ['pistonClearance', 'max', 0.006],
    ['journalWear', 'max', 0.001],
    ['faceFlatness', 'max', 0.003],
    ['sideValveIntake', 'min', 0.005],
    ['sideValveIntake', 'max', 0.007],
    ['sideValveExhaust', 'min', 0.007],
    ['sideValveExhaust', 'max', 0.011],
  ]),
);
