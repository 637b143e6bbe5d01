/**
 * Exact inference over faults: time, width and error on made-up networks with the proportions of a trade list, beside
 * the alternating-sum form and the counting of every state where those can be done.
 */
import {
  evidenceWeights,
  explanations,
  faultCauses,
  infer,
  type Network,
  outlook,
} from '../src/infer/index.js';
import { abnormalCount, machines, seeded, sheet } from './infer/sheet-like.js';
import {
  alternatingSum,
  alternatingSumExactly,
  everyState,
  type TwoLevel,
  twoLevel,
} from './infer/two-level.js';
import { informationBits } from './information.js';

const at = (xs: readonly number[], q: number): number => {
  const sorted = [...xs].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))]!;
};
const spread = (xs: readonly number[], digits = 2): string =>
  `p50 ${at(xs, 0.5).toFixed(digits)}  p95 ${at(xs, 0.95).toFixed(digits)}  most ${at(xs, 1).toFixed(digits)}`;

/** The best of three, so that a busy computer does not count; milliseconds. */
function timed<T>(act: () => T): { ms: number; result: T } {
  let ms = Number.POSITIVE_INFINITY;
  let result: T | undefined;
  for (let i = 0; i < 3; i += 1) {
    const start = performance.now();
    result = act();
    ms = Math.min(ms, performance.now() - start);
  }
  return { ms, result: result! };
}

function posteriors(networks: readonly Network[], title: string): void {
  for (const network of networks.slice(0, 20)) infer(network);
  const runs = networks.map((network) => timed(() => infer(network)));
  const exact = runs.filter((r) => r.result.kind === 'exact');
  console.log(`\n${title}`);
  console.log(`  networks ${networks.length}, answered exactly ${exact.length}`);
  console.log(`  full posterior, from network to numbers, ms: ${spread(runs.map((r) => r.ms))}`);
  console.log(
    `  variables in one table: ${spread(
      runs.map((r) => r.result.size.width),
      0,
    )}`,
  );
  console.log(
    `  table cells in all:     ${spread(
      runs.map((r) => r.result.size.cells),
      0,
    )}`,
  );
}

/** The network before some of the signs were seen. */
function halfWay(network: Network, seed: number): Network {
  const next = seeded(seed);
  return { ...network, seen: network.seen.filter(() => next() < 0.6) };
}

function nextChecks(networks: readonly Network[]): void {
  const parts = {
    outlook: [] as number[],
    weights: [] as number[],
    unseen: [] as number[],
    abnormal: [] as number[],
  };
  for (const [i, whole] of networks.entries()) {
    const network = halfWay(whole, i);
    const inference = infer(network);
    if (inference.kind !== 'exact') continue;
    const seen = new Set(network.seen.map((r) => r.sign));
    const open = network.signs.filter((s) => !seen.has(s.id));
    parts.unseen.push(open.length);
    parts.abnormal.push(abnormalCount(network));
    const ask = () => open.map((s) => informationBits(inference, outlook(inference, s.id)));
    parts.outlook.push(timed(ask).ms);
    parts.weights.push(timed(() => evidenceWeights(inference)).ms);
  }
  console.log('\nSix in ten signs seen, the rest asked about');
  console.log(`  signs unseen ${spread(parts.unseen, 0)}; abnormal findings ${spread(parts.abnormal, 0)}`);
  console.log(
    `  posteriors and information for every outcome of every unseen sign, ms: ${spread(parts.outlook)}`,
  );
  console.log(`  weight of every finding for every fault, ms: ${spread(parts.weights)}`);
}

function bestExplanations(networks: readonly Network[]): void {
  const runs = networks.map((network, i) => {
    const inference = infer(halfWay(network, i));
    return inference.kind === 'exact' ? [timed(() => explanations(inference, { count: 5 }))] : [];
  });
  const all = runs.flat();
  const complete = all.filter((r) => r.result.complete).length;
  console.log(
    `\nFive most probable joint explanations over all faults: proven for ${complete} of ${all.length}`,
  );
  console.log(
    `  ms: ${spread(
      all.map((r) => r.ms),
      0,
    )}`,
  );
}

/** Holds the bounds against an exact answer, on networks that are dear but can still be answered. */
function boundsThatCanBeChecked(networks: readonly Network[]): void {
  console.log('\nBounds in place of an exact answer, with a tenth of the table cells it would take');
  const dear = networks.flatMap((network) => {
    const exact = infer(network);
    return exact.kind === 'exact' && exact.size.cells >= 20_000 ? [{ network, exact }] : [];
  });
  for (const branches of [1, 16, 64, 256]) {
    const rows = dear.map(({ network, exact }) => {
      const limit = exact.size.cells / 10;
      const start = performance.now();
      const bounds = infer(network, { maxCells: limit, boundCells: limit, branches });
      const ms = performance.now() - start;
      if (bounds.kind !== 'bounded') throw new Error('a tenth of the cells cannot be enough');
      const widths = bounds.high.map((h, f) => h - bounds.low[f]!);
      const outside = exact.posterior.filter((p, f) => p < bounds.low[f]! || p > bounds.high[f]!).length;
      return { ms, outside, half: at([...widths], 0.5), most: at([...widths], 1) };
    });
    const outside = rows.reduce((n, r) => n + r.outside, 0);
    console.log(
      `  ${branches} branches, ${rows.length} networks: ${outside} posteriors outside their interval`,
    );
    console.log(
      `    median interval of a network: ${spread(
        rows.map((r) => r.half),
        4,
      )}`,
    );
    console.log(
      `    widest interval of a network: ${spread(
        rows.map((r) => r.most),
        4,
      )}`,
    );
    console.log(
      `    ms: ${spread(
        rows.map((r) => r.ms),
        0,
      )}`,
    );
  }
}

function tooWide(networks: readonly Network[]): void {
  console.log('\n400 signs, 110 findings abnormal: what happens where tables grow');
  for (const network of networks) {
    const start = performance.now();
    const answer = infer(network);
    const ms = (performance.now() - start).toFixed(0);
    if (answer.kind === 'exact') {
      console.log(
        `  exact: ${answer.size.cells.toExponential(1)} cells, width ${answer.size.width}, ${ms} ms`,
      );
      continue;
    }
    const widths = [...answer.high.map((h, f) => h - answer.low[f]!)];
    const wanted = answer.wanted.cells.toExponential(1);
    console.log(`  bounded: exact would take ${wanted} cells; intervals ${spread(widths, 4)}; ${ms} ms`);
  }
}

const relative = (got: number, want: number): number => Math.abs(got / want - 1);
const few = (x: number): string => x.toExponential(1);

function besideAlternatingSum(): void {
  console.log(
    '\nBeside the alternating sum (100 faults, two outcomes, no links); error against whole-number arithmetic',
  );
  console.log('  abnormal   error here   error sum    ms here    ms sum   sum / here');
  for (const abnormal of [4, 8, 12, 14, 16]) {
    const rows = machines(3, abnormal, { ...sheet, ladders: 0, links: 0, signs: 120 }).map((network) => {
      const flat = twoLevel(network);
      const here = timed(() => infer(network));
      const sum = timed(() => alternatingSum(flat));
      const want = alternatingSumExactly(flat);
      if (here.result.kind !== 'exact') throw new Error('two-level networks of this size are exact');
      return {
        here,
        sum,
        errorHere: relative(here.result.evidence, want),
        errorSum: relative(sum.result, want),
      };
    });
    const worst = (pick: (r: (typeof rows)[number]) => number): number => Math.max(...rows.map(pick));
    const [mine, theirs] = [worst((r) => r.here.ms), worst((r) => r.sum.ms)];
    const cells = [
      few(worst((r) => r.errorHere)),
      few(worst((r) => r.errorSum)),
      mine.toFixed(2),
      theirs.toFixed(1),
    ];
    console.log(
      `  ${String(abnormal).padStart(8)}${cells.map((c) => c.padStart(11)).join('')}${(theirs / mine).toFixed(1).padStart(13)}`,
    );
  }
}

function besideCounting(): void {
  console.log('\nBeside counting every state (two outcomes, no links)');
  console.log('  faults   relative difference    ms here   ms counting   counting / here');
  for (const faults of [10, 14, 18]) {
    const rows = machines(3, 8, { ...sheet, ladders: 0, links: 0, signs: 120 }).map((network) => {
      const some = fewerFaults(network, faults);
      const flat: TwoLevel = twoLevel(some);
      const here = timed(() => infer(some));
      const counted = timed(() => everyState(flat));
      if (here.result.kind !== 'exact') throw new Error('small networks are exact');
      return { here: here.ms, counted: counted.ms, apart: relative(here.result.evidence, counted.result) };
    });
    const worst = (pick: (r: (typeof rows)[number]) => number): number => Math.max(...rows.map(pick));
    const [mine, theirs] = [worst((r) => r.here), worst((r) => r.counted)];
    console.log(
      `  ${String(faults).padStart(6)}${few(worst((r) => r.apart)).padStart(22)}${mine.toFixed(2).padStart(11)}${theirs.toFixed(1).padStart(14)}${(theirs / mine).toFixed(0).padStart(18)}`,
    );
  }
}

/** The faults most often named as causes of what is abnormal; the others are left out of the network. */
function fewerFaults(network: Network, count: number): Network {
  const abnormal = new Set(
    network.seen.filter((r) => 'outcome' in r && r.outcome !== 'o0').map((r) => r.sign),
  );
  const named = (id: string): number =>
    network.signs.filter((s) => abnormal.has(s.id) && faultCauses(s).some((c) => c.fault === id)).length;
  const faults = [...network.faults].sort((a, b) => named(b.id) - named(a.id)).slice(0, count);
  const kept = new Set(faults.map((f) => f.id));
  return {
    ...network,
    faults,
    signs: network.signs.map((s) => ({ ...s, causes: faultCauses(s).filter((c) => kept.has(c.fault)) })),
  };
}

const networks = machines(200, 40);
posteriors(networks, '100 faults, 200 signs, 15 links, all signs read, 40 findings abnormal');
const dear = machines(60, 60);
posteriors(dear, 'The same with 60 findings abnormal');
nextChecks(networks.slice(0, 100));
bestExplanations(networks.slice(0, 40));
boundsThatCanBeChecked(dear.slice(0, 40));
tooWide(machines(4, 110, { ...sheet, signs: 400 }));
besideAlternatingSum();
besideCounting();
