import { useSyncExternalStore } from 'react';
import { measureClock } from './bench-clock.js';
import { remember, remembered } from './remember.js';

/**
 * How this page reaches the bench: at its own address, and where that is gone, to send what was written, at any other that
 * the bench was called by when it was last heard. The browser keeps the device's cookie back there; a token that is good for
 * sending alone goes along.
 */
interface Elsewhere {
  readonly origins: readonly string[];
  readonly carry: string;
}

const key = 'wristpin.elsewhere';
/** To find out that nobody answers at an address must not take the time in which another would have. */
const dialMs = 4_000;

export function knowElsewhere(found: Elsewhere | undefined): void {
  remember(key, found && JSON.stringify(found));
}

function elsewhere(): Elsewhere | undefined {
  try {
    return JSON.parse(remembered(key) ?? 'null') ?? undefined;
  } catch {
    return undefined; // what another version wrote
  }
}

/** What may be sent with that token. */
const isCarried = (path: string): boolean => /^\/api\/(entries$|pictures\/|devices\/over$)/.test(path);

let arrivedAt: string | undefined;
const listeners = new Set<() => void>();

/**
 * Waits `longestMs` at most at each address, and where the last thing that was sent went elsewhere, begins there.
 * @throws TypeError or a DOMException when nobody answers, as `fetch` does
 */
export async function fetchFromBench(path: string, init: RequestInit, longestMs: number): Promise<Response> {
  const carried = isCarried(path);
  if (carried && arrivedAt !== undefined) {
    const answer = await fetchElsewhere(path, init, longestMs);
    if (answer) return answer;
  }
  const sent = Date.now();
  try {
    const answer = await fetch(path, { ...init, signal: AbortSignal.timeout(longestMs) });
    if (isOfStranger(answer)) throw new TypeError('This is not the bench.');
    // only what was sent: an answer to a question may be one that this device has kept
    if (init.method === 'POST') measureClock(answer.headers.get('Wristpin-Clock'), sent, Date.now());
    arrive(undefined);
    return answer;
  } catch (error) {
    const answer = carried ? await fetchElsewhere(path, init, longestMs) : undefined;
    if (answer) return answer;
    throw error;
  }
}

/** The bench answers in JSON. Whoever was given its address, or a network that wants a login first, answers with a page. */
const isOfStranger = ({ headers }: Response): boolean =>
  headers.get('content-type')?.startsWith('text/html') ?? false;

async function fetchElsewhere(
  path: string,
  init: RequestInit,
  longestMs: number,
): Promise<Response | undefined> {
  const { origins, carry } = otherOrigins();
  for (const origin of origins) {
    if (!(await answers(origin, carry))) continue;
    try {
      const headers = { ...(init.headers as Record<string, string>), authorization: `Bearer ${carry}` };
      const signal = AbortSignal.timeout(longestMs);
      const answer = await fetch(origin + path, { ...init, headers, signal, credentials: 'omit' });
      arrive(origin);
      return answer;
    } catch {
      // the next one
    }
  }
  return undefined;
}

/** Where else the bench may be, the place where it was found last first. */
function otherOrigins(): Elsewhere {
  const { origins, carry } = elsewhere() ?? { origins: [], carry: '' };
  const own = globalThis.location?.origin;
  // a page that came encrypted may not ask for anything that is not
  const others = origins.filter(
    (to) => own !== undefined && to !== own && (!own.startsWith('https:') || to.startsWith('https:')),
  );
  return { origins: others.sort((a, b) => Number(b === arrivedAt) - Number(a === arrivedAt)), carry };
}

let looking: Promise<boolean> | undefined;

/** Whether the bench, of which nothing was heard at this page's own address, takes at another one what is written here. */
export function isElsewhere(): Promise<boolean> {
  looking ??= lookElsewhere().finally(() => {
    looking = undefined;
  });
  return looking;
}

async function lookElsewhere(): Promise<boolean> {
  const { origins, carry } = otherOrigins();
  for (const origin of origins)
    if (await answers(origin, carry)) {
      arrive(origin);
      return true;
    }
  arrive(undefined);
  return false;
}

function arrive(at: string | undefined): void {
  if (at === arrivedAt) return;
  arrivedAt = at;
  for (const tell of listeners) tell();
}

/** The address of the bench where what is sent arrives, while it is not this page's own. */
export const useMovedTo = (): string | undefined =>
  useSyncExternalStore(
    (tell) => {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    () => arrivedAt,
  );

/** Whether the bench is there and knows this device: what is sent must not be thrown at a stranger. */
async function answers(origin: string, carry: string): Promise<boolean> {
  try {
    const headers = { authorization: `Bearer ${carry}`, 'content-type': 'application/json' };
    const body = JSON.stringify({ entries: [] });
    const signal = AbortSignal.timeout(dialMs);
    const sent = { method: 'POST', headers, body, signal, credentials: 'omit' } as const;
    const answer = await fetch(`${origin}/api/entries`, sent);
    return answer.ok && Array.isArray(((await answer.json()) as { stored?: unknown }).stored);
  } catch {
    return false;
  }
}
