import { useSyncExternalStore } from 'react';
import type { UnitSystem } from '../../quantity/index.js';

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
    return { ...fallback, ...(JSON.parse(localStorage.getItem(key) ?? '{}') as Partial<Device>) };
  } catch {
    return fallback; // a private window without storage still works, it just forgets
  }
}

export function changeDevice(change: Partial<Device>): void {
  device = { ...device, ...change };
  try {
    localStorage.setItem(key, JSON.stringify(device));
  } catch {
    // forgets at the end of the visit
  }
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
