import { attachedTo, type RawEntry } from '../../../job/index.js';
import { ServerError } from '../api.js';
import {
  DeviceFull,
  type Held,
  type Kept,
  type KeptLine,
  type OutboxParts,
  type PictureWithBytes,
} from './kept.js';
import {
  damagedOnTheWay,
  meaningOf,
  nextToSend,
  pauseMs,
  type Reach,
  type Refused,
  refusedIn,
  type Sending,
  waitingIn,
} from './rules.js';
import { PictureGone, PictureOnItsWay } from './send-picture.js';

/**
 * What this device has written and the shop's store has not yet acknowledged. A line and its picture are first made durable
 * on the device, then sent; they leave it only after the store said that they are durable there. "Saved" means that.
 */
export interface Outbox {
  /** lines on their way, in the order in which they were written */
  readonly waiting: readonly RawEntry[];
  /** how many lines are being made durable here at this moment */
  readonly keeping: number;
  /** how many pictures are on their way */
  readonly pictures: number;
  /** and how many sounds of spoken notes */
  readonly sounds: number;
  /** what the store will not take, with its reason */
  readonly refused: readonly Refused[];
  readonly reach: Reach;
  /** what the store says of itself while it is out of order */
  readonly said?: string;
  readonly sending: boolean;
  /** how much of a picture has gone, 0 to 1 */
  readonly part?: number;
  /** why this device cannot keep anything, in words */
  readonly trouble?: string;
  /** waited here when this device was last looked at, and is not here now */
  readonly missing?: Held;
  /** what an earlier visit left here has not been read yet */
  readonly unread?: true;
}

export class NotKept extends Error {}

const nothing: Kept = { lines: [], pictures: [] };

/** The outbox of one device: no screen, no clock and no network of its own. */
export class DeviceOutbox {
  readonly #parts: OutboxParts;
  readonly #listeners = new Set<() => void>();
  readonly #savedListeners = new Set<(entries: readonly RawEntry[]) => unknown>();
  readonly #pictures: PictureOnItsWay;
  #kept: Kept = nothing;
  #outbox: Outbox = {
    ...{ waiting: [], keeping: 0, pictures: 0, sounds: 0, refused: [], reach: 'not asked', sending: false },
    unread: true,
  };
  #turn: Promise<unknown> = Promise.resolve();
  #running: Promise<void> | undefined;
  #failures = 0;
  #cancelRetry = () => {};
  #again = false;
  #stopped = false;

  constructor(parts: OutboxParts) {
    this.#parts = parts;
    this.#pictures = new PictureOnItsWay(parts);
  }

  now = (): Outbox => this.#outbox;

  subscribe = (tell: () => void): (() => void) => {
    this.#listeners.add(tell);
    return () => this.#listeners.delete(tell);
  };

  /** Calls back with lines that the store has acknowledged, before the outbox lets them go. */
  whenSaved = (tell: (entries: readonly RawEntry[]) => unknown): void => {
    this.#savedListeners.add(tell);
  };

  /** Reads what an earlier visit left, and sends it. */
  async start(): Promise<void> {
    const held = this.#parts.remembered?.get();
    await this.reread();
    const missing = held && missingOf(held, heldIn(this.#kept));
    if (missing) this.#change({ missing });
    await this.send();
  }

  /** What is kept may have been changed by another page of this device. */
  reread(): Promise<void> {
    return this.#inTurn(async () => {
      try {
        const before = this.#outbox.waiting;
        const kept = await this.#parts.storage.read();
        const here = new Set(kept.lines.map(({ entry }) => entry.id));
        // another page has sent them: they go over into what the store holds, without a gap between
        const sent = before.filter(({ id }) => !here.has(id));
        if (sent.length > 0) await this.#tellSaved(sent);
        this.#hold(kept);
      } catch (error) {
        this.#change({ trouble: troubleWords(error) });
      }
    });
  }

  /**
   * Keeps lines, with the pictures that they show; resolves once they are durable on this device, and then sends them. Where
   * the device can keep nothing they go straight to the store, and it resolves after the store's word.
   * @throws NotKept when they are neither here nor there
   */
  async keep(entries: readonly RawEntry[], pictures: readonly PictureWithBytes[] = []): Promise<void> {
    const keeping = (more: number) => this.#change({ keeping: this.#outbox.keeping + more });
    keeping(entries.length); // before anything is waited for: from the touch on it is not "all saved"
    try {
      await this.#inTurn(() => this.#keepHere(entries, pictures));
    } finally {
      keeping(-entries.length);
    }
    void this.send();
  }

  async #keepHere(entries: readonly RawEntry[], pictures: readonly PictureWithBytes[]): Promise<void> {
    const first = 1 + Math.max(0, ...this.#kept.lines.map(({ n }) => n));
    const lines = entries.map((entry, i): KeptLine => ({ entry, n: first + i }));
    try {
      await this.#parts.storage.keep(lines, pictures);
    } catch (error) {
      await this.#straightToStore(entries, pictures, troubleWords(error));
      return;
    }
    const fresh = pictures.map(({ picture }) => picture);
    const others = this.#kept.pictures.filter((p) => !fresh.some(({ sha256 }) => sha256 === p.sha256));
    this.#hold({ lines: [...this.#kept.lines, ...lines], pictures: [...others, ...fresh] });
    this.#parts.tellOthers?.();
  }

  /** Sends what waits; one sending at a time. A call during one looks again after it: it may know that the network is back. */
  send(): Promise<void> {
    this.#cancelRetry();
    if (this.#running) {
      this.#again = true;
      return this.#running;
    }
    this.#again = false;
    this.#running = this.#sendAll().finally(() => {
      this.#running = undefined;
      if (this.#again) return this.send();
    });
    return this.#running;
  }

  /** As when the page is left. */
  stop(): void {
    this.#stopped = true;
    this.#cancelRetry();
  }

  /** What another request of this device found. A store that is back is sent to at once. */
  heard(reach: Reach, said?: string): void {
    const before = this.#outbox.reach;
    if (reach !== before || said !== this.#outbox.said) this.#change({ reach, said });
    // not while it is being sent to: that request is then the one that was heard of
    const isBack = reach === 'reached' && before !== 'reached' && !this.#running;
    if (isBack && nextToSend(this.#kept)) void this.send();
  }

  /** Refused, and perhaps the store has come to think otherwise: a shop that was restored, a rule that was put right. */
  async tryAgain(refused: Refused): Promise<void> {
    await this.#inTurn(async () => {
      const { lines, pictures } = partsOf(this.#kept, refused);
      const cleared = {
        lines: lines.map(({ refused: _, ...line }) => line),
        pictures: pictures.map(({ refused: _, ...picture }) => picture),
      };
      await this.#mark(cleared);
    });
    void this.send();
  }

  /** Takes back what the store refused. */
  drop(refused: Refused): Promise<void> {
    return this.#inTurn(() => this.#drop(partsOf(this.#kept, refused)));
  }

  /** Another picture in the place of one that was refused; its line was never sent, so it may say another name. */
  async putInPlace(refused: Refused, other: PictureWithBytes): Promise<void> {
    const { entry, picture } = refused;
    if (!entry || !picture) return;
    await this.#inTurn(async () => {
      const { refused: _, ...line } = this.#kept.lines.find((each) => each.entry.id === entry.id)!;
      const { refused: _again, ...info } = other.picture;
      const changed = { ...line, entry: { ...entry, body: { ...(entry.body as object), picture: info } } };
      await this.#parts.storage.keep([changed], [other]);
      await this.#parts.storage.drop([], [picture.sha256]);
      this.#hold({
        lines: this.#kept.lines.map((each) => (each.entry.id === entry.id ? changed : each)),
        pictures: [...this.#kept.pictures.filter((p) => p.sha256 !== picture.sha256), other.picture],
      });
    });
    void this.send();
  }

  /** The person has read that something is missing here. */
  forgetMissing(): void {
    this.#change({ missing: undefined });
  }

  /** A picture that has not reached the store whole, if this device holds it. */
  bytes(sha256: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
    return this.#parts.storage.bytes(sha256);
  }

  async #sendAll(): Promise<void> {
    try {
      for (let next = nextToSend(this.#kept); next && !this.#stopped; next = nextToSend(this.#kept)) {
        if (!this.#outbox.sending) this.#change({ sending: true });
        await this.#sendOne(next);
        this.#failures = 0;
      }
      this.#change({ sending: false, part: undefined });
    } catch (error) {
      this.#failures += 1;
      const said = error instanceof ServerError ? error.message : undefined;
      this.#change({ sending: false, reach: this.#reachBy(error), said });
      if (this.#stopped || this.#again) return;
      this.#cancelRetry = this.#parts.later(() => void this.send(), pauseMs(this.#failures));
    }
  }

  #reachBy(error: unknown): Reach {
    const meaning = meaningOf(error);
    const reach = 'reach' in meaning ? meaning.reach : 'out of order';
    return reach === 'no answer' && this.#parts.online?.() === false ? 'no network' : reach;
  }

  async #sendOne(next: Sending): Promise<void> {
    if (next.what === 'lines') return this.#sendLines(next.lines);
    const { picture } = next;
    try {
      // a line that was written meanwhile does not wait for the rest of the picture
      const whole = await this.#pictures.go(picture, (part) => {
        this.#change({ part, reach: 'reached', said: undefined });
        return nextToSend(this.#kept)?.what !== 'lines';
      });
      if (whole) await this.#inTurn(() => this.#drop({ lines: [], pictures: [picture] }));
    } catch (error) {
      const refused = await this.#refusalOf(error, picture.sha256);
      await this.#inTurn(() => this.#mark({ lines: [], pictures: [{ ...picture, refused }] }));
    }
  }

  /** A refused batch is sent line by line, so that only the bad line stays behind. */
  async #sendLines(lines: readonly KeptLine[]): Promise<void> {
    try {
      const { stored, already } = await this.#parts.store.append(lines.map(({ entry }) => entry));
      const acknowledged = new Set([...stored, ...already]);
      const settled = lines.filter(({ entry }) => acknowledged.has(entry.id));
      if (settled.length === 0) throw new NotKept('The store answered, but not that it has the lines.');
      await this.#inTurn(async () => {
        await this.#tellSaved(settled.map(({ entry }) => entry));
        await this.#drop({ lines: settled, pictures: [] });
      });
      this.#change({ reach: 'reached', said: undefined });
    } catch (error) {
      const meaning = meaningOf(error);
      if (!('refused' in meaning)) throw error;
      if (lines.length === 1)
        await this.#inTurn(() =>
          this.#mark({ lines: [{ ...lines[0]!, refused: meaning.refused }], pictures: [] }),
        );
      else for (const line of lines) await this.#sendLines([line]);
    }
  }

  /** @throws what is no refusal */
  async #refusalOf(error: unknown, sha256: string): Promise<string> {
    const meaning = meaningOf(error);
    if ('refused' in meaning) return meaning.refused;
    if (error instanceof PictureGone) return error.message;
    const damaged = error instanceof ServerError && error.code === damagedOnTheWay;
    if (!damaged) throw error;
    const bytes = await this.bytes(sha256);
    if (bytes && this.#parts.sha256(bytes) === sha256) throw error; // it was the way there: once more
    return 'The picture was damaged on this device: take it again.';
  }

  async #straightToStore(
    entries: readonly RawEntry[],
    pictures: readonly PictureWithBytes[],
    trouble: string,
  ): Promise<void> {
    this.#change({ trouble });
    try {
      for (const { picture, bytes } of pictures) await this.#pictures.go(picture, () => true, bytes);
      await this.#parts.store.append(entries);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      throw new NotKept(`${trouble} Not kept: ${why}`, { cause: error });
    }
    await this.#tellSaved(entries);
  }

  async #tellSaved(entries: readonly RawEntry[]): Promise<void> {
    for (const tell of this.#savedListeners) await tell(entries);
  }

  async #mark({ lines, pictures }: Kept): Promise<void> {
    await this.#parts.storage.mark(lines, pictures);
    this.#hold({
      lines: this.#kept.lines.map((l) => lines.find(({ entry }) => entry.id === l.entry.id) ?? l),
      pictures: this.#kept.pictures.map((p) => pictures.find(({ sha256 }) => sha256 === p.sha256) ?? p),
    });
    this.#parts.tellOthers?.();
  }

  async #drop({ lines, pictures }: Kept): Promise<void> {
    const ids = lines.map(({ entry }) => entry.id);
    const names = pictures.map(({ sha256 }) => sha256);
    const left = {
      lines: this.#kept.lines.filter(({ entry }) => !ids.includes(entry.id)),
      pictures: this.#kept.pictures.filter(({ sha256 }) => !names.includes(sha256)),
    };
    this.#parts.remembered?.set(heldIn(left)); // before it goes: nothing that was let go may look lost
    await this.#parts.storage.drop(ids, names);
    this.#hold(left);
    this.#parts.tellOthers?.();
  }

  #hold(kept: Kept): void {
    this.#kept = kept;
    this.#parts.remembered?.set(heldIn(kept));
    const refused = refusedIn(kept);
    const { pictures, sounds } = countsOf(kept.pictures.filter((p) => p.refused === undefined));
    this.#change({
      waiting: waitingIn(kept),
      refused,
      pictures,
      sounds,
      trouble: undefined,
      unread: undefined,
    });
  }

  /** What is kept is changed by one after the other, and by none in the middle of another. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const done = this.#turn.then(work);
    this.#turn = done.catch(() => undefined);
    return done;
  }

  #change(next: { [K in keyof Outbox]?: Outbox[K] | undefined }): void {
    this.#outbox = { ...this.#outbox, ...next } as Outbox;
    for (const tell of this.#listeners) tell();
  }
}

const heldIn = ({ lines, pictures }: Kept): Held => ({ lines: lines.length, ...countsOf(pictures) });

function countsOf(kept: Kept['pictures']) {
  const sounds = kept.filter(({ mime }) => mime === 'audio/wav').length;
  return { pictures: kept.length - sounds, sounds };
}

function missingOf(before: Held, now: Held): Held | undefined {
  const lines = Math.max(0, before.lines - now.lines);
  const pictures = Math.max(0, before.pictures - now.pictures);
  const sounds = Math.max(0, (before.sounds ?? 0) - (now.sounds ?? 0));
  return lines + pictures + sounds > 0 ? { lines, pictures, ...(sounds > 0 && { sounds }) } : undefined;
}

/** The line with its picture, unless another line shows that too. */
function partsOf(kept: Kept, { entry, picture }: Refused): Kept {
  const shared = kept.lines.some((l) => l.entry.id !== entry?.id && attachedTo(l.entry) === picture?.sha256);
  return {
    lines: kept.lines.filter((l) => l.entry.id === entry?.id),
    pictures: kept.pictures.filter((p) => p.sha256 === picture?.sha256 && !shared),
  };
}

function troubleWords(error: unknown): string {
  if (error instanceof DeviceFull)
    return 'This device’s storage is full: it can keep nothing more. Make room on it.';
  const why = error instanceof Error ? error.message : String(error);
  return `This browser keeps nothing on this device (${why}).`;
}
