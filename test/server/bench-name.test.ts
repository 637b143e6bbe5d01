import makeMdns from 'multicast-dns';
import { afterEach, expect, test } from 'vitest';
import { answerToName, type BenchName } from '../../src/server/index.js';

/** On this computer alone, and not on the port that others speak on. */
const here = { port: 45_353, interface: '127.0.0.1' };
const line = { ...here, log: () => {} };
const open: { stop: () => Promise<void> }[] = [];
afterEach(async () => {
  for (const each of open.splice(0)) await each.stop();
});

async function bench(wanted: string, addresses: readonly string[]): Promise<BenchName> {
  const name = await answerToName(wanted, () => addresses, line);
  open.push(name);
  return name;
}

/** What a phone hears that asks for a name: the addresses of the first answer, or nothing. */
async function asked(name: string, waitMs = 400): Promise<string[]> {
  const mdns = makeMdns({ ...here, bind: '0.0.0.0', loopback: true, reuseAddr: true });
  open.push({ stop: () => new Promise((done) => mdns.destroy(done)) });
  const heard = new Promise<string[]>((resolve) => {
    mdns.on('response', ({ answers }) => {
      const mine = (answers ?? []).filter((a) => a.name === name);
      if (mine.length > 0) resolve(mine.map((a) => (a as { data: string }).data));
    });
    setTimeout(() => resolve([]), waitMs);
  });
  await new Promise<void>((ready) => mdns.once('ready', ready));
  mdns.query(name, 'A');
  return heard;
}

test('the bench answers to its name with all its addresses as they stand, and to no other', async () => {
  const addresses = ['192.168.4.7'];
  const { name } = await bench('wristpin-a', addresses);
  expect(name()).toBe('wristpin-a.local');
  expect(await asked('wristpin-a.local')).toEqual(['192.168.4.7']);
  addresses[0] = '10.0.0.9';
  addresses.push('192.168.8.8');
  expect(await asked('wristpin-a.local')).toEqual(['10.0.0.9', '192.168.8.8']);
  expect(await asked('another.local')).toEqual([]);
});

test('a name that another computer answers to is left to it', async () => {
  await bench('wristpin-b', ['192.168.4.7']);
  const second = await bench('wristpin-b', ['192.168.4.8']);
  expect(second.name()).toBe('wristpin-b-2.local');
  expect(await asked('wristpin-b.local')).toEqual(['192.168.4.7']);
});

test('a bench that begins again takes its own name again', async () => {
  await bench('wristpin-c', ['192.168.4.7']);
  expect((await bench('wristpin-c', ['192.168.4.7'])).name()).toBe('wristpin-c.local');
});
