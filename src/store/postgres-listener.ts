import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import type { Bell } from './bell.js';

/** One database, one log: the channel needs no name of its own. */
export const channel = 'wristpin';
const againAfterMs = 1_000;

export interface Listener {
  stop(): Promise<void>;
}

/**
 * Rings the bell for what any server appended. When the connection breaks, it is made anew, tried every second, and
 * what was appended in between is rung for then: a notification sent while nobody listens is lost.
 */
export async function listen(config: pg.ClientConfig, bell: Bell): Promise<Listener> {
  const stopping = new AbortController();
  let heard = 0;
  const hear = (head: number) => {
    heard = Math.max(heard, head);
    bell.ring(head);
  };
  const begin = async () => {
    const line = await connect(config, hear);
    if (line.head > heard) hear(line.head);
    return line;
  };
  let line = await begin();
  const following = (async () => {
    while (!stopping.signal.aborted) {
      await line.ended;
      line = (await again(begin, stopping.signal)) ?? line;
    }
  })();
  return {
    async stop() {
      stopping.abort();
      await line.end();
      await following;
    },
  };
}

interface Line {
  readonly head: number;
  readonly ended: Promise<void>;
  end(): Promise<void>;
}

async function connect(config: pg.ClientConfig, hear: (head: number) => void): Promise<Line> {
  const client = new pg.Client(config);
  const ended = new Promise<void>((resolve) => client.once('end', resolve));
  client.on('error', () => {}); // the end follows, and is what counts
  client.on('notification', (note) => hear(Number(note.payload)));
  try {
    await client.connect();
    await client.query(`listen ${channel}`);
    // asked after listening: what comes between the two is heard twice, not missed
    const { rows } = await client.query('select coalesce(max(seq), 0) as head from entries');
    return { head: Number(rows[0].head), ended, end: () => client.end() };
  } catch (error) {
    await client.end().catch(() => {});
    throw error;
  }
}

/** A new line as soon as there can be one; none when it is stopped before. */
async function again(begin: () => Promise<Line>, stopped: AbortSignal): Promise<Line | undefined> {
  while (!stopped.aborted) {
    try {
      await pause(againAfterMs, undefined, { signal: stopped, ref: false });
      const line = await begin();
      if (stopped.aborted) await line.end();
      return line;
    } catch {
      // the server is still away, or we were stopped
    }
  }
  return undefined;
}
