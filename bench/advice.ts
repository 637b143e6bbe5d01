/**
 * The advice beside other orders of checking, on machines drawn from the model: minutes until the faults that matter are
 * found, wrong repairs, calibration of the probabilities, and time taken.
 *
 * A fault counts when it is present, matters, and could be found by all checks together (probability at least 0.5 with all
 * of them made). Access is shared: what one check takes off is off for the next. Every policy starts from the intake's
 * facts alone, may make any check whatever the engine's state, and stops when all that counts is found; wrong repairs are
 * faults that matter, are absent and stand at 0.5 or more at that moment.
 */
import { builtInCatalog } from '../src/catalog/index.js';
import {
  accessFor,
  type ExactInference,
  enoughToAct,
  findings,
  inferExactly,
  type Machine,
  machineNetwork,
  matters,
  nextChecks,
  type SeenCheck,
} from '../src/diagnose/index.js';
import { allChecks, canBeMade, type DrawnMachine, drawMachine, stamp } from './advice/machines.js';
import { type Policy, policies } from './advice/policies.js';
import { seeded } from './diagnose/sheet-like.js';

const catalog = builtInCatalog();
const machines = Number(process.env.MACHINES ?? 120);
const calibrated = Number(process.env.CALIBRATED ?? 1000);
const found = 0.5;

const probability = (machine: Machine, inference: ExactInference, fault: string): number =>
  inference.posterior[inference.faults.indexOf(machine.now(fault))]!;

interface Run {
  minutes: number;
  halfMinutes: number;
  wrong: number;
  checks: number;
}

/** Faults that count on this machine. */
function targets(drawn: DrawnMachine): string[] {
  const { machine } = allChecks(catalog, drawn);
  const inference = inferExactly(machine.network);
  return machine.faults
    .filter((f) => matters(f.fault) && drawn.present.has(f.id))
    .map((f) => f.id)
    .filter((id) => probability(machine, inference, id) >= found);
}

function runPolicy(drawn: DrawnMachine, wanted: readonly string[], policy: Policy): Run {
  const seen: SeenCheck[] = [];
  const off = new Set<string>();
  let minutes = 0;
  let halfMinutes: number | undefined;
  for (;;) {
    const machine = machineNetwork(catalog, drawn.facts, seen);
    const inference = inferExactly(machine.network);
    const at = wanted.filter((f) => probability(machine, inference, f) >= found).length;
    if (at >= wanted.length / 2) halfMinutes ??= minutes;
    if (at === wanted.length || !machine.checks.some(canBeMade)) {
      const wrong = machine.faults.filter(
        (f) => matters(f.fault) && !drawn.present.has(f.id) && probability(machine, inference, f.id) >= found,
      );
      return { minutes, halfMinutes: halfMinutes ?? minutes, wrong: wrong.length, checks: seen.length };
    }
    const chosen = policy(catalog, machine, inference, off);
    const access = accessFor(catalog, drawn.facts, chosen.check, off);
    minutes += access.minutes;
    for (const c of access.comesOff) off.add(c.id);
    seen.push({ check: chosen.check.id, outcomes: drawn.shows(chosen), at: stamp(seen.length) });
  }
}

function comparePolicies(): void {
  const runs = new Map<string, Run[]>(Object.keys(policies).map((name) => [name, []]));
  let faults = 0;
  let used = 0;
  for (let m = 0; m < machines; m += 1) {
    const drawn = drawMachine(catalog, seeded(7_919 * m + 13));
    const wanted = targets(drawn);
    if (wanted.length === 0) continue;
    used += 1;
    faults += wanted.length;
    for (const [name, policy] of Object.entries(policies))
      runs.get(name)!.push(runPolicy(drawn, wanted, policy));
  }
  console.log(
    `\n${machines} machines drawn, ${used} with faults that count, ${(faults / used).toFixed(2)} each`,
  );
  console.log('  policy                    min to all   to half   wrong repairs   checks');
  const mean = (name: string, of: keyof Run) => runs.get(name)!.reduce((s, r) => s + r[of], 0) / used;
  for (const name of runs.keys()) {
    const [all, half, wrong, checks] = (['minutes', 'halfMinutes', 'wrong', 'checks'] as const).map((k) =>
      mean(name, k),
    );
    console.log(
      `  ${name.padEnd(24)} ${all!.toFixed(1).padStart(11)} ${half!.toFixed(1).padStart(9)} ${wrong!.toFixed(2).padStart(15)} ${checks!.toFixed(1).padStart(8)}`,
    );
  }
  for (const other of ['fixed trade order', 'cheapest first', 'information, no minutes']) {
    const ratios = runs
      .get('this advice')!
      .map((r, i) => r.minutes - meanRatio(runs, other) * runs.get(other)![i]!.minutes);
    const error = Math.sqrt(ratios.reduce((s, d) => s + d * d, 0)) / used / mean(other, 'minutes');
    const half = mean('this advice', 'halfMinutes') / mean(other, 'halfMinutes');
    console.log(
      `  this advice / ${other}: ${meanRatio(runs, other).toFixed(3)} ± ${error.toFixed(3)} to all, ${half.toFixed(3)} to half`,
    );
  }
}

function meanRatio(runs: ReadonlyMap<string, readonly Run[]>, other: string): number {
  const sum = (name: string) => runs.get(name)!.reduce((s, r) => s + r.minutes, 0);
  return sum('this advice') / sum(other);
}

/** Predicted probabilities against what is there, after a random part of the checks. */
function calibration(): void {
  const bins = Array.from({ length: 10 }, () => ({ n: 0, predicted: 0, present: 0, variance: 0 }));
  let brier = 0;
  let climate = 0;
  let count = 0;
  for (let m = 0; m < calibrated; m += 1) {
    const next = seeded(104_729 * m + 7);
    const drawn = drawMachine(catalog, next);
    const all = allChecks(catalog, drawn).seen;
    const share = next();
    // a repeat without its first reading says nothing, so nothing is left out at the end of the list only
    const machine = machineNetwork(
      catalog,
      drawn.facts,
      all.filter(() => next() < share),
    );
    const inference = inferExactly(machine.network);
    for (const { id, frequency } of machine.faults) {
      const p = probability(machine, inference, id);
      const there = drawn.present.has(id) ? 1 : 0;
      const bin = bins[Math.min(9, Math.floor(10 * p))]!;
      bin.n += 1;
      bin.predicted += p;
      bin.present += there;
      bin.variance += p * (1 - p);
      brier += (p - there) ** 2;
      climate += (frequency - there) ** 2;
      count += 1;
    }
  }
  console.log(
    `\nCalibration over ${calibrated} machines and ${count} fault probabilities, a random part of the checks made`,
  );
  console.log('  predicted   present        n   off by standard errors');
  for (const { n, predicted, present, variance } of bins) {
    const off = (present - predicted) / Math.sqrt(variance);
    console.log(
      `  ${(predicted / n).toFixed(4).padStart(9)} ${(present / n).toFixed(4).padStart(9)} ${String(n).padStart(8)} ${off.toFixed(2).padStart(8)}`,
    );
  }
  console.log(
    `  Brier score ${(brier / count).toFixed(5)}, by frequencies alone ${(climate / count).toFixed(5)}`,
  );
}

const quantile = (xs: readonly number[], q: number): string =>
  [...xs].sort((a, b) => a - b)[Math.min(xs.length - 1, Math.floor(q * xs.length))]!.toFixed(2);

/** The largest architecture, with as many checks made as a share says, at random outcomes: far more abnormal than real. */
function speed(): void {
  const facts = {
    ...drawMachine(catalog, seeded(1)).facts,
    architecture: 'side-valve',
    ignition: 'points',
  } as const;
  const large = {
    ...facts,
    fuelSystem: 'float-bowl',
    governor: 'flyweight',
    starter: 'electric',
    use: 'mower',
  } as const;
  const { checks } = machineNetwork(catalog, large, []);
  console.log('\nMilliseconds, p50 / p95, side-valve with points');
  console.log('  checks made  abnormal   network    posteriors   next checks   findings   enough');
  for (const share of [0, 0.25, 0.5, 0.75, 1]) {
    const times: Record<string, number[]> = {
      network: [],
      infer: [],
      next: [],
      findings: [],
      enough: [],
      abnormal: [],
    };
    const timed = <T>(name: string, act: () => T): T => {
      // the best of three, so that a busy computer does not count
      let least = Number.POSITIVE_INFINITY;
      let result: T | undefined;
      for (let i = 0; i < 3; i += 1) {
        const start = performance.now();
        result = act();
        least = Math.min(least, performance.now() - start);
      }
      times[name]!.push(least);
      return result!;
    };
    for (let s = 0; s < 100; s += 1) {
      const next = seeded(31 * s + 100 * share);
      const seen = checks
        .filter(() => next() < share)
        .map(({ check }, i) => {
          const bad = check.outcomes.slice(1);
          const outcome = next() < 0.55 ? bad[Math.floor(next() * bad.length)]! : check.outcomes[0]!;
          return { check: check.id, outcomes: [outcome.id], at: stamp(i) };
        });
      const machine = timed('network', () => machineNetwork(catalog, large, seen));
      const inference = timed('infer', () => inferExactly(machine.network));
      const ranked = timed('next', () => nextChecks(machine, inference));
      timed('findings', () => findings(machine, inference));
      timed('enough', () => enoughToAct(machine, inference, ranked));
      times.abnormal!.push(machine.readings.filter((r) => r.abnormal).length);
    }
    const both = (name: string) => `${quantile(times[name]!, 0.5)} / ${quantile(times[name]!, 0.95)}`;
    console.log(
      `  ${String(Math.round(share * checks.length)).padStart(6)}      ${quantile(times.abnormal!, 0.5)}   ${['network', 'infer', 'next', 'findings', 'enough'].map(both).join('   ')}`,
    );
  }
}

speed();
if (machines > 0) comparePolicies();
calibration();
