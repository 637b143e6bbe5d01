import {
  answerToName,
  keptTrust,
  type Network,
  ownAddresses,
  type Parts,
  type Running,
  serve as serveApp,
} from '../../server/index.js';
import { loadDemo, packaged } from '../../shopkeep/index.js';
import { type Call, type Command, Failed, flag, type Surroundings, text, WronglyCalled } from '../command.js';
import { standardStoreFile } from '../data-folder.js';
import { openAlready, placeMark } from '../open-already.js';
import { errorCode, reasonOf } from './out-file.js';
import { type OpenStore, placeOf, storeOptions, withStore } from './store-options.js';

const standardPort = 4310;
const portsTried = Array.from({ length: 20 }, (_, i) => standardPort + i);
const standardName = 'wristpin';

export const serve: Command = {
  usage: 'wristpin serve [--port N] [--browser] [--demo] [--lan [--secure]] [options]',
  options: {
    port: { type: 'string', value: 'N', help: `the port (else ${standardPort}, or the next free one)` },
    browser: { type: 'boolean', help: 'show it in the browser; where it is open already, that page' },
    demo: { type: 'boolean', help: 'load the invented job first' },
    lan: {
      type: 'boolean',
      help: 'open it to the shop’s network too, for phones paired on the Shop page',
    },
    secure: {
      type: 'boolean',
      help: 'with --lan: speak encrypted too, by an authority of the shop’s own that a phone can trust',
    },
    name: {
      type: 'string',
      value: 'NAME',
      help: `with --lan: the name in the shop’s network, “${standardName}” for ${standardName}.local`,
    },
    'no-name': { type: 'boolean', help: 'with --lan: found by its addresses alone, nothing is announced' },
    ...storeOptions,
  },
  examples: ['wristpin serve', 'wristpin serve --demo --store trial.db', 'wristpin serve --lan --secure'],
  takes: { least: 0, most: 0 },
  run: async (call, around) => {
    const port = readPort(text(call, 'port'));
    const name = readName(call);
    if (flag(call, 'browser') && port === undefined && (await showOpen(call, around))) return;
    const stopped = around.stop(); // from here on: a sign to stop that comes while it opens must not cut it off
    await withStore(call, around, 'may-begin', async (opened) => {
      if (flag(call, 'demo')) await loadDemo(opened.store, packaged().demo);
      const parts = partsOf(opened, around);
      const lan = flag(call, 'lan') ? await openNetwork(call, name, opened, around) : undefined;
      try {
        const running = await open({ ...parts, ...(lan && { network: lan.network }) }, port, around);
        sayOpen(running, opened, call, around);
        if (flag(call, 'browser')) await Promise.race([showPage(running.url, around), stopped]);
        await stopped;
        await running.stop();
      } finally {
        await lan?.stop();
      }
      around.out('Wristpin is closed.');
    });
  },
};

/** A second start with the same store: the page that is open is shown, and nothing else is begun. */
async function showOpen(call: Call, around: Surroundings): Promise<boolean> {
  const place = placeOf(call, around);
  const mark = placeMark('url' in place ? place.name : place.file);
  const url = await openAlready(mark, packaged().version, portsTried);
  if (url === undefined) return false;
  around.out(`Wristpin is open already at ${url}`);
  await showPage(url, around);
  return true;
}

async function showPage(url: string, around: Surroundings): Promise<void> {
  if (!(await around.show(url))) around.out(`No browser came up by itself: open ${url} in yours.`);
}

/** The shop's network: this computer's addresses there, its name, and where it is wanted the shop's own authority. */
async function openNetwork(
  call: Call,
  name: string,
  opened: OpenStore,
  around: Surroundings,
): Promise<{ readonly network: Network; readonly stop: () => Promise<void> }> {
  const trust = flag(call, 'secure') ? await shopTrust(opened, around) : undefined;
  const own = { addresses: ownAddresses, ...(trust && { trust }) };
  if (flag(call, 'no-name')) return { network: own, stop: async () => {} };
  const called = await answerToName(name, ownAddresses, { log: around.err });
  return { network: { ...own, name: called.name }, stop: called.stop };
}

/** Beside the store; the shop of a database elsewhere keeps it where its store would lie. */
async function shopTrust({ kind, name }: OpenStore, around: Surroundings) {
  const file = `${kind === 'sqlite' ? name : standardStoreFile(around)}.authority.pem`;
  try {
    return await keptTrust(file, around.now());
  } catch (error) {
    throw new Failed(`The shop’s authority cannot be kept in ${file}: ${reasonOf(error)}`);
  }
}

/** A label of a host's name (RFC 1123, section 2.1). */
function readName(call: Call): string {
  const name = text(call, 'name')?.toLowerCase();
  for (const option of ['secure', 'name', 'no-name'])
    if (!flag(call, 'lan') && call.values[option] !== undefined)
      throw new WronglyCalled(`--${option} goes with --lan.`);
  if (name !== undefined && !/^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?$/.test(name))
    throw new WronglyCalled(`--name wants letters, figures and hyphens, not “${name}”.`);
  return name ?? standardName;
}

function partsOf({ store, kind, name }: OpenStore, around: Surroundings): Parts {
  const { version, web, demo, fonts, reader } = packaged();
  return {
    store,
    storeKind: kind,
    place: placeMark(name),
    webRoot: web,
    demo,
    fonts,
    reader: () => reader,
    version,
    clock: around.now,
    log: around.err,
  };
}

function sayOpen(running: Running, { name }: OpenStore, call: Call, { out }: Surroundings): void {
  out(`Wristpin is open at ${running.url}`);
  if (flag(call, 'lan')) out(networkWords(running, flag(call, 'secure')));
  out(`The log is kept in ${name}`);
  if (flag(call, 'demo')) out('The invented job is loaded; “wristpin demo remove” takes it out again.');
  out(flag(call, 'browser') ? 'Closing this window or Ctrl-C closes it.' : 'Ctrl-C closes it.');
}

/** Plain HTTP: who listens in on the shop’s own network can read along, and the person must know. */
function networkWords({ networkUrls }: Running, secure: boolean): string {
  if (networkUrls.length === 0)
    return 'This computer is in no network just now; a phone can be paired once it is.';
  const how = secure
    ? 'A phone that trusts the shop’s authority speaks encrypted; the Shop page says how.'
    : 'Use it in a network you trust: what is sent is not encrypted. With --secure it is.';
  return `Paired phones find it at ${networkUrls.join(' or ')}; pair one on the Shop page. ${how}`;
}

/** A port that was asked for is taken or refused; the standard one gives way to the next free. */
async function open(parts: Parts, asked: number | undefined, around: Surroundings): Promise<Running> {
  if (asked !== undefined) return onPort(parts, asked);
  for (const port of portsTried) {
    const running = await onPort(parts, port).catch(unlessTaken);
    if (!running) continue;
    if (port !== standardPort) around.out(`Port ${standardPort} is taken, so it is ${port}.`);
    return running;
  }
  throw new Failed(
    `The ports ${standardPort} to ${portsTried.at(-1)} are all taken. Name another with --port.`,
  );
}

class PortTaken extends Failed {}

async function onPort(parts: Parts, port: number): Promise<Running> {
  try {
    return await serveApp(parts, port);
  } catch (error) {
    if (errorCode(error) === 'EADDRINUSE') {
      throw new PortTaken(`Port ${port} is taken by another program. Name another with --port.`);
    }
    if (errorCode(error) === 'EACCES') {
      throw new Failed(`Port ${port} is reserved for the system. Name one above 1023 with --port.`);
    }
    throw error;
  }
}

function unlessTaken(error: unknown): undefined {
  if (error instanceof PortTaken) return undefined;
  throw error;
}

function readPort(written: string | undefined): number | undefined {
  if (written === undefined) return undefined;
  const port = /^\d{1,5}$/.test(written) ? Number(written) : Number.NaN;
  if (port <= 65_535) return port;
  throw new WronglyCalled(`--port wants a whole number from 0 to 65535, not “${written}”.`);
}
