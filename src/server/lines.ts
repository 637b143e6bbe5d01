import type { Server } from 'node:http';
import type { Socket } from 'node:net';
import { createServer, type TLSSocket } from 'node:tls';
import { calledInNetwork, type Network } from './door.js';
import type { Leaf, Trust } from './trust.js';

/** The first byte of a TLS record that opens a line: a handshake (RFC 8446, section 5.1). No HTTP request begins so. */
const handshake = 22;
const silentMs = 15_000;
const lookMs = 10_000;
const renewBeforeMs = 30 * 24 * 3600_000;

/**
 * Lets one port speak plain and encrypted, so that every address of the bench is one address: the first byte that comes
 * tells which. The bench's certificate is made anew as soon as it is called otherwise, or near its end. Gives the way to
 * stop.
 */
export async function speakEncryptedToo(
  server: Server,
  network: Network,
  trust: Trust,
  clock: () => Date,
  log: (line: string) => void,
): Promise<() => void> {
  const names = () => ['127.0.0.1', '::1', ...calledInNetwork(network)];
  const made = async () => ({ names: names().join(' '), leaf: await trust.leaf(names(), clock()) });
  let now = await made();
  const encrypted = createServer({ ...asOptions(now.leaf), handshakeTimeout: silentMs });
  const renew = async () => {
    const due = now.leaf.until.getTime() - clock().getTime() < renewBeforeMs;
    if (!due && now.names === names().join(' ')) return;
    now = await made();
    encrypted.setSecureContext(asOptions(now.leaf));
  };
  const complain = (error: unknown) =>
    log(`The bench’s certificate could not be made anew, and it is tried again: ${String(error)}`);
  const renewing = setInterval(() => void renew().catch(complain), lookMs);
  renewing.unref();
  const plain = server.listeners('connection') as ((line: Socket | TLSSocket) => void)[];
  const speak = (line: Socket | TLSSocket) => plain.forEach((each) => void each.call(server, line));
  encrypted.on('secureConnection', speak);
  encrypted.on('tlsClientError', (_error, line) => line.destroy()); // a phone that does not trust it yet hangs up
  server.removeAllListeners('connection');
  server.on('connection', (line: Socket) => {
    line.setTimeout(silentMs, () => line.destroy());
    line.on('error', () => line.destroy());
    line.once('data', (first: Buffer) => {
      line.pause();
      line.setTimeout(0);
      line.removeAllListeners('timeout');
      line.unshift(first);
      if (first[0] === handshake) encrypted.emit('connection', line);
      else speak(line);
      process.nextTick(() => line.resume());
    });
  });
  return () => clearInterval(renewing);
}

const asOptions = ({ key, cert }: Leaf) => ({ key, cert, minVersion: 'TLSv1.2' as const });
