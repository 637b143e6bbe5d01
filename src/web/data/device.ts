import { useSyncExternalStore } from 'react';
import type { UnitSystem } from '../../quantity/index.js';
import { remember, remembered } from './remember.js';

/** What this device remembers for itself: who writes, which units come first, day or night. Never part of the log. */
export interface Device {
  readonly by: string;
  readonly system?: UnitSystem;
  readonly theme: 'auto' | 'day' | 'night';
}

const key = 'wristpin.device';
const listeners = new Set<() => void>();
let device: Device = load();

function load(): Device {
  const fallback: Device = { by: 'bench', theme: 'auto' };
  try {
    return { ...fallback, ...(JSON.parse(remembered(key) ?? '{}') as Partial<Device>) };
  } catch {
    return fallback; // what another version wrote is no reason not to open
  }
}

export function changeDevice(change: Partial<Device>): void {
  device = { ...device, ...change };
  remember(key, JSON.stringify(device));
  applyTheme();
  for (const tell of listeners) tell();
}

export const thisDevice = (): Device => device;

export function useDevice(): Device {
  return useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => device,
  );
}

export function applyTheme(): void {
  const { theme } = device;
  if (theme === 'auto') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
}
