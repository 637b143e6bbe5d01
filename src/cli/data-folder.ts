import { posix, win32 } from 'node:path';
import type { Surroundings } from './command.js';

type Here = Pick<Surroundings, 'env' | 'platform' | 'home'>;

/**
 * Where the shop's store lies when nothing else is said: in the place that the system gives programs for a person's
 * data (XDG Base Directory Specification on Linux and the like; Application Support on macOS; AppData on Windows).
 */
export function standardStoreFile(here: Here): string {
  const { join } = here.platform === 'win32' ? win32 : posix;
  return join(dataFolder(here), 'shop.db');
}

function dataFolder({ env, platform, home }: Here): string {
  if (platform === 'win32') {
    return win32.join(env.APPDATA || win32.join(home, 'AppData', 'Roaming'), 'Wristpin');
  }
  if (platform === 'darwin') return posix.join(home, 'Library', 'Application Support', 'Wristpin');
  // The specification: a relative path in XDG_DATA_HOME is to be ignored.
  const xdg = env.XDG_DATA_HOME;
  return posix.join(xdg && posix.isAbsolute(xdg) ? xdg : posix.join(home, '.local', 'share'), 'wristpin');
}
