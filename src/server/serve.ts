import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { getRequestListener, RequestError } from '@hono/node-server';
import { createApp } from './app.js';
import { calledInNetwork } from './door.js';
import type { ErrorAnswer } from './error.js';
import { nothingRuns } from './headers.js';
import { speakEncryptedToo } from './lines.js';
import type { Parts } from './parts.js';

export interface Running {
  readonly port: number;
  readonly url: string;
  /** where paired devices of the shop's network find it */
  readonly networkUrls: readonly string[];
  /** Lets open pages go, answers what is under way, then stops listening. The store stays open for its owner. */
  readonly stop: () => Promise<void>;
}

/** Only this computer can reach it. */
const loopback = '127.0.0.1';
const everyAddress = '0.0.0.0';
const longestAnswerMs = 10_000;

/**
 * Opens the application on a port of this computer, and of the shop's network where `parts` names one; 0 takes any
 * free port. Rejects with EADDRINUSE when it is taken.
 */
export async function serve(parts: Parts, port: number): Promise<Running> {
  const app = await createApp(parts);
  const listener = getRequestListener(app.http.fetch as Parameters<typeof getRequestListener>[0], {
    // A refused upload is read to its end and thrown away by Node itself: a browser that is still sending would
    // otherwise see a broken line instead of the answer.
    autoCleanupIncoming: false,
    errorHandler: (error) => unreadable(error, parts.log),
  });
  const server = createServer(listener);
  let stopRenewing = () => {};
  try {
    if (parts.network?.trust)
      stopRenewing = await speakEncryptedToo(
        server,
        parts.network,
        parts.network.trust,
        parts.clock,
        parts.log,
      );
    await listening(server, port, parts.network ? everyAddress : loopback);
  } catch (error) {
    stopRenewing();
    app.end();
    throw error;
  }
  const { port: taken } = server.address() as AddressInfo;
  return {
    port: taken,
    url: `http://${loopback}:${taken}`,
    networkUrls: (parts.network ? calledInNetwork(parts.network) : []).map(
      (name) => `${parts.network?.trust ? 'https' : 'http'}://${name}:${taken}`,
    ),
    stop: () => {
      stopRenewing();
      return stop(server, app.end);
    },
  };
}

/** What never reached the application: a Host or a path that is none. */
function unreadable(error: unknown, log: (line: string) => void): Response {
  const badRequest = error instanceof RequestError;
  if (!badRequest) log(`a request was lost: ${String(error)}`);
  const code = badRequest ? 'bad-request' : 'failed';
  const message = 'The request cannot be read: its address is none. Nothing was stored.';
  const body: ErrorAnswer = { error: { code, message } };
  const headers = { 'Content-Security-Policy': nothingRuns, 'X-Content-Type-Options': 'nosniff' };
  return Response.json(body, { status: badRequest ? 400 : 500, headers });
}

function listening(server: Server, port: number, address: string): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, address, () => resolve());
  });
}

function stop(server: Server, endPages: () => void): Promise<void> {
  endPages();
  return new Promise((resolve) => {
    const late = setTimeout(() => server.closeAllConnections(), longestAnswerMs);
    const idle = setInterval(() => server.closeIdleConnections(), 50); // a kept line falls idle after its answer
    server.close(() => {
      clearTimeout(late);
      clearInterval(idle);
      resolve();
    });
  });
}
