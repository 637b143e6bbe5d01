import { builtInCatalog } from '../../../src/catalog/index.js';
import {
  type CaseHistory,
  type Machine,
  type MachineFacts,
  machineNetwork,
  type SeenCheck,
} from '../../../src/diagnose/index.js';
import { infer } from '../../../src/infer/index.js';

export const catalog = builtInCatalog();

/** A mower with every kind of fault that a four-stroke can have, and no automatic release. */
export const mower: MachineFacts = {
  architecture: 'side-valve',
  ignition: 'solid-state',
  fuelSystem: 'float-bowl',
  shaft: 'vertical',
  governor: 'flyweight',
  starter: 'rope',
  use: 'mower',
  variants: { 'automatic-release': false },
};

/** Checks in the order given, a minute apart. */
export function seen(...list: readonly (readonly [check: string, ...outcomes: string[]])[]): SeenCheck[] {
  return list.map(([check, ...outcomes], i) => ({
    check,
    outcomes,
    at: new Date(Date.UTC(2026, 2, 1, 9, i)).toISOString(),
  }));
}

export interface Asked {
  readonly facts?: MachineFacts;
  readonly history?: CaseHistory;
}

export function machine(list: readonly SeenCheck[], { facts = mower, history = {} }: Asked = {}): Machine {
  return machineNetwork(catalog, facts, list, history);
}

/** The probability of each fault, as it stands now. */
export function probabilities(list: readonly SeenCheck[], asked: Asked = {}): Record<string, number> {
  const made = machine(list, asked);
  const { faults, posterior } = infer(made.network);
  return Object.fromEntries(made.faults.map(({ id }) => [id, posterior[faults.indexOf(made.now(id))]!]));
}
