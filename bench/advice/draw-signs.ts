import { faultCauses, type Network, type NetworkFunction } from '../../src/infer/index.js';

type Next = () => number;
type Sign = Network['signs'][number];

/** The outcome of every sign on a machine with these faults, by its place: functions first, then what reads them. */
export function drawSigns(
  network: Network,
  present: ReadonlySet<string>,
  next: Next,
): ReadonlyMap<string, number> {
  const states = new Map((network.functions ?? []).map((f) => [f.id, drawState(f, present, next)]));
  return new Map(network.signs.map((s) => [s.id, drawLevel(s, present, states, next)]));
}

function drawState({ leak, causes }: NetworkFunction, present: ReadonlySet<string>, next: Next): number {
  const drawn = causes.filter((c) => present.has(c.fault)).map((c) => placeOf(c.outcome, next));
  return Math.max(leak ? placeOf(leak, next) : 0, ...drawn);
}

function drawLevel(
  sign: Sign,
  present: ReadonlySet<string>,
  states: ReadonlyMap<string, number>,
  next: Next,
): number {
  const ofFaults = faultCauses(sign)
    .filter((c) => present.has(c.fault))
    .map((c) => placeOf(c.outcome, next));
  const ofFunctions = sign.causes.flatMap((c) => {
    const state = 'function' in c ? states.get(c.function)! : 0;
    return 'function' in c && state > 0 ? [placeOf(c.outcome[state - 1]!, next)] : [];
  });
  return Math.max(placeOf(sign.leak, next), ...ofFaults, ...ofFunctions);
}

/** A place in a list, as likely as what stands there is part of the sum. */
export function placeOf(masses: readonly number[], next: Next): number {
  let x = next() * masses.reduce((a, b) => a + b, 0);
  const place = masses.findIndex((m) => {
    x -= m;
    return x < 0;
  });
  return place < 0 ? masses.length - 1 : place;
}
