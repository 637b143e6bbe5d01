import { z } from 'zod';
import { NetworkError } from './error.js';

/**
 * The open form of a fault network: faults that are present or not, links by which one fault brings about
 * another, signs whose outcomes run in order from normal to worst, and what was seen.
 *
 * - A fault is present by itself with probability `prior`; each present fault at the start of a link makes its
 *   end present with probability `p`; these are independent ways (noisy-OR).
 * - A sign's first outcome is the normal one, which an absent fault leaves. Each present cause draws an outcome
 *   from its own `outcome` distribution, the `leak` draws one for everything not named, and the sign shows the
 *   worst of them (noisy-MAX).
 * - A function is what the machine needs (spark, fuel, squeeze): its first state is the good one, the others run to
 *   the worst. Each present cause draws a state from its own `outcome` distribution, the `leak` draws one for everything
 *   not named (none when left out), and the function stands in the worst of them. A sign's cause may name a function in
 *   place of a fault: `outcome` then has one distribution for each state after the good one, which leaves the normal
 *   outcome as an absent fault does. So faults and signs need no link for every pair.
 * - `seen` gives an outcome by its name, or `weights`: the likelihood of a doubtful reading under each outcome
 *   (any non-negative scale; the scale goes into the evidence probability).
 * - `known` holds faults that were confirmed or excluded by looking. That is evidence like any other: it counts
 *   for and against what brings the fault about.
 *
 * A sign is seen once. Two readings of one sign under the same conditions share their cause and are not
 * independent, so a second one is refused: write them as one reading with `weights`, or, when something was
 * repaired between them, as two signs.
 *
 * Repeated checks after a repair ("epochs") are of this form too: the repaired fault gets a second fault that
 * says "still there after the repair" (prior: chance that it comes newly; a link from the first with the chance
 * that the repair failed); the later signs name the second fault where the earlier ones name the first. Faults
 * that nobody touched keep one name through all epochs.
 */

const id = z.string().min(1).max(200);
const label = z.union([id, z.number()]);
const probability = z.number().min(0).max(1);
const masses = z.array(probability).min(2);

const functionSchema = z.object({
  id,
  states: z.array(label).min(2).max(20),
  leak: masses.optional(),
  causes: z.array(z.object({ fault: id, outcome: masses })),
});

export const networkSchema = z.object({
  faults: z.array(z.object({ id, prior: probability })),
  links: z.array(z.object({ from: id, to: id, p: probability })).default([]),
  signs: z.array(
    z.object({
      id,
      outcomes: z.array(label).min(2).max(1000),
      leak: masses,
      causes: z.array(
        z.union([
          z.object({ fault: id, outcome: masses }),
          z.object({ function: id, outcome: z.array(masses).min(1) }),
        ]),
      ),
    }),
  ),
  functions: z.array(functionSchema).optional(),
  seen: z
    .array(
      z.union([
        z.object({ sign: id, outcome: label }),
        z.object({ sign: id, weights: z.array(z.number().min(0)).min(2) }),
      ]),
    )
    .default([]),
  known: z.array(z.object({ fault: id, present: z.boolean() })).default([]),
});

type Deep<T> = T extends readonly (infer U)[]
  ? readonly Deep<U>[]
  : T extends object
    ? { readonly [K in keyof T]: Deep<T[K]> }
    : T;
export type Network = Deep<z.infer<typeof networkSchema>>;
export type NetworkFunction = NonNullable<Network['functions']>[number];
export type Sign = Network['signs'][number];
export type SignCause = Sign['causes'][number];
/** What was read of one sign. */
export type Reading = Network['seen'][number];
export type Known = Network['known'][number];

/** A distribution written with rounded decimals may miss 1 by this much; it is used as written. */
export const distributionTolerance = 1e-9;

/** The network, or a NetworkError that names the first place where it is wrong. */
export function readNetwork(given: unknown): Network {
  refuseBothWays(given);
  const parsed = networkSchema.safeParse(given);
  if (!parsed.success) throw shapeError(parsed.error);
  checkNetwork(parsed.data);
  return parsed.data;
}

/** The schema would take the outcome and drop the weights. */
function refuseBothWays(given: unknown): void {
  const seen = typeof given === 'object' && given !== null && 'seen' in given ? given.seen : [];
  if (!Array.isArray(seen)) return;
  for (const [i, reading] of seen.entries()) {
    if (typeof reading !== 'object' || reading === null || !('outcome' in reading && 'weights' in reading))
      continue;
    fail('shape', 'a reading has an outcome or weights, not both', `seen[${i}]`, reading);
  }
}

function shapeError(error: z.ZodError): NetworkError {
  const first = error.issues[0]!;
  const place = first.path.reduce<string>(
    (at, p) => (typeof p === 'number' ? `${at}[${p}]` : `${at}.${String(p)}`),
    '',
  );
  return new NetworkError('shape', first.message, { place: place.replace(/^\./, '') || 'network' });
}

function checkNetwork(network: Network): void {
  const faults = uniqueIds(network.faults, 'faults');
  uniqueIds(network.signs, 'signs');
  checkLinks(network, faults);
  const functions = checkFunctions(network, faults);
  for (const [i, sign] of network.signs.entries()) checkSign(sign, `signs[${i}]`, faults, functions);
  checkSeen(network);
  checkKnown(network, faults);
}

function uniqueIds(items: readonly { readonly id: string }[], list: string): Map<string, number> {
  const at = new Map<string, number>();
  for (const [i, item] of items.entries()) {
    if (at.has(item.id)) fail('duplicate', `"${item.id}" is there twice`, `${list}[${i}].id`, item.id);
    at.set(item.id, i);
  }
  return at;
}

function checkLinks(network: Network, faults: Map<string, number>): void {
  const pairs = new Set<string>();
  for (const [i, link] of network.links.entries()) {
    for (const end of ['from', 'to'] as const) needFault(faults, link[end], `links[${i}].${end}`);
    const pair = `${link.from}\u0000${link.to}`;
    if (pairs.has(pair))
      fail('duplicate', `a second link from "${link.from}" to "${link.to}"`, `links[${i}]`, link);
    pairs.add(pair);
  }
  const order = faultOrder(network);
  if (order.length < network.faults.length) refuseCycle(network, new Set(order));
}

/** Fault positions, causes before effects; those on a cycle or behind one are left out. */
export function faultOrder(network: Pick<Network, 'faults' | 'links'>): number[] {
  const at = new Map(network.faults.map((f, i) => [f.id, i]));
  const waiting = network.faults.map(() => 0);
  for (const link of network.links) waiting[at.get(link.to)!]! += 1;
  const order = [...waiting.keys()].filter((i) => waiting[i] === 0);
  for (let next = 0; next < order.length; next += 1) {
    const from = network.faults[order[next]!]!.id;
    for (const link of network.links) {
      if (link.from !== from) continue;
      const to = at.get(link.to)!;
      waiting[to]! -= 1;
      if (waiting[to] === 0) order.push(to);
    }
  }
  return order;
}

function refuseCycle(network: Network, free: Set<number>): never {
  const stuck = new Set(network.faults.filter((_, i) => !free.has(i)).map((f) => f.id));
  // walking backwards among the stuck ones must come round
  const back = new Map(network.links.filter((l) => stuck.has(l.from)).map((l) => [l.to, l.from]));
  const path: string[] = [];
  let here = [...stuck][0]!;
  while (!path.includes(here)) {
    path.push(here);
    here = back.get(here)!;
  }
  const round = [...path.slice(path.indexOf(here)), here].reverse();
  const place = network.links.findIndex((l) => l.from === round[0] && l.to === round[1]);
  return fail('cycle', `links go round: ${round.join(' → ')}`, `links[${place}]`, round);
}

type Functions = ReadonlyMap<string, NetworkFunction>;

function checkFunctions({ functions = [] }: Network, faults: Map<string, number>): Functions {
  for (const [i, f] of functions.entries()) {
    const place = `functions[${i}]`;
    if (faults.has(f.id)) fail('duplicate', `"${f.id}" is a fault already`, `${place}.id`, f.id);
    uniqueNames(f.states, `${place}.states`, 'state');
    if (f.leak) checkDistribution(f.leak, f.states.length, `${place}.leak`);
    const causes = new Set<string>();
    for (const [c, { fault, outcome }] of f.causes.entries()) {
      needFault(faults, fault, `${place}.causes[${c}].fault`);
      onlyOnce(causes, fault, `${place}.causes[${c}].fault`);
      checkDistribution(outcome, f.states.length, `${place}.causes[${c}].outcome`);
    }
  }
  uniqueIds(functions, 'functions');
  return new Map(functions.map((f) => [f.id, f]));
}

function checkSign(sign: Sign, place: string, faults: Map<string, number>, functions: Functions): void {
  uniqueNames(sign.outcomes, `${place}.outcomes`, 'outcome');
  checkDistribution(sign.leak, sign.outcomes.length, `${place}.leak`);
  const causes = new Set<string>();
  for (const [c, cause] of sign.causes.entries()) {
    const here = `${place}.causes[${c}]`;
    if ('function' in cause) checkFunctionCause(sign, cause, here, functions);
    else {
      needFault(faults, cause.fault, `${here}.fault`);
      checkDistribution(cause.outcome, sign.outcomes.length, `${here}.outcome`);
    }
    onlyOnce(causes, nameOf(cause), `${here}.${'function' in cause ? 'function' : 'fault'}`);
  }
}

/** What a sign's cause is called. */
export const nameOf = (cause: SignCause): string => ('function' in cause ? cause.function : cause.fault);

/** The causes of a sign that are faults themselves. */
export const faultCauses = ({ causes }: Sign): Extract<SignCause, { fault: string }>[] =>
  causes.filter((c) => 'fault' in c);

type FunctionCause = Extract<SignCause, { function: string }>;

function checkFunctionCause(sign: Sign, cause: FunctionCause, place: string, functions: Functions): void {
  const named = functions.get(cause.function);
  if (!named)
    throw new NetworkError('unknown', `no function "${cause.function}"`, {
      place: `${place}.function`,
      value: cause.function,
    });
  const bad = named.states.length - 1;
  if (cause.outcome.length !== bad) {
    const message = `${cause.outcome.length} distributions for ${bad} states after the good one`;
    fail('distribution', message, `${place}.outcome`, cause.outcome, `${bad} distributions`);
  }
  for (const [s, masses] of cause.outcome.entries())
    checkDistribution(masses, sign.outcomes.length, `${place}.outcome[${s}]`);
  for (let s = 1; s < bad; s += 1) checkNoMilder(cause, s, place);
}

/** What a milder state never leaves, a worse one cannot: the exact sums go from state to state by their ratio. */
function checkNoMilder({ outcome }: FunctionCause, s: number, place: string): void {
  const least = outcome[s]!.findIndex((m) => m > 0);
  const before = outcome[s - 1]!.findIndex((m) => m > 0);
  if (least >= before) return;
  const message = 'a worse state leaves an outcome milder than any that the state before it leaves';
  fail('distribution', message, `${place}.outcome[${s}]`, outcome[s]);
}

function uniqueNames(names: readonly (string | number)[], place: string, what: string): void {
  for (const [k, name] of names.entries())
    if (names.indexOf(name) < k)
      fail('duplicate', `${what} "${name}" is there twice`, `${place}[${k}]`, name);
}

function onlyOnce(causes: Set<string>, name: string, place: string): void {
  if (causes.has(name)) fail('duplicate', `"${name}" is a cause twice`, place, name);
  causes.add(name);
}

function checkDistribution(masses: readonly number[], outcomes: number, place: string): void {
  if (masses.length !== outcomes) {
    fail(
      'distribution',
      `${masses.length} masses for ${outcomes} outcomes`,
      place,
      masses,
      `${outcomes} masses`,
    );
  }
  const sum = masses.reduce((a, b) => a + b, 0);
  if (Math.abs(sum - 1) > distributionTolerance)
    fail('distribution', `masses sum to ${sum}`, place, sum, '1 ± 1e-9');
}

function checkSeen(network: Network): void {
  const signs = new Map(network.signs.map((s) => [s.id, s]));
  const first = new Map<string, number>();
  for (const [i, reading] of network.seen.entries()) {
    const place = `seen[${i}]`;
    if (first.has(reading.sign)) {
      const before = first.get(reading.sign);
      fail(
        'seen-twice',
        `"${reading.sign}" was seen at seen[${before}] already; one reading with weights says both`,
        place,
        reading.sign,
      );
    }
    first.set(reading.sign, i);
    checkReading(signs.get(reading.sign), reading, place);
  }
}

/** @throws NetworkError when the sign, the outcome or the number of weights does not fit */
export function checkReading(sign: Sign | undefined, reading: Reading, place: string): asserts sign is Sign {
  if (!sign) fail('unknown', `no sign "${reading.sign}"`, `${place}.sign`, reading.sign);
  else if ('outcome' in reading) outcomeLevel(sign, reading.outcome, `${place}.outcome`);
  else checkWeights(reading.weights, sign.outcomes.length, `${place}.weights`);
}

function checkWeights(weights: readonly number[], outcomes: number, place: string): void {
  if (weights.length !== outcomes)
    fail('weights', `${weights.length} weights for ${outcomes} outcomes`, place, weights);
  const bad = weights.find((w) => !(w >= 0 && Number.isFinite(w)));
  if (bad !== undefined) fail('weights', `${bad} is no likelihood`, place, bad, 'finite, ≥ 0');
  if (!weights.some((w) => w > 0))
    fail('impossible', 'every outcome has weight 0', place, weights, 'one weight above 0');
}

/** The place of an outcome in the sign's order. Where all names are words, a number is the place itself, from 0. */
export function outcomeLevel(sign: Sign, outcome: string | number, place = 'outcome'): number {
  const level = sign.outcomes.indexOf(outcome);
  if (level >= 0) return level;
  const words = sign.outcomes.every((name) => typeof name === 'string');
  if (typeof outcome === 'number' && words && outcome in sign.outcomes) return outcome;
  return fail(
    'unknown',
    `"${sign.id}" has no outcome "${outcome}"`,
    place,
    outcome,
    sign.outcomes.join(', '),
  );
}

function checkKnown(network: Network, faults: Map<string, number>): void {
  const said = new Map<string, boolean>();
  for (const [i, { fault, present }] of network.known.entries()) {
    needFault(faults, fault, `known[${i}].fault`);
    if (said.has(fault)) {
      const code = said.get(fault) === present ? 'duplicate' : 'contradiction';
      fail(
        code,
        `"${fault}" was said to be ${said.get(fault) ? 'present' : 'absent'} already`,
        `known[${i}]`,
        fault,
      );
    }
    said.set(fault, present);
  }
}

function needFault(faults: Map<string, number>, fault: string, place: string): void {
  if (!faults.has(fault)) fail('unknown', `no fault "${fault}"`, place, fault);
}

function fail(
  code: NetworkError['code'],
  message: string,
  place: string,
  value: unknown,
  bound?: string,
): never {
  throw new NetworkError(code, message, bound === undefined ? { place, value } : { place, value, bound });
}
