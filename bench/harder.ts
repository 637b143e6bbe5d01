/**
 * The advice in a world that is not the model: frequencies up to three times off either way, five readings in a hundred
 * false, owners who have it wrong, every use and release. Printed: what a shop pays on a machine at the product's own stop
 * (minutes looking, needless work, missed work) beside the trade's fixed order and information alone with the same stop;
 * the Brier score with and without false readings.
 *
 * MACHINES, CALIBRATED: how many of each; WORKERS: on how many threads.
 */
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { builtInCatalog } from '../src/catalog/index.js';
import { calibrate, sum } from './advice/calibration.js';
import { drawHarder, harder } from './advice/harder-world.js';
import { policies } from './advice/policies.js';
import { type ShopMinutes, shopMinutes } from './advice/shop-minutes.js';
import { seeded } from './infer/sheet-like.js';

const env = (name: string, usual: number): number => Number(process.env[name] ?? usual);
const machines = env('MACHINES', 60);
const calibrated = env('CALIBRATED', 200);
const workers = env('WORKERS', 2);
const names = ['this advice', 'fixed trade order', 'information, no minutes'] as const;

type Paid = Readonly<Record<(typeof names)[number], ShopMinutes>>;
interface Part {
  readonly paid: readonly Paid[];
  readonly brier: readonly { readonly falsely: number; readonly truly: number }[];
}

function work(place: number, of: number): Part {
  const catalog = builtInCatalog();
  const numbers = (n: number): number[] =>
    Array.from({ length: n }, (_, i) => i).filter((i) => i % of === place);
  const brier = (m: number, falseReadings: number): number => {
    const next = seeded(104_729 * m + 31);
    const drawn = drawHarder(catalog, next, { ...harder, falseReadings });
    return calibrate(catalog, seeded(7 * m + 3), drawn).brier;
  };
  return {
    paid: numbers(machines).map((m) => {
      // each order meets the same machine and the same luck
      const paid = names.map((name) => {
        const drawn = drawHarder(catalog, seeded(7_919 * m + 101));
        return [name, shopMinutes(catalog, drawn, policies[name])] as const;
      });
      return Object.fromEntries(paid) as unknown as Paid;
    }),
    brier: numbers(calibrated).map((m) => ({ falsely: brier(m, harder.falseReadings), truly: brier(m, 0) })),
  };
}

function onThread(place: number): Promise<Part> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: place });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

const total = ({ looking, needless, missed }: ShopMinutes): number => looking + needless + missed;

/** A ratio of sums over the same machines, with its standard error (delta method). */
function ratio(pairs: readonly (readonly [number, number])[]): string {
  const whole = sum(pairs.map(([, b]) => b));
  const mean = sum(pairs.map(([a]) => a)) / whole;
  const error = Math.sqrt(sum(pairs.map(([a, b]) => (a - mean * b) ** 2))) / whole;
  return `${mean.toFixed(3)} ± ${error.toFixed(3)}`;
}

function print(parts: readonly Part[]): void {
  const paid = parts.flatMap((p) => p.paid);
  console.log(`\n${paid.length} machines of a harder world, at the product’s own stop, a machine:`);
  console.log('  order                     looking  needless   missed    total   wrong repairs   checks');
  for (const name of names) {
    const mean = (of: (m: ShopMinutes) => number): number => sum(paid.map((p) => of(p[name]))) / paid.length;
    const columns = [
      (m: ShopMinutes) => m.looking,
      (m: ShopMinutes) => m.needless,
      (m: ShopMinutes) => m.missed,
      total,
    ];
    console.log(
      `  ${name.padEnd(24)} ${columns.map((c) => mean(c).toFixed(1).padStart(8)).join(' ')} ${mean(
        (m) => m.wrong,
      )
        .toFixed(2)
        .padStart(14)} ${mean((m) => m.checks)
        .toFixed(1)
        .padStart(9)}`,
    );
  }
  for (const other of names.slice(1))
    console.log(
      `  this advice / ${other}: ${ratio(paid.map((p) => [total(p['this advice']), total(p[other])]))} in total`,
    );
  const brier = parts.flatMap((p) => p.brier);
  console.log(
    `  Brier score with false readings over that without, ${brier.length} machines: ${ratio(brier.map((b) => [b.falsely, b.truly]))}`,
  );
}

if (isMainThread) {
  const parts =
    workers > 1 ? await Promise.all(Array.from({ length: workers }, (_, i) => onThread(i))) : [work(0, 1)];
  print(parts);
} else parentPort!.postMessage(work(workerData as number, workers));
