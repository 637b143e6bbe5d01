import { builtInCatalog } from '../../src/catalog/index.js';
import { learnedFromCounts } from '../../src/diagnose/index.js';
import { near, published } from '../support/published.js';

const book = published('Bayesian Data Analysis (Gelman, Carlin, Stern, Rubin)');

book(
  '437 girls in 980 births of placenta previa: 0.446 ± 0.016, interval 0.415 to 0.477',
  'from memory',
  () => {
    const catalog = builtInCatalog();
    const half = { ...catalog.faults.find((f) => f.id === 'coil-dead')!, presentPer100: 50 };
    // a uniform prior is Beta(1, 1): a catalog that says one half with the weight of two machines
    const counts = [
      { architecture: 'side-valve' as const, fault: 'coil-dead', found: 437, present: 437, absent: 543 },
    ];
    const [answer] = learnedFromCounts({ ...catalog, faults: [half] }, counts, 2).frequencies;
    return [
      near('mean', answer!.learned, 0.446, 5e-4),
      near('deviation', answer!.halfWidth / 1.96, 0.016, 5e-4),
      near('lower end', answer!.learned - answer!.halfWidth, 0.415, 5e-4),
      near('upper end', answer!.learned + answer!.halfWidth, 0.477, 5e-4),
    ];
  },
);
