import { useSyncExternalStore } from 'react';
import type { RawEntry } from '../../job/index.js';

/** What this device has just written and can take back by one touch. */
export type JustWritten = readonly RawEntry[];

const forMs = 10_000;
/** photographs that were chosen together are taken back together */
const togetherMs = 3_000;

let written: JustWritten = [];
let lastAt = 0;
let timer: ReturnType<typeof setTimeout> | undefined;
const listeners = new Set<() => void>();

function change(next: JustWritten): void {
  written = next;
  clearTimeout(timer);
  if (next.length > 0) timer = setTimeout(() => change([]), forMs);
  for (const tell of listeners) tell();
}

export function tellWritten(lines: readonly RawEntry[]): void {
  const now = Date.now();
  const goesOn =
    now - lastAt < togetherMs && [...written, ...lines].every(({ kind }) => kind === 'photograph');
  lastAt = now;
  // the line that opens a job carries all others: it stays
  change([...(goesOn ? written : []), ...lines.filter(({ kind }) => kind !== 'open')]);
}

export const forgetWritten = (): void => change([]);

export const useJustWritten = (): JustWritten =>
  useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => written,
  );
