import type { AtJob } from './job.js';

/** One of the first looks, in its question. */
export async function look(at: AtJob, check: string | RegExp, seen: string): Promise<void> {
  await at.press(check, at.page.getByRole('region', { name: 'First looks' }));
  await at.answer(seen);
}
