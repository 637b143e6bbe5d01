/**
 * The least teardown on the catalog's engines and on random graphs, beside going through every set of pieces that
 * can be off.
 */
import { architectures, builtInCatalog } from '../src/catalog/index.js';
import { fold } from '../src/job/index.js';
import { leastTeardown, teardownGraph } from '../src/plan/index.js';
import { door } from '../test/job/door.js';
import { leastByExhaustion } from '../test/plan/teardown/by-exhaustion.js';
import { randomCase } from '../test/plan/teardown/random-graph.js';

/** Milliseconds, the median of nine. */
function timed(act: () => unknown): number {
  const runs = Array.from({ length: 9 }, () => {
    const start = performance.now();
    act();
    return performance.now() - start;
  });
  return runs.sort((a, b) => a - b)[4]!;
}

console.log('The catalog’s engines: every piece off, and each piece reached by itself');
const catalog = builtInCatalog();
for (const architecture of architectures) {
  const { graph } = teardownGraph(catalog, architecture, {});
  const ids = graph.pieces.map(({ id }) => id);
  const strip = timed(() => leastTeardown(graph, { reach: [], clear: ids }));
  const single = ids.map((id) => ({ id, ms: timed(() => leastTeardown(graph, { reach: [id] })) }));
  const worst = single.reduce((a, b) => (b.ms > a.ms ? b : a));
  const whole = ids.filter((id) =>
    leastTeardown(graph, { reach: [id] }).removals.some(({ how }) => how === 'whole'),
  );
  console.log(
    `  ${architecture.padEnd(15)} ${ids.length} pieces  strip ${strip.toFixed(1)} ms  slowest single ${worst.ms.toFixed(2)} ms (${worst.id})  an assembly stays whole for ${whole.length} targets`,
  );
}

console.log('\nA job: its plan, its way back and what both bring into the gates');
for (const architecture of architectures) {
  const { whole, half } = jobsOn(architecture);
  const plan = timed(() => door(whole).teardown);
  const bare = timed(() =>
    leastTeardown(teardownGraph(catalog, architecture, {}).graph, { reach: ['crankshaft'] }),
  );
  const back = timed(() => door(half).assembly);
  const rules = timed(() => door(half).gateRules);
  console.log(
    `  ${architecture.padEnd(15)} plan ${plan.toFixed(1)} ms (${(plan / bare).toFixed(1)} × the bare search)  way back of a full strip ${back.toFixed(1)} ms  gates ${rules.toFixed(1)} ms`,
  );
}

/** The crankshaft wanted, before anything is off and with all of it off. */
function jobsOn(architecture: (typeof architectures)[number]) {
  const job = '01900000-0000-7000-8000-000000000001';
  const line = (n: number, kind: string, body: unknown) => ({
    id: `01900000-0000-7000-8000-1${String(n).padStart(11, '0')}`,
    job,
    at: new Date(Date.UTC(2026, 2, 1, 9, n)).toISOString(),
    by: 'bench',
    kind,
    v: 1,
    body,
  });
  const begun = [
    line(1, 'open', { tag: 1, title: '' }),
    line(2, 'intake', { architecture }),
    line(3, 'goal', { component: 'crankshaft', title: 'crankshaft', why: '', state: 'wanted' }),
  ];
  const whole = fold(job, begun);
  const plan = door(whole).teardown;
  const steps = plan.state === 'planned' ? plan.steps : [];
  const taken = steps.map((s, i) =>
    line(4 + i, 'step', {
      step: s.step,
      stage: 'teardown',
      title: s.name,
      components: [...s.components],
      state: 'done',
    }),
  );
  return { whole, half: fold(job, [...begun, ...taken]) };
}

const cases = Array.from({ length: 300 }, (_, seed) => randomCase(seed));
const here = timed(() => cases.map(({ graph, goal }) => leastTeardown(graph, goal)));
const every = timed(() => cases.map(leastByExhaustion));
const alone = cases.map(({ graph, goal }) => leastTeardown({ ...graph, together: [] }, goal).minutes);
const best = cases.map(({ graph, goal }) => leastTeardown(graph, goal).minutes);
const sum = (xs: readonly number[]) => xs.reduce((a, b) => a + b, 0);
console.log('\n300 random graphs of up to 14 pieces');
console.log(`  here ${here.toFixed(0)} ms, every set ${every.toFixed(0)} ms: ${(every / here).toFixed(1)} ×`);
console.log(
  `  minutes with assemblies kept whole where it pays: ${(sum(best) / sum(alone)).toFixed(3)} × piece by piece`,
);
