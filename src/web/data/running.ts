import { useSyncExternalStore } from 'react';
import { remember, remembered } from './remember.js';

/** Since when the engine of a job runs, as this device keeps it; milliseconds since 1970. A phone in an apron locks its screen: it survives a reload. */
const keyOf = (job: string) => `wristpin.running.${job}`;
const listeners = new Set<() => void>();

const runsSince = (job: string): number | undefined => Number(remembered(keyOf(job))) || undefined;

export function tellRunning(job: string, since: number | undefined): void {
  remember(keyOf(job), since === undefined ? undefined : String(since));
  for (const tell of listeners) tell();
}

export const useRunsSince = (job: string): number | undefined =>
  useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => runsSince(job),
  );
