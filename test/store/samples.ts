import { seeded as random } from '../../src/infer/index.js';

export { random };

import { createHash } from 'node:crypto';
import type { RawEntry } from '../../src/job/index.js';
import type { PictureFacts } from '../../src/store/index.js';

/** A clock that stands still is enough for a store: it only stamps. */
export const now = () => '2026-03-02T09:15:00.000Z';

export function entry(
  id: string,
  job: string,
  kind = 'note',
  body: unknown = { words: `words of ${id}` },
): RawEntry {
  return { id, job, at: '2026-03-02T10:15:00+01:00', by: 'bench', kind, v: 1, body };
}

export function opening(job: string, more: { invented?: boolean } = {}): RawEntry {
  return entry(`${job}-open`, job, 'open', { tag: 7, title: 'tiller engine', ...more });
}

export function photograph(id: string, job: string, sha256: string): RawEntry {
  const picture = { sha256, mime: 'image/jpeg', bytes: 1, width: 4, height: 3 };
  return entry(id, job, 'photograph', {
    picture,
    caption: 'flywheel key',
    stage: 'teardown',
    when: 'before',
  });
}

/** The same bytes for the same seed; the store never looks into a picture. */
export function pictureBytes(length: number, seed = 1): Uint8Array {
  const bytes = new Uint8Array(length);
  const next = random(seed);
  for (let i = 0; i < length; i++) bytes[i] = next() * 256;
  return bytes;
}

export function factsOf(bytes: Uint8Array): PictureFacts {
  return {
    sha256: createHash('sha256').update(bytes).digest('hex'),
    mime: 'image/jpeg',
    width: 4000,
    height: 3000,
  };
}

export async function until(holds: () => boolean, timeoutMs = 5_000): Promise<void> {
  for (let waited = 0; !holds(); waited += 10) {
    if (waited > timeoutMs) throw new Error(`did not come true within ${timeoutMs} ms: ${holds}`);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}
