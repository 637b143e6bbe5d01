import { afterAll, beforeAll, expect, test } from 'vitest';
import { fold, type RawEntry } from '../../src/job/index.js';
import { campaign } from '../support/campaign.js';
import { playRounds, type Round } from '../support/rounds.js';
import { addresses, SimulatedDevice, SimulatedShop } from './simulated-shop.js';

/**
 * Two devices and a server under seeded interleavings of writing, striking, being offline, loading the page anew, the
 * server's restart, another address, a full disk, a lost answer, refusal. Whatever happened: in the end both devices and
 * the bench tell of one job, nothing that was called kept is lost or there twice, every line stands after what its device
 * had seen, and every strike strikes.
 */
const interleavings = {
  name: 'interleavings of two devices and a server',
  seed: 1,
  rounds: campaign(60, 5000),
};
const steps = 28;
const tenYears = 10 * 365 * 24 * 3600_000;

let shop: SimulatedShop;
beforeAll(async () => {
  shop = new SimulatedShop();
  await shop.start();
});
afterAll(() => shop.end());

const uuid = (n: number) => `01900000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
/** Of one round: all of them share one store. */
const idsARound = 10_000;

/** What one round does to the shop, a step at a time. */
class Interleaving {
  readonly #next: () => number;
  readonly devices: readonly SimulatedDevice[];
  readonly job: string;
  /** belongs to a job that nobody opens: the store will never take it */
  readonly #stray: string;
  readonly refused = new Set<string>();

  constructor({ number, chance }: Round) {
    this.#next = chance;
    let ids = 1 + number * idsARound;
    const newId = () => uuid(ids++);
    this.job = newId();
    this.#stray = newId();
    const skew = () => [0, -180_000, 240_000, tenYears, -tenYears][this.#pick(5)]!;
    this.devices = ['Phone', 'Tablet'].map(
      (name) => new SimulatedDevice(shop, `${name} ${number}`, skew(), newId),
    );
  }

  #pick = (n: number) => Math.floor(this.#next() * n);

  async run(): Promise<void> {
    for (const device of this.devices) await device.pair();
    await this.devices[0]!.write(this.job, 'open', { tag: 1 + this.#pick(999), title: '' });
    await this.devices[0]!.outbox.send();
    for (const device of this.devices) await device.look(this.job);
    for (let n = 0; n < steps; n++) {
      shop.now += this.#pick(120_000) - 20_000; // its clock is set back now and then
      await this.#step(this.devices[this.#pick(2)]!);
    }
  }

  async #step(device: SimulatedDevice): Promise<void> {
    const what = this.#pick(16);
    if (what < 4) await device.write(this.job, 'intake', { machine: `machine ${this.#pick(1000)}` });
    else if (what < 6) await this.#strike(device);
    else if (what < 7) this.refused.add((await device.write(this.#stray, 'note', { words: 'stray' })).id);
    else if (what < 9) device.online = !device.online;
    else if (what < 10) await device.reload();
    else if (what < 11) await shop.restart();
    else if (what < 12) shop.address = addresses[this.#pick(2)]!;
    else if (what < 13) shop.full = !shop.full;
    else if (what < 14) device.loses = true;
    else if (what < 15) await device.look(this.job);
    else await Promise.all(this.devices.map((each) => each.outbox.send()));
  }

  async #strike(device: SimulatedDevice): Promise<void> {
    const lines = device.known.filter(({ job, kind }) => job === this.job && kind !== 'open');
    if (lines.length === 0) return;
    const { id } = lines[this.#pick(lines.length)]!;
    await device.write(this.job, 'strike', { entry: id, reason: '' });
  }

  /** The network is back, the disk has room, everybody looks. */
  async settle(): Promise<void> {
    shop.full = false;
    for (const device of this.devices) Object.assign(device, { online: true, loses: false });
    for (const device of this.devices) await device.outbox.send();
    for (const device of this.devices) await device.stepOver();
    for (const device of this.devices) await device.look(this.job);
  }
}

const telling = (job: string, lines: readonly RawEntry[]) =>
  fold(
    job,
    lines.filter((e) => e.job === job),
  );

async function check(done: Interleaving): Promise<void> {
  const { job, devices } = done;
  const stored = (await shop.entries(job)).map(({ seq: _, received: __, ...line }) => line);
  const bench = telling(job, stored);
  for (const device of devices) {
    expect(device.outbox.now().waiting).toEqual([]);
    expect(telling(job, device.known)).toEqual(bench);
  }
  const ids = stored.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  const wrote = devices.flatMap((device) => device.wrote);
  const kept = wrote.filter(({ line }) => !done.refused.has(line.id));
  expect(new Set(ids)).toEqual(new Set(kept.map(({ line }) => line.id)));
  const shown = devices.flatMap((device) => device.outbox.now().refused.map(({ entry }) => entry!.id));
  expect(new Set(shown)).toEqual(done.refused);
  const place = new Map(bench.log.map(({ entry }, i) => [entry.id, i]));
  for (const { line, seen } of kept)
    for (const before of seen) expect(place.get(before)).toBeLessThan(place.get(line.id)!);
  const standing = bench.log.filter(({ struck }) => !struck);
  const aimed = new Set(
    standing.flatMap(({ known }) => (known?.kind === 'strike' ? [known.body.entry] : [])),
  );
  for (const { entry, struck } of bench.log) expect(struck !== undefined).toBe(aimed.has(entry.id));
}

test(`${interleavings.rounds} interleavings of two devices and a server converge, and nothing is lost`, async () => {
  const { counts } = await playRounds(interleavings, async (round) => {
    shop.begin();
    const done = new Interleaving(round);
    await done.run();
    await done.settle();
    await check(done);
    round.count('lines written', done.devices.flatMap(({ wrote }) => wrote).length);
    round.count('of them refused, and shown', done.refused.size);
  });
  expect(counts['lines written']).toBeGreaterThan(interleavings.rounds);
});
