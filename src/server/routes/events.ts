import { Hono } from 'hono';
import { type SSEMessage, type SSEStreamingApi, streamSSE } from 'hono/streaming';
import type { Store } from '../../store/index.js';
import type { DoorEnv } from '../door.js';
import type { Keeping, KeepingWatch } from '../keeping.js';
import type { Change, News } from '../news.js';
import type { Pairing } from '../pairing.js';

const standardHeartbeatMs = 20_000;

/**
 * Server-sent events: `changed` with the jobs that changed, `learned` when what the shop's jobs teach did, `keeping`
 * with whether the store keeps what is written, whenever that changes. The first says where the store stands; a page that lost
 * the line sends the last id it saw (browsers do so by themselves) and is told what changed since. A comment now and
 * then keeps whatever stands between from closing a silent line.
 */
export function eventRoutes(
  store: Store,
  news: News,
  pairing: Pairing,
  keeping: KeepingWatch,
  heartbeatMs = standardHeartbeatMs,
): Hono<DoorEnv> {
  const app = new Hono<DoorEnv>();
  app.get('/', (c) => {
    const lastSeen = c.req.header('last-event-id');
    const visitor = c.get('visitor');
    return streamSSE(c, async (stream) => {
      const write = oneAfterTheOther(stream);
      const send = (change: Change) => write(changeEvent(change));
      const say = (now: Keeping) => write({ event: 'keeping', data: JSON.stringify(now) });
      const stopListening = news.listen(send); // before the first look, so that nothing falls between
      const stopHearing = keeping.listen(say);
      const heartbeat = setInterval(() => void stream.write(': still here\n\n'), heartbeatMs);
      try {
        if (!keeping.now.ok) say(keeping.now); // a page takes it for kept until it is told otherwise
        send(await firstChange(store, lastSeen));
        await ended(stream, news, (end) =>
          visitor.place === 'this computer' ? () => {} : pairing.onShutOut(visitor.device.id, end),
        );
      } finally {
        clearInterval(heartbeat);
        stopListening();
        stopHearing();
      }
    });
  });
  return app;
}

async function firstChange(store: Store, lastSeen: string | undefined): Promise<Change> {
  const head = await store.head();
  if (lastSeen === undefined || !/^\d{1,15}$/.test(lastSeen)) return { seq: head, jobs: [] };
  // A store that was restored may stand before what the page saw: then everything may have changed.
  if (Number(lastSeen) > head) return { seq: head, jobs: (await store.jobs()).map(({ job }) => job) };
  return store.changedSince(Number(lastSeen));
}

const changeEvent = (change: Change): SSEMessage => ({
  event: change.learned ? 'learned' : 'changed',
  id: String(change.seq),
  data: JSON.stringify(change),
});

function oneAfterTheOther(stream: SSEStreamingApi): (message: SSEMessage) => void {
  let last = Promise.resolve();
  return (message) => {
    last = last.then(() => stream.writeSSE(message));
  };
}

/** When the page has gone, its device is shut out or the server stops. */
function ended(
  stream: SSEStreamingApi,
  news: News,
  onShutOut: (end: () => void) => () => void,
): Promise<void> {
  return new Promise((resolve) => {
    const end = () => {
      for (const takeBack of takeBacks) takeBack();
      resolve();
    };
    const takeBacks = [onShutOut(end), news.onEnd(resolve)];
    stream.onAbort(end);
  });
}
