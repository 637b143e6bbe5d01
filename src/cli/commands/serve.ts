import { ownAddresses, type Parts, type Running, serve as serveApp } from '../../server/index.js';
import { loadDemo, packaged } from '../../shopkeep/index.js';
import { type Call, type Command, Failed, flag, type Surroundings, text, WronglyCalled } from '../command.js';
import { errorCode } from './out-file.js';
import { type OpenStore, storeOptions, withStore } from './store-options.js';

const standardPort = 4310;
const portsTried = 20;

export const serve: Command = {
  usage: 'wristpin serve [--port N] [--demo] [--lan] [options]',
  options: {
    port: { type: 'string', value: 'N', help: `the port (else ${standardPort}, or the next free one)` },
    demo: { type: 'boolean', help: 'load the invented job first' },
    lan: {
      type: 'boolean',
      help: 'open it to the shop’s network too, for phones paired on the Shop page',
    },
    ...storeOptions,
  },
  examples: ['wristpin serve', 'wristpin serve --demo --store trial.db', 'wristpin serve --lan'],
  takes: { least: 0, most: 0 },
  run: async (call, around) => {
    const port = readPort(text(call, 'port'));
    const stopped = around.stop(); // from here on: a sign to stop that comes while it opens must not cut it off
    await withStore(call, around, 'may-begin', async (opened) => {
      if (flag(call, 'demo')) await loadDemo(opened.store, packaged().demo);
      const parts = partsOf(opened, around);
      const lan = flag(call, 'lan') ? { network: { addresses: ownAddresses } } : {};
      const running = await open({ ...parts, ...lan }, port, around);
      sayOpen(running, opened, call, around);
      await stopped;
      await running.stop();
      around.out('Wristpin is closed.');
    });
  },
};

function partsOf({ store, kind }: OpenStore, around: Surroundings): Parts {
  const { version, web, demo, fonts } = packaged();
  return {
    store,
    storeKind: kind,
    webRoot: web,
    demo,
    fonts,
    version,
    clock: around.now,
    log: around.err,
  };
}

function sayOpen(running: Running, { name }: OpenStore, call: Call, { out }: Surroundings): void {
  out(`Wristpin is open at ${running.url}`);
  if (flag(call, 'lan')) out(networkWords(running));
  out(`The log is kept in ${name}`);
  if (flag(call, 'demo')) out('The invented job is loaded; “wristpin demo remove” takes it out again.');
  out('Ctrl-C closes it.');
}

/** Plain HTTP: who listens in on the shop’s own network can read along, and the person must know. */
function networkWords({ networkUrls }: Running): string {
  if (networkUrls.length === 0)
    return 'This computer is in no network just now; a phone can be paired once it is.';
  return `Paired phones find it at ${networkUrls.join(' or ')}; pair one on the Shop page. Use it in a network you trust: what is sent is not encrypted.`;
}

/** A port that was asked for is taken or refused; the standard one gives way to the next free. */
async function open(parts: Parts, asked: number | undefined, around: Surroundings): Promise<Running> {
  if (asked !== undefined) return onPort(parts, asked);
  for (let port = standardPort; port < standardPort + portsTried; port++) {
    const running = await onPort(parts, port).catch(unlessTaken);
    if (!running) continue;
    if (port !== standardPort) around.out(`Port ${standardPort} is taken, so it is ${port}.`);
    return running;
  }
  const last = standardPort + portsTried - 1;
  throw new Failed(`The ports ${standardPort} to ${last} are all taken. Name another with --port.`);
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
