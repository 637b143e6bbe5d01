// One command of this folder installs or builds at a time; another that comes meanwhile waits and finds it done.
import { createHash } from 'node:crypto';
import { rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir, uptime } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { readStamp, root } from './lib.mjs';

/** Beside the folder, not in it: nothing may be there yet, and an install empties what is. */
export const placeOf = (folder) =>
  join(tmpdir(), `wristpin-${createHash('sha256').update(folder).digest('hex').slice(0, 16)}.busy`);

/** Runs `act` when no other process of this folder is within its own; one that was killed there is in nobody's way. */
export async function oneAtATime(act, { folder = root, say = console.log } = {}) {
  const place = placeOf(folder);
  for (let tries = 0; !takes(place); tries += 1) {
    if (tries === 0) say('Another command of this folder is installing or building: waiting for it …');
    await pause(200);
  }
  try {
    return await act();
  } finally {
    rmSync(place, { force: true });
  }
}

function takes(place) {
  try {
    writeFileSync(place, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
  }
  const holder = readStamp(place);
  const left = holder !== '' && (!isAlive(Number(holder)) || isOld(place));
  if (left && readStamp(place) === holder) rmSync(place, { force: true });
  return false;
}

const longestSeconds = 20 * 60;

/** Older than the longest install, or than this start of the computer: its number may be another program's by now. */
function isOld(place) {
  const { mtimeMs = Date.now() } = statSync(place, { throwIfNoEntry: false }) ?? {};
  return Date.now() - mtimeMs > 1000 * Math.min(longestSeconds, uptime());
}

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}
