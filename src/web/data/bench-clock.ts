import { useSyncExternalStore } from 'react';
import { remember, remembered } from './remember.js';

/**
 * How far the bench's clock is ahead of this device's, in milliseconds: lines are dated by the bench's clock, whatever this
 * device's says. Measured at each answer to what is sent (never at one that may have been kept on the device), and
 * remembered for the time in which there is none.
 */
const key = 'wristpin.clock';
const listeners = new Set<() => void>();
let aheadMs = Number(remembered(key) ?? 0) || 0;

/** An answer's clock was read somewhere between sending and receiving: what it says is good to half of that. */
export function measureClock(bench: string | null, sentMs: number, gotMs: number): void {
  const read = Date.parse(bench ?? '');
  const unsureMs = (gotMs - sentMs) / 2;
  if (Number.isNaN(read) || unsureMs < 0) return; // it was set while we waited
  const ahead = Math.round(read - (sentMs + gotMs) / 2);
  if (Math.abs(ahead - aheadMs) <= unsureMs + agreeMs) return;
  aheadMs = Math.abs(ahead) <= unsureMs + agreeMs ? 0 : ahead;
  remember(key, aheadMs === 0 ? undefined : String(aheadMs));
  for (const tell of listeners) tell();
}

/** Nobody would call two clocks different that are this near. */
const agreeMs = 250;

/** What time it is at the bench. */
export const benchNow = (): Date => new Date(Date.now() + aheadMs);

/** How far this device's clock is behind the bench's, in milliseconds; less than nothing when it is ahead. */
export const useClockBehind = (): number =>
  useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => aheadMs,
  );
