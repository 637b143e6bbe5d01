import { faultCauses, seeded } from '../../src/infer/index.js';

export { seeded };

import { type Network, readNetwork } from '../../src/infer/index.js';

/** Faults by system of the engine, as many as a trade list has: fuel, air, ignition, compression, oil, cooling … */
const systems = [23, 4, 15, 22, 9, 3, 4, 7, 5, 8];
/** How many of 100 signs have 1, 2, 3 … causes; three in four causes are of one system. */
const causeCounts = [26, 22, 20, 15, 11, 4, 2];
/** How often a present fault shows: strong, medium, weak. */
const strengths = [0.8, 0.8, 0.45, 0.45, 0.15];
const homeShare = 0.74;

export interface Asked {
  readonly signs: number;
  /** share of signs that are ladders of three or four outcomes */
  readonly ladders: number;
  readonly links: number;
}
export const sheet: Asked = { signs: 200, ladders: 0.3, links: 15 };

/** A made-up network with the proportions of a trade list: about 100 faults, few causes a sign, some faults popular. */
export function sheetLike(seed: number, asked: Asked = sheet): Network {
  const next = seeded(seed);
  const system = systems.flatMap((n, s) => Array.from({ length: n }, () => s));
  const faults = system.map((_, i) => ({ id: `f${i}`, prior: thousandth(0.005 + 0.3 * next() ** 3) }));
  // some faults show in many signs, most in few
  const popularity = faults.map(() => 0.3 + next() ** 4 * 4);
  const pick = (allowed: (i: number) => boolean, taken: ReadonlySet<number>): number | undefined => {
    const open = popularity.map((w, i) => (allowed(i) && !taken.has(i) ? w : 0));
    return drawn(open, next);
  };
  const signs = Array.from({ length: asked.signs }, (_, s) => {
    const home = drawn(systems, next)!;
    const taken = new Set<number>();
    for (let n = drawn(causeCounts, next)! + 1; n > 0; n -= 1) {
      const near = next() < homeShare;
      const found = pick((i) => !near || system[i] === home, taken);
      if (found !== undefined) taken.add(found);
    }
    const outcomes = next() < asked.ladders ? 3 + Math.floor(next() * 2) : 2;
    const leak = rising(outcomes, 0.01 + next() * 0.12, next);
    const causes = [...taken].map((i) => ({
      fault: `f${i}`,
      outcome: rising(outcomes, strengths[Math.floor(next() * strengths.length)]!, next),
    }));
    return { id: `s${s}`, outcomes: Array.from({ length: outcomes }, (_, k) => `o${k}`), leak, causes };
  });
  return readNetwork({ faults, signs, links: linksAmong(faults.length, asked.links, next) });
}

/** From lower to higher numbers, so that nothing goes round. */
function linksAmong(faults: number, count: number, next: () => number): Network['links'] {
  const links = new Map<string, Network['links'][number]>();
  while (links.size < count) {
    const [a, b] = [Math.floor(next() * faults), Math.floor(next() * faults)].sort((x, y) => x - y) as [
      number,
      number,
    ];
    if (a < b) links.set(`${a} ${b}`, { from: `f${a}`, to: `f${b}`, p: thousandth(0.1 + next() * 0.4) });
  }
  return [...links.values()];
}

/** Whole thousandths: `reach` spread over the outcomes beyond the first. */
function rising(outcomes: number, reach: number, next: () => number): number[] {
  const draws = Array.from({ length: outcomes - 1 }, () => 0.2 + next());
  const sum = draws.reduce((a, b) => a + b, 0);
  const beyond = draws.map((d) => thousandth((reach * d) / sum));
  return [thousandth(1 - beyond.reduce((a, b) => a + b, 0)), ...beyond];
}

const thousandth = (x: number): number => Math.round(x * 1000) / 1000;

function drawn(weights: readonly number[], next: () => number): number | undefined {
  let left = next() * weights.reduce((a, b) => a + b, 0);
  for (const [i, w] of weights.entries()) {
    left -= w;
    if (left < 0 && w > 0) return i;
  }
  return undefined;
}

/** Findings of a machine drawn from the network itself, with just so many beyond normal; undefined when it has fewer. */
export function machineSeen(network: Network, seed: number, abnormal: number): Network['seen'] | undefined {
  const next = seeded(seed);
  const present = new Map<string, boolean>();
  for (const fault of network.faults) {
    const brought = network.links.some((l) => l.to === fault.id && present.get(l.from) && next() < l.p);
    present.set(fault.id, brought || next() < fault.prior);
  }
  const levels = network.signs.map((sign) =>
    Math.max(
      drawn(sign.leak, next) ?? 0,
      ...faultCauses(sign).map((c) => (present.get(c.fault) ? (drawn(c.outcome, next) ?? 0) : 0)),
    ),
  );
  let spare = levels.filter((k) => k > 0).length - abnormal;
  if (spare < 0) return undefined;
  return network.signs.flatMap((sign, s) => {
    // too many: some abnormal signs stay unseen
    if (levels[s]! > 0 && spare > 0 && next() < 0.4) {
      spare -= 1;
      return [];
    }
    return [{ sign: sign.id, outcome: sign.outcomes[levels[s]!]! }];
  });
}

export const abnormalCount = (network: Network): number =>
  network.seen.filter((r) => 'outcome' in r && r.outcome !== 'o0').length;

/** Machines with just so many abnormal findings, each of a network of its own. */
export function machines(count: number, abnormal: number, asked: Asked = sheet): Network[] {
  const found: Network[] = [];
  for (let seed = 1; found.length < count; seed += 1) {
    const network = sheetLike(seed, asked);
    for (let draw = 1; draw <= 40; draw += 1) {
      const seen = machineSeen(network, seed * 1000 + draw, abnormal);
      if (!seen) continue;
      const whole = { ...network, seen };
      if (abnormalCount(whole) !== abnormal) continue;
      found.push(whole);
      break;
    }
  }
  return found;
}
