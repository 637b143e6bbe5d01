import { type Catalog, judgementOf } from '../../catalog/index.js';
import type { Network, Sign } from '../../infer/index.js';
import { reachOf, type Scale } from './scale.js';

type Fault = Network['faults'][number];
type Link = Network['links'][number];

/** Signs of one unit at one time, with what they share. */
export interface Signs {
  readonly signs: readonly Sign[];
  /** hidden causes: not faults of the catalog */
  readonly shared: readonly Fault[];
  readonly links: readonly Link[];
  /** the hidden cause that stands for what is not on the list */
  readonly alarm?: string;
}

/** How faults and functions are called in the network at the time that is asked about. */
export interface Names {
  readonly fault: (id: string) => string;
  readonly function: (id: string) => string;
}

const ofFunctions = ({ functions }: Scale, names: Names) =>
  [...functions].map(([id, outcome]) => ({ function: names.function(id), outcome }));

/** How much related readings share, from the catalog. */
export interface Sharing {
  /**
   * The part of a chance's logarithm that is drawn once for all kin: at 0 each reading is drawn by itself and related
   * checks count in full; at 1 they are one and the same draw.
   */
  readonly chance: number;
  /** the part of a false alarm that comes back in kin readings */
  readonly alarm: number;
}

export const sharingOf = (catalog: Catalog): Sharing => ({
  chance: judgementOf(catalog, 'kin-share'),
  alarm: judgementOf(catalog, 'kin-alarm-share'),
});

/**
 * Signs that say the same thing more than once without counting it in full.
 *
 * Method: for a fault that several signs of a unit may show, "this fault shows in the squeeze" is a hidden cause
 * of its own, a noisy link of the fault with chance s^share, s being its strongest chance to show; each sign is then
 * caused by the hidden cause with what is left of its own chance. So each sign by itself is as likely as its sheet
 * says, and a second one after a first adds what it really adds: a repeat with the suspect bypassed reads the same
 * draw again. A false alarm is shared in the same way by a hidden cause without a fault ("something not on the list").
 * This is a network of the open form, so nothing of the exactness is lost.
 */
export function sharedSigns(
  unit: string,
  scales: readonly Scale[],
  suffix: string,
  names: Names,
  sharing: Sharing,
): Signs {
  const { fault: name } = names;
  const strongest = new Map<string, number>();
  const times = new Map<string, number>();
  for (const { causes } of scales) {
    for (const [fault, masses] of causes) {
      strongest.set(fault, Math.max(strongest.get(fault) ?? 0, reachOf(masses)));
      times.set(fault, (times.get(fault) ?? 0) + 1);
    }
  }
  const kin = [...strongest].filter(([fault]) => times.get(fault)! > 1);
  const drawn = new Map(kin.map(([fault, s]) => [fault, s ** sharing.chance]));
  const hidden = (fault: string) => `~${unit}~${fault}${suffix}`;
  const alarm = `~${unit}${suffix}`;
  const { prior, reaches } = alarmOf(scales, sharing.alarm);
  return {
    signs: scales.map((scale, s) => {
      const causes = [...scale.causes].map(([fault, masses]) => {
        const p = drawn.get(fault);
        return p === undefined
          ? { fault: name(fault), outcome: masses }
          : { fault: hidden(fault), outcome: divided(masses, p) };
      });
      const shared = { fault: alarm, outcome: reaching(scale, reaches[s]!) };
      const all = [...causes, ...ofFunctions(scale, names), shared];
      return {
        ...bare(scale, suffix),
        leak: reaching(scale, ownAlarm(scale, prior * reaches[s]!)),
        causes: all,
      };
    }),
    shared: [{ id: alarm, prior }, ...kin.map(([fault]) => ({ id: hidden(fault), prior: 0 }))],
    alarm,
    links: kin.map(([fault]) => ({ from: name(fault), to: hidden(fault), p: drawn.get(fault)! })),
  };
}

/** Signs as they stand, each drawn by itself. */
export function plainSigns(scales: readonly Scale[], suffix: string, names: Names): Signs {
  const signs = scales.map((scale) => ({
    ...bare(scale, suffix),
    leak: scale.leak,
    causes: [
      ...[...scale.causes].map(([fault, outcome]) => ({ fault: names.fault(fault), outcome })),
      ...ofFunctions(scale, names),
    ],
  }));
  return { signs, shared: [], links: [] };
}

const bare = (scale: Scale, suffix: string) => ({ id: scale.id + suffix, outcomes: scale.outcomes });

function divided(masses: readonly number[], by: number): number[] {
  const rest = masses.slice(1).map((m) => m / by);
  return [Math.max(0, 1 - rest.reduce((a, b) => a + b, 0)), ...rest];
}

/** As frequent as the shared part of the highest false alarm among them; each shows it as often as its own allows. */
function alarmOf(scales: readonly Scale[], share: number): { prior: number; reaches: number[] } {
  const alarms = scales.map((s) => reachOf(s.leak));
  const prior = share * Math.max(...alarms);
  return { prior, reaches: alarms.map((a) => (prior === 0 ? 0 : Math.min(1, (share * a) / prior))) };
}

/** The rest of a false alarm, so that both together come to what the sheet says. */
function ownAlarm(scale: Scale, shared: number): number {
  return Math.max(0, 1 - (1 - reachOf(scale.leak)) / (1 - shared));
}

/** The scale's own false alarm, made as frequent as this. */
function reaching(scale: Scale, chance: number): number[] {
  const own = reachOf(scale.leak);
  const rest = scale.leak.slice(1).map((m) => (m * chance) / own);
  return [1 - rest.reduce((a, b) => a + b, 0), ...rest];
}
