import { createHash, randomBytes, randomInt } from 'node:crypto';
import { uuidv7 } from 'uuidv7';
import type { Device, DeviceTokens, Store } from '../store/index.js';

/** A code shown on the bench computer; who opens its address within its time may pair one device. */
export interface PairingCode {
  readonly code: string;
  /** ISO 8601 */
  readonly until: string;
}

const codeMinutes = 10;
/** Without letters and figures that are mistaken for each other. */
const signs = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789';
/**
 * 31¹⁰ codes: whoever tries ten thousand a second for all of its ten minutes finds one in a hundred and thirty million
 * times. So wrong tries need not withdraw it, and nobody who is not let in can take it away from who is being let in.
 */
const codeLength = 10;
const tokenBytes = 32;
/** To walk over from one address of ours to another takes a moment. */
const overMinutes = 2;

/** Lets devices in, one code and one device at a time, and shuts them out again. */
export class Pairing {
  readonly #store: Store;
  readonly #clock: () => Date;
  readonly #shutOut = new Map<string, Set<() => void>>();
  readonly #seen = new Map<string, string>();
  readonly #over = new Map<string, { readonly device: string; readonly until: string }>();
  #open: PairingCode | undefined;

  constructor(store: Store, clock: () => Date) {
    this.#store = store;
    this.#clock = clock;
  }

  /** A fresh code; the one before it is good no longer. */
  begin(): PairingCode {
    this.#open = { code: freshCode(), until: this.#in(codeMinutes) };
    return this.#open;
  }

  /** The code that stands open is good no longer. */
  withdraw(): void {
    this.#open = undefined;
  }

  #in(minutes: number): string {
    return new Date(this.#clock().getTime() + minutes * 60_000).toISOString();
  }

  isOpen(code: string): boolean {
    const open = this.#open;
    return open !== undefined && this.#clock().toISOString() < open.until && code.toUpperCase() === open.code;
  }

  /**
   * Uses up the code; gives the token that only the device keeps, or `undefined` where the code is not open. A device that
   * still holds a token is the one it was, paired anew.
   */
  async pair(code: string, name: string, before?: string): Promise<string | undefined> {
    if (!this.isOpen(code)) return undefined;
    this.withdraw(); // before anything is waited for: a code lets in one device
    const was = before === undefined ? undefined : await this.#store.deviceOf(hashOf(before));
    const token = freshToken();
    await this.#store.pairDevice({ id: uuidv7(), name }, tokensOf(token), was?.id);
    if (was) this.#close(was.id);
    return token;
  }

  async deviceOf(token: string): Promise<Device | undefined> {
    return this.#saw(await this.#store.deviceOf(hashOf(token)));
  }

  /** The device that may send, by this token, what it wrote under another address of ours. */
  async carrierOf(token: string): Promise<Device | undefined> {
    return this.#saw(await this.#store.carrierOf(hashOf(token)));
  }

  /** What a page may know of its device's token, which only the browser holds: good for sending, for nothing else. */
  readonly carryOf = carryOf;

  /** A code by which a device that is let in goes on under the address where it is opened. */
  stepOver(device: string): string {
    const code = freshCode();
    this.#over.set(code, { device, until: this.#in(overMinutes) });
    return code;
  }

  /** Uses up such a code; gives the device's new token. */
  async steppedOver(code: string): Promise<string | undefined> {
    const over = this.#over.get(code);
    this.#over.delete(code);
    if (!over || this.#clock().toISOString() >= over.until) return undefined;
    const token = freshToken();
    return (await this.#store.renewDevice(over.device, tokensOf(token))) ? token : undefined;
  }

  /** When it was last seen is kept to the minute; a disk that cannot take that must not shut the device out. */
  #saw(device: Device | undefined): Device | undefined {
    if (!device) return undefined;
    const minute = `${this.#clock().toISOString().slice(0, 16)}:00.000Z`;
    if ((this.#seen.get(device.id) ?? device.seen) !== minute) {
      this.#seen.set(device.id, minute);
      this.#store.sawDevice(device.id, minute).catch(() => this.#seen.delete(device.id));
    }
    return device;
  }

  /** Whether there was such a device; what it has open is closed at once. */
  async shutOut(id: string): Promise<boolean> {
    const was = await this.#store.unpairDevice(id);
    this.#close(id);
    return was;
  }

  #close(id: string): void {
    for (const close of this.#shutOut.get(id) ?? []) close();
  }

  /** Calls back when the device is shut out; gives the way to take that back. */
  onShutOut(id: string, close: () => void): () => void {
    const closers = this.#shutOut.get(id) ?? new Set();
    this.#shutOut.set(id, closers.add(close));
    return () => {
      closers.delete(close);
      if (closers.size === 0) this.#shutOut.delete(id);
    };
  }
}

const freshCode = (): string =>
  Array.from({ length: codeLength }, () => signs[randomInt(signs.length)]).join('');
const freshToken = (): string => randomBytes(tokenBytes).toString('base64url');
const carryOf = (token: string): string => createHash('sha256').update(`carry\n${token}`).digest('base64url');
const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');
const tokensOf = (token: string): DeviceTokens => ({ token: hashOf(token), carry: hashOf(carryOf(token)) });
