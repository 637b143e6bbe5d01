import { spawnSync } from 'node:child_process';
import { appendFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { writeWav } from '../../src/listen/write-wav.js';
import { engineSound } from '../../test/listen/engine-sound.js';

const headBytes = 44;

/** A recording of an engine that swings and is set anew every half minute: two minutes of it over and over. */
function madeRecording(file: string, minutes: number): void {
  const two = writeWav(
    engineSound({
      strokes: 4,
      rpm: (t) => 3200 + 150 * Math.sin(t / 7) + (Math.floor(t / 30) % 2) * 400,
      seconds: 120,
      sampleRate: 44_100,
      seed: 3,
      snrDb: 12,
    }),
  );
  const times = minutes / 2;
  const bytes = times * (two.length - headBytes);
  const head = two.slice(0, headBytes);
  new DataView(head.buffer).setUint32(4, headBytes - 8 + bytes, true);
  new DataView(head.buffer).setUint32(40, bytes, true);
  writeFileSync(file, head);
  for (let n = 0; n < times; n += 1) appendFileSync(file, two.subarray(headBytes));
}

const tellsAtItsEnd =
  'data:text/javascript,process.on("exit",()=>console.error(JSON.stringify(process.resourceUsage())))';

/** What the command itself takes, from its start to its end, for a recording of so many minutes. */
export function listenedTo(minutes: number): { readonly cpuS: number; readonly peakMb: number } {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-listen-'));
  try {
    const file = join(folder, 'run.wav');
    madeRecording(file, minutes);
    const { status, stderr } = spawnSync(
      process.execPath,
      ['--import', tellsAtItsEnd, resolve('bin/wristpin.js'), 'listen', file, '--strokes', '4', '--json'],
      { encoding: 'utf8', maxBuffer: 2 ** 28 },
    );
    if (status !== 0) throw new Error(stderr);
    const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(stderr.trim().split('\n').at(-1)!);
    return { cpuS: (userCPUTime + systemCPUTime) / 1e6, peakMb: maxRSS / 1024 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
