import type { ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import { setTimeout as later } from 'node:timers/promises';
import { expect } from 'vitest';
import type { VerifyReport } from '../../src/store/index.js';
import { type BuiltCli, ended, startServe } from '../support/built-cli.js';
import type { Round } from '../support/rounds.js';
import { type Answer, ask, entry, jobA, jobB, note, openEntry, picture } from './support.js';

/** Where the servers that are killed keep their store. */
export interface KillPlace {
  /** `--store FILE` or `--database URL` */
  readonly args: readonly string[];
  /** what is really there, read past every server */
  readonly verify: () => Promise<VerifyReport>;
  /** as in a power cut of the database's own computer, and the way back; only where the store is a server's */
  readonly crash?: () => Promise<void>;
}

interface Server {
  readonly child: ChildProcess;
  readonly url: string;
  /** lines and pictures that this one said are saved */
  lines: number;
  pictures: number;
  work: Promise<unknown>;
}

const batchSize = 3;
const opening = 9;

/**
 * A shop of real servers on one store whose writers never rest, while one server after another is killed. Knows all
 * that was acknowledged, and holds the store against it after every kill.
 */
export class KilledShop {
  readonly #cli: BuiltCli;
  readonly #place: KillPlace;
  readonly #round: Round;
  readonly #acknowledged = new Set<string>();
  readonly #batches = new Set<readonly string[]>();
  readonly #pictures = new Map<string, 'looked at' | undefined>();
  #next = 1;
  /** requests without an answer */
  #cutOff = 0;
  #servers: Server[] = [];

  constructor(cli: BuiltCli, place: KillPlace, round: Round) {
    this.#cli = cli;
    this.#place = place;
    this.#round = round;
  }

  /** So many kills of so many servers on one store. */
  async live(kills: number, servers: number): Promise<void> {
    try {
      for (let i = 0; i < servers; i++) this.#servers.push(await this.#start());
      await this.#opened();
      for (const server of this.#servers) this.#begin(server);
      for (let kill = 0; kill < kills; kill++) {
        if (this.#place.crash && kill % 10 === opening - 1) await this.#crash(this.#place.crash);
        else await this.#kill(kill);
        await this.#check();
      }
      await this.#end();
    } finally {
      for (const { child } of this.#servers) child.kill('SIGKILL');
    }
  }

  async #start(): Promise<Server> {
    const started = await startServe(this.#cli, this.#place.args);
    return { ...started, lines: 0, pictures: 0, work: Promise.resolve() };
  }

  async #opened(): Promise<void> {
    const entries = [openEntry(this.#next++, 1), openEntry(this.#next++, 2, jobB)];
    const { status } = await send(this.#servers[0]!.url, '/api/entries', JSON.stringify({ entries }));
    expect(status).toBe(200);
  }

  #begin(server: Server): void {
    const writers = [jobA, jobB, jobA].map((job) => this.#write(server, job));
    server.work = Promise.all([...writers, this.#photograph(server)]);
    server.work.catch(() => {}); // awaited where the server ends; until then nobody listens
  }

  /** Batch after batch, each after the last was acknowledged, until the line breaks. */
  async #write(server: Server, job: string): Promise<void> {
    for (;;) {
      const entries = Array.from({ length: batchSize }, () => note(this.#next++, 'w'.repeat(500), job));
      const ids = entries.map(({ id }) => id);
      this.#batches.add(ids);
      if (!(await this.#acknowledge(server, { entries }))) return;
    }
  }

  async #acknowledge(server: Server, lines: { readonly entries: readonly unknown[] }): Promise<boolean> {
    const answer = await this.#answered('batches', () =>
      send(server.url, '/api/entries', JSON.stringify(lines)),
    );
    for (const id of answer ? [...answer.json.stored, ...answer.json.already] : []) {
      this.#acknowledged.add(id);
      server.lines += 1;
    }
    return answer !== undefined;
  }

  /** A picture, whole or in parts, and after it the line that shows it, as a device sends them. */
  async #photograph(server: Server): Promise<void> {
    for (;;) {
      const n = this.#next++;
      const bytes = withComment(await basePicture, n);
      const sha256 = createHash('sha256').update(bytes).digest('hex');
      const answer = await this.#answered('pictures', () =>
        n % 2 ? sendWhole(server.url, sha256, bytes) : sendInParts(server.url, sha256, bytes),
      );
      if (!answer) return;
      this.#pictures.set(sha256, undefined);
      server.pictures += 1;
      const shown = { sha256, mime: 'image/jpeg', bytes: bytes.length, width: 400, height: 300 };
      const body = { picture: shown, caption: 'Flywheel key', stage: 'teardown', when: 'before' };
      const line = entry(this.#next++, 'photograph', body);
      this.#batches.add([line.id]);
      if (!(await this.#acknowledge(server, { entries: [line] }))) return;
    }
  }

  /** Nothing where the line broke; while the database is away it is sent again and again. */
  async #answered(what: string, ask: () => Promise<Answer>): Promise<Answer | undefined> {
    for (;;) {
      const answer = await ask().catch(() => undefined);
      if (answer === undefined) {
        this.#cutOff += 1;
        this.#round.count(`${what} cut off`);
      }
      if (answer?.status !== 503) {
        if (answer) expect(answer.status, JSON.stringify(answer.json)).toBe(200);
        return answer;
      }
      expect(answer.json.error.code).toBe('unreachable');
      this.#round.count(`${what} put off while the database was away`);
      await later(20);
    }
  }

  /** One server is killed in the middle of its writing; the others go on. */
  async #kill(number: number): Promise<void> {
    const { chance, count } = this.#round;
    const victim = this.#servers[Math.floor(chance() * this.#servers.length)]!;
    await this.#progress([victim], Math.ceil(chance() * 12), number % 3 === 0 ? 1 : 0);
    await later(chance() * 8);
    const before = this.#cutOff;
    victim.child.kill('SIGKILL');
    expect((await ended(victim.child)).signal).toBe('SIGKILL');
    await victim.work; // until each has seen its line break
    count('kills');
    if (this.#cutOff > before) count('kills within a write');
    this.#servers.splice(this.#servers.indexOf(victim), 1);
    if (this.#servers.length > 0) await this.#progress(this.#servers, 2, 0);
    expect(await this.#place.verify()).toMatchObject({ ok: true, problems: [] });
    if (number % 10 === opening) await this.#killWhileOpening();
    const next = await this.#start();
    this.#servers.push(next);
    this.#begin(next);
  }

  async #killWhileOpening(): Promise<void> {
    const child = this.#cli.start(['serve', '--port', '0', ...this.#place.args]);
    await later(150 + this.#round.chance() * 400);
    child.kill('SIGKILL');
    await ended(child);
    this.#round.count('kills');
    this.#round.count('kills while opening');
  }

  /** The database's own processes die; the servers live, say so, and go on. */
  async #crash(crash: () => Promise<void>): Promise<void> {
    await this.#progress(this.#servers, 2, 1);
    await crash();
    this.#round.count('kills');
    this.#round.count('kills of the database itself');
    await this.#progress(this.#servers, 2, 0);
    expect(await this.#place.verify()).toMatchObject({ ok: true, problems: [] });
  }

  /** So much further, whatever the load of this machine. */
  async #progress(servers: readonly Server[], batches: number, pictures: number): Promise<void> {
    const wanted = servers.map((server) => ({
      server,
      lines: server.lines + batches * batchSize,
      pictures: server.pictures + pictures,
    }));
    const broken = Promise.all(servers.map(({ work }) => work)).then(() => {
      throw new Error('every line broke, and no server was killed');
    });
    broken.catch(() => {});
    const done = () =>
      wanted.every((each) => each.server.lines >= each.lines && each.server.pictures >= each.pictures);
    while (!done()) await Promise.race([later(1), broken]);
  }

  /** All that was acknowledged is there, each once; of a batch that was cut off all is there, or nothing. */
  async #check(): Promise<void> {
    const { url } = this.#servers.at(-1)!;
    const acknowledged = [...this.#acknowledged]; // what is acknowledged from here on may come after the answer
    const ids: string[] = [];
    for (const job of [jobA, jobB])
      for (const { id } of (await ask(`${url}/api/jobs/${job}/entries`)).json.entries) ids.push(id);
    const there = new Set(ids);
    expect(there.size).toBe(ids.length);
    expect(acknowledged.filter((id) => !there.has(id))).toEqual([]);
    const kept = (batch: readonly string[]) => batch.filter((id) => there.has(id)).length;
    expect([...this.#batches].filter((batch) => kept(batch) !== 0 && kept(batch) !== batch.length)).toEqual(
      [],
    );
    for (const [sha256, state] of this.#pictures) if (!state) await this.#look(url, sha256);
  }

  async #look(url: string, sha256: string): Promise<void> {
    const { bytes } = await ask(`${url}/api/pictures/${sha256}`);
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(sha256);
    this.#pictures.set(sha256, 'looked at');
  }

  async #end(): Promise<void> {
    const { count } = this.#round;
    for (const { child, work } of this.#servers) {
      child.kill('SIGTERM');
      await work;
      expect((await ended(child)).code).toBe(0);
    }
    const whole = await this.#place.verify();
    expect(whole).toMatchObject({ ok: true, problems: [] });
    expect(whole.pictures).toBeGreaterThanOrEqual(this.#pictures.size);
    expect(whole.entries).toBeGreaterThanOrEqual(this.#acknowledged.size);
    count('lines acknowledged', this.#acknowledged.size);
    count('pictures acknowledged', this.#pictures.size);
    count('lines kept beyond those acknowledged', whole.entries - 2 - this.#acknowledged.size);
  }
}

const send = (url: string, path: string, body: BodyInit | Uint8Array, method = 'POST') =>
  ask(url + path, { method, body: body as BodyInit });

const sendWhole = (url: string, sha256: string, bytes: Uint8Array) =>
  send(url, `/api/pictures/${sha256}`, bytes, 'PUT');

async function sendInParts(url: string, sha256: string, bytes: Uint8Array): Promise<Answer> {
  const size = Math.ceil(bytes.length / 3);
  let answer!: Answer;
  for (let at = 0; at < bytes.length; at += size) {
    const path = `/api/pictures/${sha256}/parts?at=${at}&of=${bytes.length}`;
    answer = await send(url, path, bytes.slice(at, at + size), 'PUT');
    if (answer.status !== 200) return answer;
  }
  return answer;
}

/** Of noise, so that it is as large as a photograph is for its size. */
const basePicture = picture('jpeg', { width: 400, height: 300 });

/** Another picture without another compression: a comment after the start of image (ITU-T T.81, section B.2.4.5). */
function withComment(jpeg: Uint8Array, n: number): Uint8Array {
  const words = new TextEncoder().encode(`picture ${n}`);
  const segment = [0xff, 0xfe, 0, words.length + 2, ...words];
  return Uint8Array.from([...jpeg.subarray(0, 2), ...segment, ...jpeg.subarray(2)]);
}
