import type { HttpBindings } from '@hono/node-server';
import type { MiddlewareHandler } from 'hono';
import { ApiError } from './error.js';

/** Who stands at the door. So far only the bench computer itself is let in, and it is asked nothing. */
export interface Visitor {
  readonly place: 'this computer';
}

export interface AtTheDoor {
  readonly method: string;
  /** the port that the request came in on */
  readonly port: number;
  readonly header: (name: string) => string | undefined;
}

const ourNames = ['localhost', '127.0.0.1', '[::1]'];
const readingMethods = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Decides who a request comes from, or refuses it.
 *
 * The server listens on loopback, but a page of any site, open in the same browser, can send requests there: under a
 * name of its own that resolves to 127.0.0.1 (then Host is not ours), or across origins (then Origin or
 * Sec-Fetch-Site say so; a browser sets them and a page cannot). A command sends neither and is let in.
 *
 * @throws ApiError 403
 */
export function whoIsThis(request: AtTheDoor): Visitor {
  const host = request.header('host')?.toLowerCase();
  if (host === undefined || !hosts(request.port).includes(host)) throw wrongHost(request.port);
  if (readingMethods.has(request.method)) return { place: 'this computer' };
  const origin = request.header('origin');
  if (origin !== undefined && origin !== `http://${host}`) throw wrongOrigin();
  const site = request.header('sec-fetch-site');
  if (site !== undefined && site !== 'same-origin' && site !== 'none') throw wrongOrigin();
  return { place: 'this computer' };
}

export type DoorEnv = { Bindings: HttpBindings; Variables: { visitor: Visitor } };

export function door(): MiddlewareHandler<DoorEnv> {
  return async (c, next) => {
    const port = c.env.incoming.socket.localPort ?? 0;
    c.set('visitor', whoIsThis({ method: c.req.method, port, header: (name) => c.req.header(name) }));
    await next();
  };
}

function hosts(port: number): string[] {
  const withPort = ourNames.map((name) => `${name}:${port}`);
  return port === 80 ? [...ourNames, ...withPort] : withPort;
}

function wrongHost(port: number): ApiError {
  return new ApiError(
    403,
    'wrong-host',
    `Wristpin answers on this computer only, under its own address: open http://127.0.0.1:${port} instead.`,
  );
}

function wrongOrigin(): ApiError {
  return new ApiError(
    403,
    'wrong-origin',
    'Another web page tried to write to the shop’s log. It was refused and nothing was changed.',
  );
}
