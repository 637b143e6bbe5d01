import { createHash } from 'node:crypto';
import { Failed } from './command.js';

/** What tells one store from another without naming its place: the first half of the SHA-256 of that, in hex. */
export const placeMark = (name: string): string =>
  createHash('sha256').update(name).digest('hex').slice(0, 32);

const answersWithinMs = 2_000;

interface Health {
  readonly url: string;
  readonly version?: unknown;
  readonly place?: unknown;
}

/**
 * Where on this computer the same store is open already: a second start shows that page instead of being a second
 * program. All ports are asked at once.
 *
 * @throws Failed where what is open is of another version: after the folder was replaced the old program may still run
 */
export async function openAlready(
  place: string,
  version: string,
  ports: readonly number[],
): Promise<string | undefined> {
  const heard = await Promise.all(ports.map((port) => healthAt(`http://127.0.0.1:${port}`)));
  const same = heard.find((health) => health.place === place);
  if (same && same.version !== version)
    throw new Failed(
      `Wristpin ${same.version} is still open at ${same.url}. Close it first, then start version ${version}.`,
    );
  return same?.url;
}

/** Nothing there, another program or one that hangs says nothing of a store. */
async function healthAt(url: string): Promise<Health> {
  try {
    const answer = await fetch(`${url}/api/health`, { signal: AbortSignal.timeout(answersWithinMs) });
    return { ...((await answer.json()) as object), url };
  } catch {
    return { url };
  }
}
