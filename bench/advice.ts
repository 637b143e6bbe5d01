/**
 * The advice beside other orders of checking, on machines drawn from the model: minutes until the faults that matter are
 * found, wrong repairs, distance from the best order where that can be worked out, calibration of the probabilities, and
 * time taken.
 *
 * A machine is drawn with what its owner says, whether it runs, and what every check would show; a check that another
 * one has spoiled shows anything. A fault counts when it is present, matters, and is identified (probability at least
 * 0.5) once every check that can be made on the machine is made. Access is shared: what one check takes off is off for
 * the next. Every policy starts from the intake's facts and the owner's complaints, and stops when all that counts is
 * identified; wrong repairs are faults that matter, are absent and stand at 0.5 or more at that moment.
 *
 * MACHINES, CALIBRATED, INSTANCES: how many of each; WORKERS: on how many threads; PICTURE: folder for the reliability
 * curve.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { builtInCatalog } from '../src/catalog/index.js';
import { binsOf, type Calibrated, calibrate, sum } from './advice/calibration.js';
import { drawMachine } from './advice/machines.js';
import { Instance } from './advice/optimal.js';
import { type PolicyName, policies, policyNames } from './advice/policies.js';
import { reliabilitySvg } from './advice/reliability.js';
import { type Run, runPolicy, targets } from './advice/run.js';
import { speed } from './advice/speed.js';
import { tinyCatalog } from './advice/tiny.js';
import { seeded } from './infer/sheet-like.js';

const env = (name: string, usual: number): number => Number(process.env[name] ?? usual);
const machines = env('MACHINES', 120);
const calibrated = env('CALIBRATED', 1000);
const instances = env('INSTANCES', 100);
const workers = env('WORKERS', 2);

interface Compared {
  readonly wanted: number;
  readonly runs: Readonly<Record<PolicyName, Run>>;
}

/** What one thread has worked out. */
interface Part {
  readonly compared: readonly Compared[];
  readonly calibrated: readonly Calibrated[];
  readonly instances: readonly { readonly least: number; readonly advised: number }[];
}

/** Every so-many-th machine, from a place on: seeds are those of the machine's number, whatever thread it falls to. */
function work(place: number, of: number): Part {
  const catalog = builtInCatalog();
  const numbers = (n: number): number[] =>
    Array.from({ length: Math.max(0, n) }, (_, i) => i).filter((i) => i % of === place);
  return {
    compared: numbers(machines).flatMap((m) => {
      const drawn = drawMachine(catalog, seeded(7_919 * m + 13));
      const wanted = targets(catalog, drawn);
      if (wanted.length === 0) return [];
      const runs = policyNames.map((name) => [name, runPolicy(catalog, drawn, wanted, policies[name])]);
      return [{ wanted: wanted.length, runs: Object.fromEntries(runs) as Record<PolicyName, Run> }];
    }),
    calibrated: numbers(calibrated).map((m) => calibrate(catalog, seeded(104_729 * m + 7))),
    instances: numbers(instances).map((m) => {
      const instance = new Instance(tinyCatalog(catalog, seeded(31 * m + 5)));
      return { least: instance.leastCost(), advised: instance.costOf(instance.advised) };
    }),
  };
}

function onThread(place: number): Promise<Part> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: place });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}

function printPolicies(all: readonly Compared[]): void {
  const used = all.length;
  const per = (xs: readonly number[]): number => sum(xs) / used;
  console.log(
    `\n${machines} machines drawn, ${used} with faults that count, ${per(all.map((c) => c.wanted)).toFixed(2)} each`,
  );
  console.log('  policy                    min to all   to half   wrong repairs   checks');
  for (const name of policyNames) {
    const of = (k: 'minutes' | 'halfMinutes' | 'wrong' | 'checks') => per(all.map((c) => c.runs[name][k]));
    console.log(
      `  ${name.padEnd(24)} ${of('minutes').toFixed(1).padStart(11)} ${of('halfMinutes').toFixed(1).padStart(9)} ${of('wrong').toFixed(2).padStart(15)} ${of('checks').toFixed(1).padStart(8)}`,
    );
  }
  for (const other of policyNames.slice(1)) {
    const ratio = (k: 'minutes' | 'halfMinutes') => ratioOf(all, other, k);
    const [minutes, half] = [ratio('minutes'), ratio('halfMinutes')];
    console.log(
      `  this advice / ${other}: ${minutes.mean.toFixed(3)} ± ${minutes.error.toFixed(3)} to all, ${half.mean.toFixed(3)} ± ${half.error.toFixed(3)} to half`,
    );
  }
}

/** A ratio of means over the same machines, with its standard error (delta method). */
function ratioOf(all: readonly Compared[], other: PolicyName, of: 'minutes' | 'halfMinutes') {
  const pairs = all.map((c) => [c.runs['this advice'][of], c.runs[other][of]] as const);
  const whole = sum(pairs.map(([, b]) => b));
  const mean = sum(pairs.map(([a]) => a)) / whole;
  return { mean, error: Math.sqrt(sum(pairs.map(([a, b]) => (a - mean * b) ** 2))) / whole };
}

function printInstances(all: Part['instances']): void {
  if (all.length === 0) return;
  const ratios = all.filter((i) => i.least > 0).map((i) => i.advised / i.least);
  ratios.sort((a, b) => a - b);
  const mean = sum(all.map((i) => i.advised)) / sum(all.map((i) => i.least));
  const within = ratios.filter((r) => r <= 1.1).length;
  console.log(
    `\n${all.length} made-up instances of 3 to 4 faults and 4 to 5 checks, expected minutes of the advice over the least possible:`,
  );
  console.log(
    `  ${mean.toFixed(4)} in sum, median ${ratios[ratios.length >> 1]!.toFixed(4)}, worst ${ratios.at(-1)!.toFixed(3)}, within a tenth in ${within} of ${ratios.length}`,
  );
}

function printCalibration(all: readonly Calibrated[]): void {
  const bins = binsOf(all);
  const count = sum(bins.map((b) => b.n));
  const brier = sum(all.map((c) => c.brier)) / count;
  const climate = sum(all.map((c) => c.climate)) / count;
  console.log(
    `\nCalibration over ${calibrated} machines and ${count} fault probabilities, a random part of the checks made`,
  );
  console.log('  predicted   present        n   standard error   off by standard errors');
  for (const { n, predicted, present, standardError } of bins)
    console.log(
      `  ${predicted.toFixed(4).padStart(9)} ${present.toFixed(4).padStart(9)} ${String(n).padStart(8)} ${standardError.toFixed(4).padStart(12)} ${((present - predicted) / standardError).toFixed(2).padStart(16)}`,
    );
  console.log(`  Brier score ${brier.toFixed(5)}, by frequencies alone ${climate.toFixed(5)}`);
  const folder = process.env.PICTURE ?? join(tmpdir(), 'wristpin-bench');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, 'reliability.svg');
  writeFileSync(
    file,
    reliabilitySvg(bins, `Predicted against present over ${calibrated} machines drawn from the model`),
  );
  console.log(`  drawn in ${file}`);
}

if (isMainThread) {
  if (env('SPEED', 1) > 0) speed(builtInCatalog());
  const parts =
    workers > 1 ? await Promise.all(Array.from({ length: workers }, (_, i) => onThread(i))) : [work(0, 1)];
  const compared = parts.flatMap((p) => p.compared);
  if (compared.length > 0) printPolicies(compared);
  printInstances(parts.flatMap((p) => p.instances));
  if (calibrated > 0) printCalibration(parts.flatMap((p) => p.calibrated));
} else parentPort!.postMessage(work(workerData as number, workers));
