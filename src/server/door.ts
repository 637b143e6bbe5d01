import { networkInterfaces } from 'node:os';
import type { HttpBindings } from '@hono/node-server';
import type { Context, MiddlewareHandler } from 'hono';
import { getCookie } from 'hono/cookie';
import type { Device } from '../store/index.js';
import { ApiError } from './error.js';
import type { Pairing } from './pairing.js';

/** Who stands at the door: the bench computer itself, which is asked nothing, or a device that was let in. */
export type Visitor =
  | { readonly place: 'this computer' }
  | { readonly place: 'shop’s network'; readonly device: Device };

/** The shop's network, where Wristpin was opened to it. */
export interface Network {
  /** this computer's own addresses there, as they stand now */
  readonly addresses: () => readonly string[];
}

export interface AtTheDoor {
  readonly method: string;
  /** the port that the request came in on */
  readonly port: number;
  /** address of whoever asks */
  readonly from: string;
  readonly header: (name: string) => string | undefined;
}

const ourNames = ['localhost', '127.0.0.1', '[::1]'];
const readingMethods = new Set(['GET', 'HEAD', 'OPTIONS']);

/** The name of the cookie that holds a device's token. */
export const deviceCookie = 'wristpin-device';

/** Where a code is redeemed: the one place that is open to a device that is not paired. */
export const pairingPath = '/pair/';

/**
 * Decides from where a request comes, or refuses it.
 *
 * A page of any site, open in the same browser, can send requests here: under a name of its own that resolves to our
 * address (then Host is not ours), or across origins (then Origin or Sec-Fetch-Site say so; a browser sets them and a
 * page cannot). A command sends neither and is let in. From the network nobody may call himself by this computer's
 * own names.
 *
 * @throws ApiError 403
 */
export function placeOf(request: AtTheDoor, network?: Network): Visitor['place'] {
  const host = request.header('host')?.toLowerCase();
  const place = calledBy(host, request, network);
  if (place === undefined) throw wrongHost(request.port);
  if (readingMethods.has(request.method)) return place;
  const origin = request.header('origin');
  if (origin !== undefined && origin !== `http://${host}`) throw wrongOrigin();
  const site = request.header('sec-fetch-site');
  if (site !== undefined && site !== 'same-origin' && site !== 'none') throw wrongOrigin();
  return place;
}

function calledBy(
  host: string | undefined,
  { port, from }: AtTheDoor,
  network: Network | undefined,
): Visitor['place'] | undefined {
  if (host === undefined) return undefined;
  if (isLoopback(from) && withPort(ourNames, port).includes(host)) return 'this computer';
  if (network && withPort(network.addresses(), port).includes(host)) return 'shop’s network';
  return undefined;
}

const isLoopback = (address: string): boolean => /^(::ffff:)?127\.|^::1$/.test(address);

function withPort(names: readonly string[], port: number): string[] {
  const full = names.map((name) => `${name}:${port}`);
  return port === 80 ? [...names, ...full] : full;
}

export type DoorEnv = { Bindings: HttpBindings; Variables: { visitor: Visitor } };

export function door(pairing: Pairing, network?: Network): MiddlewareHandler<DoorEnv> {
  return async (c, next) => {
    const { localPort = 0, remoteAddress = '' } = c.env.incoming.socket;
    const header = (name: string) => c.req.header(name);
    const place = placeOf({ method: c.req.method, port: localPort, from: remoteAddress, header }, network);
    if (place === 'this computer') c.set('visitor', { place });
    else if (!c.req.path.startsWith(pairingPath))
      c.set('visitor', { place, device: await pairedDevice(c, pairing) });
    await next();
  };
}

async function pairedDevice(c: Context<DoorEnv>, pairing: Pairing): Promise<Device> {
  const token = getCookie(c, deviceCookie);
  const device = token === undefined ? undefined : await pairing.deviceOf(token);
  if (device === undefined) throw notPaired();
  return device;
}

/** Only the bench computer itself may do this. */
export const atTheBenchOnly: MiddlewareHandler<DoorEnv> = async (c, next) => {
  if (c.get('visitor').place !== 'this computer')
    throw new ApiError(
      403,
      'bench-only',
      'Only the bench computer itself lets devices in or shuts them out.',
    );
  await next();
};

/** This computer's addresses in the networks that it is part of, IPv4. */
export const ownAddresses = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter(({ internal, family }) => !internal && family === 'IPv4')
    .map(({ address }) => address);

function wrongHost(port: number): ApiError {
  return new ApiError(
    403,
    'wrong-host',
    `Wristpin answers under its own address only: on this computer open http://127.0.0.1:${port} instead.`,
  );
}

function wrongOrigin(): ApiError {
  return new ApiError(
    403,
    'wrong-origin',
    'Another web page tried to write to the shop’s log. It was refused and nothing was changed.',
  );
}

export function notPaired(): ApiError {
  return new ApiError(
    401,
    'not-paired',
    'This device is not paired with the shop. On the bench computer open Shop, choose “Pair a phone” and scan the code.',
  );
}
