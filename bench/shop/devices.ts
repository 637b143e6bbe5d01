import type { Served } from './served.js';
import { jobOf, lineFor } from './years.js';

/** So many devices at once, each sending its next line when the one before was said to be saved. */
export async function devicesTogether(served: Served, devices: number, ms: number): Promise<void> {
  const until = performance.now() + ms;
  const times: number[] = [];
  const before = await served.cpuMs();
  const one = async (device: number) => {
    for (let i = 1000; performance.now() < until; i += 1) {
      const at = performance.now();
      const body = JSON.stringify({ entries: [lineFor(jobOf(2 + device), i)] });
      const response = await fetch(`${served.url}/api/entries`, { method: 'POST', body });
      await response.arrayBuffer();
      if (!response.ok) throw new Error(`a line was answered with ${response.status}`);
      times.push(performance.now() - at);
    }
  };
  await Promise.all(Array.from({ length: devices }, (_, device) => one(device)));
  const cpu = (await served.cpuMs()) - before;
  times.sort((a, b) => a - b);
  const part = (share: number) => times[Math.floor(share * times.length)]!.toFixed(0);
  console.log(
    `  ${devices} devices: ${((1000 * times.length) / ms).toFixed(0)} lines a second, half within ${part(0.5)} ms, 95 of 100 within ${part(0.95)} ms, ${(cpu / times.length).toFixed(2)} ms of processor time a line`,
  );
}
