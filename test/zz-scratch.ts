import { builtInCatalog } from '../src/catalog/index.js';
import { machineNetwork, nextChecks, type MachineFacts } from '../src/diagnose/index.js';
import { inferExactly } from '../src/infer/index.js';
const catalog = builtInCatalog();
const mower: MachineFacts = { architecture: 'side-valve', ignition: 'solid-state', fuelSystem: 'float-bowl', shaft: 'vertical', governor: 'flyweight', starter: 'rope', use: 'mower', variants: { 'automatic-release': false } };
const ask = (facts: MachineFacts, history: object, ...list: [string, ...string[]][]) => {
  const seen = list.map(([check, ...outcomes], i) => ({ check, outcomes, at: new Date(Date.UTC(2026, 2, 1, 9, i)).toISOString() }));
  const m = machineNetwork(catalog, facts, seen, history);
  const c0 = process.cpuUsage();
  const inf = inferExactly(m.network);
  const c1 = process.cpuUsage(c0);
  const p = Object.fromEntries(m.faults.map((f) => [f.id, inf.posterior[inf.faults.indexOf(m.now(f.id))]!]));
  return { m, inf, p, ms: (c1.user + c1.system) / 1000 };
};
const show = (title: string, r: ReturnType<typeof ask>, ids: string[]) => {
  console.log(title, '|', ids.map((i) => `${i} ${(100 * (r.p[i] ?? NaN)).toFixed(1)}`).join(', '), `| ${r.inf.size.cells} cells w${r.inf.size.width} ${r.ms.toFixed(1)} ms`);
};
const ohv = { ...mower, architecture: 'overhead-valve' as const, use: 'generator' as const, shaft: 'horizontal' as const };
const two: MachineFacts = { architecture: 'two-stroke', ignition: 'solid-state', fuelSystem: 'diaphragm', shaft: 'horizontal', governor: 'none', starter: 'rope', use: 'trimmer' };
const pts = { ...mower, ignition: 'points' as const };
const base = ask(mower, {});
for (let i = 0; i < 3; i++) ask(mower, { complaints: ['cranks-never-fires'] });
show('base', base, ['coil-dead', 'stop-wire-grounded', 'engine-locked', 'inlet-needle-leaking', 'connecting-rod-loose-or-broken', 'stale-fuel', 'flywheel-key-part-sheared']);
show('black oil', ask(mower, {}, ['oil-smell-and-feel', 'black']), ['inlet-needle-leaking', 'connecting-rod-loose-or-broken', 'oil-low-or-black']);
show('running', ask(mower, {}, ['handle-vibration', 'usual']), ['coil-dead', 'stop-wire-grounded', 'engine-locked']);
show('will-not-stop', ask(mower, { complaints: ['will-not-stop'] }), ['stop-wire-grounded', 'stop-control-dead']);
show('low oil ohv base', ask(ohv, {}), ['low-oil-cut-out-active']);
show('low oil ohv', ask(ohv, {}, ['oil-level', 'low']), ['low-oil-cut-out-active', 'oil-low-or-black']);
show('black plug', ask(mower, {}, ['plug-tip', 'black-oily']), ['plug-fouled-or-cracked']);
show('struck, never fires, good spark', ask({ ...mower, struck: 'yes' }, { complaints: ['cranks-never-fires'] }, ['spark-across-gap', 'strong']), ['flywheel-key-part-sheared', 'coil-dead']);
show('  before spark', ask({ ...mower, struck: 'yes' }, {}), ['flywheel-key-part-sheared']);
show('two-stroke -40', ask(two, {}, ['compression-dry', 'down-forty-percent']), ['rings-and-bore-worn', 'bore-scored', 'rings-stuck']);
show('fresh jar', ask(mower, { complaints: ['cranks-never-fires'] }, ['tank-fuel-in-a-jar', 'fresh']), ['stale-fuel']);
show('clean points', ask(pts, { complaints: ['cranks-never-fires'] }, ['spark-across-gap', 'none'], ['spark-stop-wire-off', 'no-change'], ['points-look', 'clean']), ['coil-dead', 'condenser-failed', 'points-dirty-or-closed']);
show('compression -40 SV', ask(mower, {}, ['compression-dry', 'down-forty-percent']), ['valve-not-sealing', 'head-gasket-blown', 'rings-and-bore-worn']);
show('oil-soaked', ask(mower, {}, ['air-cleaner-look', 'oil-soaked']), ['air-cleaner-choked']);
show('nil', ask(mower, {}, ['valve-clearance', 'nil']), ['valve-clearance-too-small']);
show('key step', ask(mower, {}, ['key-look', 'slight-step']), ['flywheel-key-part-sheared']);
show('stop no', ask(mower, {}, ['stop-control', 'no']), ['stop-control-dead']);
const full = ask(pts, { complaints: ['cranks-never-fires', 'no-power'] }, ['spark-across-gap', 'none'], ['spark-stop-wire-off', 'no-change'], ['slow-pull', 'soft'], ['compression-dry', 'down-forty-percent'], ['plug-tip', 'wet-with-fuel'], ['bowl-sample', 'varnish'], ['leak-down', 'high'], ['fuel-flow', 'dribble']);
show('many abnormal', full, ['coil-dead']);
for (const r of [base, full]) {
  const c0 = process.cpuUsage();
  nextChecks(r.m, r.inf, {}, 5);
  const c1 = process.cpuUsage(c0);
  console.log('ranked', ((c1.user + c1.system) / 1000).toFixed(0), 'ms', r.m.checks.length, 'checks');
}
for (const c of catalog.complaints.slice(0, 40)) {
  const r = ask(mower, { complaints: [c.id] });
  const n = nextChecks(r.m, r.inf, {}, 3);
  console.log(c.id, c.firstChecks.includes(n.best[0]!.id), n.best.map((b) => b.id).join(' '), `${r.inf.size.cells}`);
}
