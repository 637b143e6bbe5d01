import { useSyncExternalStore } from 'react';
import type { Bell } from '../../job/index.js';
import { remember, remembered } from './remember.js';

/** A bell of a job, as this device keeps it: it rings on whatever sheet is open, and after a reload too. */
export interface KeptBell extends Bell {
  readonly job: string;
  readonly tag: number;
  /** somebody has heard it */
  readonly heard?: true;
}

const key = 'wristpin.bells';
/** What was over for so long when this device first hears of it calls nobody any more. */
const staleMs = 12 * 3_600_000;

let bells: readonly KeptBell[] = read();
const listeners = new Set<() => void>();

function read(): readonly KeptBell[] {
  try {
    return JSON.parse(remembered(key) ?? '[]') as readonly KeptBell[];
  } catch {
    return []; // written by a program that kept them otherwise
  }
}

function change(next: readonly KeptBell[]): void {
  const written = JSON.stringify(next);
  if (written === JSON.stringify(bells)) return;
  bells = next;
  remember(key, written);
  for (const tell of listeners) tell();
}

/** The bells of a job as they are now; what was heard of them stays heard. */
export function keepBells(
  before: readonly KeptBell[],
  of: { readonly id: string; readonly tag: number },
  now: readonly Bell[],
  nowMs: number,
): readonly KeptBell[] {
  const own = new Map(before.filter(({ job }) => job === of.id).map((bell) => [bell.key, bell]));
  const kept = now.map((bell): KeptBell => {
    const known = own.get(bell.key);
    const heard = known ? known.heard && known.at === bell.at : nowMs - bell.at > staleMs;
    return { ...bell, job: of.id, tag: of.tag, ...(heard && { heard }) };
  });
  return [...before.filter(({ job }) => job !== of.id), ...kept];
}

export const tellBells = (of: { readonly id: string; readonly tag: number }, now: readonly Bell[]): void =>
  change(keepBells(bells, of, now, Date.now()));

export const hearBells = (rang: readonly KeptBell[]): void =>
  change(bells.map((bell) => (rang.some((r) => isSame(r, bell)) ? { ...bell, heard: true } : bell)));

const isSame = (a: KeptBell, b: KeptBell) => a.job === b.job && a.key === b.key && a.at === b.at;

export const useBells = (): readonly KeptBell[] =>
  useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => bells,
  );

/** Another page of this device has heard or set one. */
export function followBells(): void {
  window.addEventListener('storage', (event) => {
    if (event.key === key) change(read());
  });
}
