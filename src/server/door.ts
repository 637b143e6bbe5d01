import { networkInterfaces } from 'node:os';
import type { HttpBindings } from '@hono/node-server';
import type { Context, MiddlewareHandler, Next } from 'hono';
import { getCookie } from 'hono/cookie';
import type { Device } from '../store/index.js';
import { ApiError } from './error.js';
import type { Pairing } from './pairing.js';
import type { Trust } from './trust.js';

/** Who stands at the door: the bench computer itself, which is asked nothing, or a device that was let in. */
export type Visitor =
  | { readonly place: 'this computer' }
  | { readonly place: 'shop’s network'; readonly device: Device };

/** The shop's network, where Wristpin was opened to it. */
export interface Network {
  /** this computer's own addresses there, as they stand now */
  readonly addresses: () => readonly string[];
  /** the name that it answers to there, such as "wristpin.local", while it has one */
  readonly name?: () => string | undefined;
  /** the shop's own authority, where it speaks encrypted too */
  readonly trust?: Trust;
}

/** All that the bench is called by in the shop's network, its name first. */
export function calledInNetwork({ addresses, name }: Network): string[] {
  const own = name?.();
  return [...(own === undefined ? [] : [own]), ...addresses()];
}

type Scheme = 'http' | 'https';

export interface AtTheDoor {
  readonly method: string;
  /** the port that the request came in on */
  readonly port: number;
  /** address of whoever asks */
  readonly from: string;
  readonly scheme?: Scheme;
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
  if (place !== 'this computer' && carries(request)) return place; // see `carried`
  const origin = request.header('origin');
  if (origin !== undefined && origin !== `${request.scheme ?? 'http'}://${host}`) throw wrongOrigin();
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
  if (network && withPort(calledInNetwork(network), port).includes(host)) return 'shop’s network';
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
    const request: AtTheDoor = {
      method: c.req.method,
      port: localPort,
      from: remoteAddress,
      scheme: schemeOf(c),
      header: (name: string) => c.req.header(name),
    };
    const place = placeOf(request, network);
    if (place === 'this computer') c.set('visitor', { place });
    else if (isCarryingPath(c.req.path) && (carries(request) || c.req.method === 'OPTIONS'))
      return carried(c, next, request, pairing);
    else if (!isOpenToAll(c.req.path)) c.set('visitor', { place, device: await pairedDevice(c, pairing) });
    await next();
  };
}

export const schemeOf = (c: Context<DoorEnv>): Scheme =>
  (c.env.incoming.socket as { encrypted?: boolean }).encrypted ? 'https' : 'http';

/** A code is redeemed and the shop's authority fetched by devices that are not let in yet. */
const isOpenToAll = (path: string): boolean => path.startsWith(pairingPath) || path.startsWith(trustPath);

/** Where the shop's own authority is handed out. */
export const trustPath = '/trust/';

const bearer = /^Bearer ([\w-]{40,100})$/;
const carries = ({ header }: AtTheDoor): boolean => bearer.test(header('authorization') ?? '');
const isCarryingPath = (path: string): boolean => /^\/api\/(entries$|pictures\/|devices\/over$)/.test(path);

/**
 * A page that was opened under an address which the bench no longer has sends what it wrote to another one. It is another
 * origin for the browser, which keeps the cookie back: such a page shows a token that is good for sending alone. A page of
 * another site has no such token, so its origin is not asked for.
 */
async function carried(c: Context<DoorEnv>, next: Next, request: AtTheDoor, pairing: Pairing) {
  if (c.req.method === 'OPTIONS') c.res = c.body(null, 204);
  else {
    const token = bearer.exec(request.header('authorization')!)![1]!;
    const device = await pairing.carrierOf(token);
    if (device === undefined) throw notPaired();
    c.set('visitor', { place: 'shop’s network', device });
    await next();
  }
  c.res.headers.set('Access-Control-Allow-Origin', '*'); // the token, not the origin, is what lets in; no cookie goes along
  c.res.headers.set('Access-Control-Allow-Headers', 'authorization, content-type');
  c.res.headers.set('Access-Control-Allow-Methods', 'GET, POST, PUT, PATCH');
  c.res.headers.set('Access-Control-Expose-Headers', '*');
  return c.res;
}

export async function pairedDevice(c: Context<DoorEnv>, pairing: Pairing): Promise<Device> {
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

/** Every origin under which the bench answers in the shop's network; by its name first, for that stays when addresses change. */
export function originsOf(network: Network, port: number): string[] {
  const schemes = network.trust ? ['https', 'http'] : ['http'];
  return schemes.flatMap((scheme) => calledInNetwork(network).map((name) => `${scheme}://${name}:${port}`));
}
