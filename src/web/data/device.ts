import { useSyncExternalStore } from 'react';
import type { UnitSystem } from '../../quantity/index.js';
import { remember, remembered } from './remember.js';

/** On what this device's printer prints labels; width and length as they were typed. */
export interface LabelPaper {
  readonly paper: 'letter' | 'a4' | 'roll';
  readonly width: string;
  readonly length: string;
}

/** What this device remembers for itself: who writes, which units come first, day or night. Never part of the log. */
export interface Device {
  /** the person; nobody in particular when left out */
  readonly by?: string;
  /** under which it is paired; none on the bench computer */
  readonly name?: string;
  readonly system?: UnitSystem;
  readonly theme: 'auto' | 'day' | 'night';
  readonly labels?: LabelPaper;
  /** a trial that the person switched on: what is said while the pedal is held answers the question in hand */
  readonly spokenAnswers?: boolean;
  /** and is written without a tap where both ears heard the same */
  readonly answersWithoutTap?: boolean;
}

const key = 'wristpin.device';
const listeners = new Set<() => void>();
let device: Device = load();

function load(): Device {
  const fallback: Device = { theme: 'auto' };
  try {
    return { ...fallback, ...(JSON.parse(remembered(key) ?? '{}') as Partial<Device>) };
  } catch {
    return fallback; // what another version wrote is no reason not to open
  }
}

export function changeDevice(change: { [K in keyof Device]?: Device[K] | undefined }): void {
  device = { ...device, ...change } as Device;
  remember(key, JSON.stringify(device));
  applyTheme();
  for (const tell of listeners) tell();
}

export const thisDevice = (): Device => device;

/** What stands beside every line written here: the person where one is named, and which device of the shop it was. */
export function signature({ by, name }: Device = device): string {
  const person = by === 'bench' ? undefined : by; // what an earlier version put there for nobody
  return [person, name].filter(Boolean).join(', ') || 'bench';
}

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
