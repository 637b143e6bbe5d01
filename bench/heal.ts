/**
 * How fast a shop's own jobs heal frequencies that are wrong there: a shop in whose world every fault is three times as
 * likely, or three times less, as the catalog has it. It plays one job after the other with what it has learned so far, to
 * the product's own stop; a repair shows whether the fault was there, a fault behind the complaint that stayed is found at
 * the run-up, and what nobody decided on counts by the chance that is left of it, as it does in the product. Printed: on fresh machines of the
 * same shop, how far the probabilities are off for the faults that are commoner than the catalog says and for those that
 * are rarer, before the first job and after so many.
 *
 * SHOPS, JOBS, FRESH: how many shops, jobs in each, and fresh machines that each is judged by; WORKERS: threads.
 */
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import type { Architecture, Catalog } from '../src/catalog/index.js';
import { builtInCatalog } from '../src/catalog/index.js';
import { behindComplaints } from '../src/diagnose/advice/weighed.js';
import { type FinishedJob, frequenciesFor, learnedPriors } from '../src/diagnose/index.js';
import { inferExactly } from '../src/infer/index.js';
import { partlyChecked, sum } from './advice/calibration.js';
import { drawHarder, type World } from './advice/harder-world.js';
import type { DrawnMachine } from './advice/machines.js';
import { policies } from './advice/policies.js';
import { probability } from './advice/run.js';
import { playToStop } from './advice/shop-minutes.js';
import { seeded } from './infer/sheet-like.js';

const env = (name: string, usual: number): number => Number(process.env[name] ?? usual);
const shops = env('SHOPS', 2);
const jobs = env('JOBS', 100);
const fresh = env('FRESH', 100);
const workers = env('WORKERS', 2);
const timesOff = 3;
const looks = [0, 25, 50, 100, 200, 400].filter((n) => n <= jobs);

/** Faults of a shop's world are commoner or rarer there, by the shop's own toss for each. */
function worldOf(catalog: Catalog, shop: number): { world: World; commoner: ReadonlySet<string> } {
  const toss = seeded(6_007 * shop + 11);
  const commoner = new Set(catalog.faults.filter(() => toss() < 0.5).map((f) => f.id));
  const world = { odds: (id: string) => (commoner.has(id) ? timesOff : 1 / timesOff), falseReadings: 0 };
  return { world, commoner };
}

const learnedFor = (catalog: Catalog, finished: readonly FinishedJob[], { facts }: DrawnMachine) =>
  frequenciesFor(learnedPriors(catalog, finished), facts.architecture as Architecture);

const withLearned = (
  catalog: Catalog,
  finished: readonly FinishedJob[],
  drawn: DrawnMachine,
): DrawnMachine => ({
  ...drawn,
  history: { ...drawn.history, frequencies: learnedFor(catalog, finished, drawn) },
});

/** One job played to the product's own stop, and what it tells afterwards. */
function finishedJob(catalog: Catalog, drawn: DrawnMachine): FinishedJob {
  const { machine, inference, repaired } = playToStop(catalog, drawn, policies['this advice']);
  const behind = behindComplaints(machine);
  const chance = (id: string): number => {
    if (repaired.has(id)) return drawn.present.has(id) ? 1 : 0;
    if (behind.has(id) && drawn.present.has(id)) return 1;
    return probability(machine, inference, id);
  };
  const faults = Object.fromEntries(machine.faults.map(({ id }) => [id, chance(id)]));
  return { architecture: drawn.facts.architecture as Architecture, faults };
}

interface Off {
  readonly predicted: number;
  readonly present: number;
  readonly n: number;
}
type ByWay = Readonly<Record<'commoner' | 'rarer', readonly Off[]>>;

/** By bins of tenths of the catalog's own probability: the faults judged are the same before and after. */
function judge(catalog: Catalog, shop: number, finished: readonly FinishedJob[]): ByWay {
  const { world, commoner } = worldOf(catalog, shop);
  const ways = { commoner: bins(), rarer: bins() };
  for (let m = 0; m < fresh; m++) {
    const drawn = withLearned(
      catalog,
      finished,
      drawHarder(catalog, seeded(50_021 * shop + 97 * m + 5), world),
    );
    const machine = partlyChecked(catalog, drawn, seeded(31 * m + 3));
    const inference = inferExactly(machine.network);
    for (const { id } of machine.faults) {
      const p = probability(machine, inference, id);
      const bin = ways[commoner.has(id) ? 'commoner' : 'rarer'][Math.min(9, Math.floor(10 * p))]!;
      bin.n += 1;
      bin.predicted += p;
      bin.present += drawn.present.has(id) ? 1 : 0;
    }
  }
  return ways;
}

const bins = () => Array.from({ length: 10 }, () => ({ n: 0, predicted: 0, present: 0 }));

function shopLearns(catalog: Catalog, shop: number): ByWay[] {
  const { world } = worldOf(catalog, shop);
  const finished: FinishedJob[] = [];
  const judged: ByWay[] = [];
  for (let j = 0; j <= jobs; j++) {
    if (looks.includes(j)) judged.push(judge(catalog, shop, finished));
    const drawn = drawHarder(catalog, seeded(7_927 * shop + 13 * j + 1), world);
    finished.push(finishedJob(catalog, withLearned(catalog, finished, drawn)));
  }
  return judged;
}

function work(place: number, of: number): ByWay[][] {
  const catalog = builtInCatalog();
  const mine = Array.from({ length: shops }, (_, i) => i).filter((i) => i % of === place);
  return mine.map((shop) => shopLearns(catalog, shop));
}

function onThread(place: number): Promise<ByWay[][]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: place });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

/** Expected calibration error: over the bins, how far predicted and present are apart, by how many stand in each. */
function errorOf(parts: readonly (readonly Off[])[]): { predicted: number; present: number; error: number } {
  const all = bins().map((_, b) => ({
    n: sum(parts.map((p) => p[b]!.n)),
    predicted: sum(parts.map((p) => p[b]!.predicted)),
    present: sum(parts.map((p) => p[b]!.present)),
  }));
  const n = sum(all.map((b) => b.n));
  return {
    predicted: sum(all.map((b) => b.predicted)) / n,
    present: sum(all.map((b) => b.present)) / n,
    error: sum(all.map((b) => Math.abs(b.predicted - b.present))) / n,
  };
}

function print(all: readonly ByWay[][]): void {
  console.log(`\n${shops} shops whose frequencies are ${timesOff} times off, ${fresh} fresh machines each:`);
  console.log('  jobs   faults that are   predicted   there   calibration error   of that at first');
  for (const way of ['commoner', 'rarer'] as const)
    looks.forEach((n, i) => {
      const { predicted, present, error } = errorOf(all.map((shop) => shop[i]![way]));
      const first = errorOf(all.map((shop) => shop[0]![way])).error;
      const figures = [predicted, present, error, error / first].map((x) => x.toFixed(4).padStart(10));
      console.log(`  ${String(n).padStart(4)}   ${way.padEnd(12)} ${figures.join('  ')}`);
    });
}

if (isMainThread) {
  const parts =
    workers > 1 ? await Promise.all(Array.from({ length: workers }, (_, i) => onThread(i))) : [work(0, 1)];
  print(parts.flat());
} else parentPort!.postMessage(work(workerData as number, workers));
