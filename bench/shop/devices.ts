import type { Served } from './served.js';
import { jobOf, lineFor } from './years.js';

/**
 * So many devices at once, each sending its next line when the one before was said to be saved. Then every line that was
 * said to be saved is looked for in the store. @throws Error when one is lost or there twice
 */
export async function devicesTogether(served: Served, devices: number, ms: number): Promise<void> {
  const until = performance.now() + ms;
  const times: number[] = [];
  const saved = new Map<string, string[]>();
  const before = await served.cpuMs();
  const one = async (device: number) => {
    for (let i = 1000; performance.now() < until; i += 1) {
      const at = performance.now();
      const line = lineFor(jobOf(2 + device), i);
      const body = JSON.stringify({ entries: [line] });
      const response = await fetch(`${served.url}/api/entries`, { method: 'POST', body });
      await response.arrayBuffer();
      if (!response.ok) throw new Error(`a line was answered with ${response.status}`);
      times.push(performance.now() - at);
      const mine = saved.get(line.job);
      if (mine) mine.push(line.id);
      else saved.set(line.job, [line.id]);
    }
  };
  await Promise.all(Array.from({ length: devices }, (_, device) => one(device)));
  const cpu = (await served.cpuMs()) - before;
  times.sort((a, b) => a - b);
  const part = (share: number) => times[Math.floor(share * times.length)]!.toFixed(0);
  console.log(
    `  ${devices} devices: ${((1000 * times.length) / ms).toFixed(0)} lines a second, half within ${part(0.5)} ms, 95 of 100 within ${part(0.95)} ms, ${(cpu / times.length).toFixed(2)} ms of processor time a line`,
  );
  await requireKept(served, saved);
  console.log(`  each of the ${times.length} lines that were said to be saved is there, once`);
}

async function requireKept(served: Served, saved: ReadonlyMap<string, readonly string[]>): Promise<void> {
  for (const [job, ids] of saved) {
    const answer = await fetch(`${served.url}/api/jobs/${job}/entries`);
    const { entries } = (await answer.json()) as { entries: { id: string }[] };
    const there = new Map<string, number>();
    for (const { id } of entries) there.set(id, (there.get(id) ?? 0) + 1);
    const wrong = ids.filter((id) => there.get(id) !== 1);
    if (wrong.length > 0) throw new Error(`${wrong.length} lines of ${job} are lost or there twice`);
  }
}
