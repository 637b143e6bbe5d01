import type { Catalog } from '../../src/catalog/index.js';
import { enoughToAct, findings, machineNetwork, nextChecks } from '../../src/diagnose/index.js';
import { inferExactly } from '../../src/infer/index.js';
import { seeded } from '../infer/sheet-like.js';
import { drawFacts, stamp } from './machines.js';

const quantile = (xs: readonly number[], q: number): string =>
  [...xs].sort((a, b) => a - b)[Math.min(xs.length - 1, Math.floor(q * xs.length))]!.toFixed(2);

/** The largest architecture, with as many checks made as a share says, at random outcomes: far more abnormal than real. */
export function speed(catalog: Catalog): void {
  const large = {
    ...drawFacts(seeded(1)),
    architecture: 'side-valve',
    ignition: 'points',
    fuelSystem: 'float-bowl',
    governor: 'flyweight',
    starter: 'electric',
    use: 'mower',
  };
  const { checks } = machineNetwork(catalog, large, []);
  console.log('\nMilliseconds of computing, p50 / p95, side-valve with points');
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
      // the processor's own time, the best of three: a busy computer does not count
      let least = Number.POSITIVE_INFINITY;
      let result: T | undefined;
      for (let i = 0; i < 3; i += 1) {
        const start = process.cpuUsage();
        result = act();
        const { user, system } = process.cpuUsage(start);
        least = Math.min(least, (user + system) / 1000);
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
      const ranked = timed('next', () => nextChecks(machine, inference, { runs: 'yes' }));
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
