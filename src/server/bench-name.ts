import makeMdns, { type MulticastDNS, type ResponsePacket } from 'multicast-dns';

export interface BenchName {
  /** the name under which this computer answers; none while others answer to all that were tried */
  readonly name: () => string | undefined;
  readonly stop: () => Promise<void>;
}

export interface OnTheLine {
  /** for tests: another port, and the interface that alone is spoken on */
  readonly port?: number;
  readonly interface?: string;
  readonly log: (line: string) => void;
}

/** RFC 6762, section 8.1: three questions, a quarter of a second apart, before a name is taken. */
const probeMs = 250;
const probes = 3;
const namesTried = 9;
/** RFC 6762, section 10: how long an address may be kept, in seconds. */
const keptS = 120;

/**
 * Answers in the shop's network to "NAME.local" by multicast DNS (RFC 6762), with this computer's addresses as they stand
 * when it is asked, and to nothing else. A name that another computer answers to is left to it: the next one is NAME-2.
 * A network without multicast costs the name, nothing else.
 */
export async function answerToName(
  wanted: string,
  addresses: () => readonly string[],
  { log, ...line }: OnTheLine,
): Promise<BenchName> {
  const mdns = makeMdns({ ...line, bind: '0.0.0.0', loopback: true, reuseAddr: true });
  let name: string | undefined;
  mdns.on('error', (error) => log(`the name on the shop’s network: ${error.message}`));
  mdns.on('query', ({ questions }, from) => {
    const asked = (questions ?? []).some(
      (q) => q.name.toLowerCase() === name && (q.type === 'A' || q.type === ('ANY' as string)),
    );
    if (!asked || name === undefined) return;
    mdns.respond({ answers: records(name, addresses()) });
    // the group is spoken to on one network only; who asked may be in another
    mdns.respond({ answers: records(name, addresses()) }, from);
  });
  await new Promise<void>((ready) => {
    mdns.once('ready', ready);
    mdns.once('error', () => ready());
  });
  for (let n = 1; name === undefined && n <= namesTried; n++) {
    const tried = `${n === 1 ? wanted : `${wanted}-${n}`}.local`;
    if (await isFree(mdns, tried, addresses)) name = tried;
  }
  if (name !== undefined) mdns.respond({ answers: records(name, addresses()) });
  return { name: () => name, stop: () => new Promise((done) => mdns.destroy(done)) };
}

const records = (name: string, addresses: readonly string[]) =>
  addresses.map((data) => ({ name, type: 'A' as const, ttl: keptS, flush: true, data }));

async function isFree(
  mdns: MulticastDNS,
  name: string,
  addresses: () => readonly string[],
): Promise<boolean> {
  let free = true;
  const heard = ({ answers }: ResponsePacket) => {
    const other = (answers ?? []).some(
      (a) => a.type === 'A' && a.name.toLowerCase() === name && !addresses().includes(a.data),
    );
    if (other) free = false;
  };
  mdns.on('response', heard);
  for (let i = 0; free && i < probes; i++) {
    mdns.query(name, 'A');
    await new Promise((wait) => setTimeout(wait, probeMs));
  }
  mdns.off('response', heard);
  return free;
}
