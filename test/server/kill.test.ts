import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { cliWithFolder, ended, startServe } from '../support/built-cli.js';
import { campaign } from '../support/campaign.js';
import { type Answer, ask, jobA, note, openEntry, picture } from './support.js';

/** Two servers at a time, each with a store of its own, so that the whole stays under a minute on two cores. */
const lanes = 2;
const killsALane = campaign(6, 26);
const writers = 3;
const batchSize = 3;
const seed = 20261125;

const { cli } = cliWithFolder();

/** What a device knows of its own sending. */
interface Device {
  readonly acknowledged: Set<string>;
  readonly pictures: Map<string, Uint8Array>;
  /** ids of each batch that was sent, acknowledged or not */
  readonly batches: string[][];
  cutOff: number;
  next: number;
}

function randomFrom(start: number): () => number {
  let state = start >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const put = (url: string, path: string, body: BodyInit, method: string) => ask(url + path, { method, body });

/** Sends batch after batch, each after the last was acknowledged, until the line breaks. */
async function write(url: string, device: Device): Promise<void> {
  for (;;) {
    const entries = Array.from({ length: batchSize }, () => note(device.next++, 'w'.repeat(500)));
    const ids = entries.map((entry) => entry.id);
    device.batches.push(ids);
    const answer = await put(url, '/api/entries', JSON.stringify({ entries }), 'POST').catch(() => undefined);
    if (!answer) {
      device.cutOff += 1;
      return;
    }
    expect(answer.status).toBe(200);
    for (const id of answer.json.stored) device.acknowledged.add(id);
  }
}

async function writePictures(url: string, device: Device): Promise<void> {
  for (;;) {
    const bytes = await picture('png', { width: 400, height: 300, seed: device.next++ });
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const answer = await put(url, `/api/pictures/${sha256}`, bytes as BodyInit, 'PUT').catch(() => undefined);
    if (!answer) return;
    expect(answer.status).toBe(200);
    device.pictures.set(sha256, bytes);
  }
}

/** All that was acknowledged is there, each once; and of a batch that was cut off all is there or nothing. */
async function check(url: string, device: Device): Promise<void> {
  const { json } = await ask(`${url}/api/jobs/${jobA}/entries`);
  const ids: string[] = json.entries.map((entry: { id: string }) => entry.id);
  const there = new Set(ids);
  expect(there.size).toBe(ids.length);
  expect([...device.acknowledged].filter((id) => !there.has(id))).toEqual([]);
  const torn = device.batches.filter((batch) => {
    const kept = batch.filter((id) => there.has(id)).length;
    return kept !== 0 && kept !== batch.length;
  });
  expect(torn).toEqual([]);
}

async function checkPictures(url: string, device: Device): Promise<void> {
  for (const [sha256, bytes] of device.pictures) {
    const answer: Answer = await ask(`${url}/api/pictures/${sha256}`);
    expect(Buffer.compare(answer.bytes, bytes), sha256).toBe(0);
  }
}

/** Some acknowledgements on, whatever the load of this machine, and then a little later still. */
async function moment(device: Device, random: () => number, pictures: number): Promise<void> {
  const entriesWanted = device.acknowledged.size + batchSize * Math.ceil(random() * 12);
  const picturesWanted = device.pictures.size + pictures;
  const later = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
  while (device.acknowledged.size < entriesWanted || device.pictures.size < picturesWanted) await later(1);
  await later(random() * 8);
}

async function lane(number: number): Promise<Device> {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-kill-'));
  const store = ['--store', join(folder, 'shop.db')];
  const random = randomFrom(seed + number);
  const device: Device = { acknowledged: new Set(), pictures: new Map(), batches: [], cutOff: 0, next: 1 };
  for (let kill = 0; kill < killsALane; kill++) {
    const { child, url } = await startServe(cli, store);
    if (kill === 0) await put(url, '/api/entries', JSON.stringify({ entries: [openEntry(0, 1)] }), 'POST');
    await check(url, device);
    const before = device.cutOff;
    const work = [...Array.from({ length: writers }, () => write(url, device)), writePictures(url, device)];
    await moment(device, random, kill % 3 === 0 ? 1 : 0);
    child.kill('SIGKILL');
    await Promise.all(work);
    expect((await ended(child)).signal).toBe('SIGKILL');
    expect(device.cutOff - before, 'every writer was in the middle of a request').toBe(writers);
  }
  const { child, url } = await startServe(cli, store);
  await check(url, device);
  await checkPictures(url, device);
  child.kill('SIGTERM');
  expect((await ended(child)).code).toBe(0);
  const verified = await cli.run(['verify', '--json', ...store]);
  expect(verified.code, verified.err).toBe(0);
  expect(JSON.parse(verified.out)).toMatchObject({ ok: true, problems: [] });
  rmSync(folder, { recursive: true, force: true });
  return device;
}

test(
  `a server killed ${lanes * killsALane} times in the middle of writes keeps every acknowledged entry and picture`,
  async () => {
    const devices = await Promise.all(Array.from({ length: lanes }, (_, i) => lane(i)));
    const acknowledged = devices.reduce((sum, device) => sum + device.acknowledged.size, 0);
    const cutOff = devices.reduce((sum, device) => sum + device.cutOff, 0);
    const pictures = devices.reduce((sum, device) => sum + device.pictures.size, 0);
    console.info(
      `seed ${seed}: ${acknowledged} entries and ${pictures} pictures acknowledged, ${cutOff} batches cut off`,
    );
    expect(acknowledged).toBeGreaterThanOrEqual(lanes * killsALane * batchSize);
    expect(pictures).toBeGreaterThanOrEqual(lanes * Math.floor(killsALane / 3));
  },
  campaign(180_000, 900_000),
);
