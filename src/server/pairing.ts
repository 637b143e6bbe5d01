import { createHash, randomBytes, randomInt } from 'node:crypto';
import { uuidv7 } from 'uuidv7';
import type { Device, Store } from '../store/index.js';

/** A code shown on the bench computer; who opens its address within its time may pair one device. */
export interface PairingCode {
  readonly code: string;
  /** ISO 8601 */
  readonly until: string;
}

const codeMinutes = 10;
/** Without letters and figures that are mistaken for each other. */
const signs = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789';
const codeLength = 8;
/** Guessing withdraws the code: of 31⁸ codes so few tries find one in a hundred thousand million. */
const mostWrong = 10;
const tokenBytes = 32;

/** Lets devices in, one code and one device at a time, and shuts them out again. */
export class Pairing {
  readonly #store: Store;
  readonly #clock: () => Date;
  readonly #shutOut = new Map<string, Set<() => void>>();
  #open: PairingCode | undefined;
  #wrong = 0;

  constructor(store: Store, clock: () => Date) {
    this.#store = store;
    this.#clock = clock;
  }

  /** A fresh code; the one before it is good no longer. */
  begin(): PairingCode {
    const code = Array.from({ length: codeLength }, () => signs[randomInt(signs.length)]).join('');
    const until = new Date(this.#clock().getTime() + codeMinutes * 60_000).toISOString();
    this.#open = { code, until };
    this.#wrong = 0;
    return this.#open;
  }

  /** Whether this is the code that stands open; a wrong one counts as a try. */
  isOpen(code: string): boolean {
    const open = this.#open;
    if (open === undefined || this.#clock().toISOString() >= open.until) return false;
    if (code.toUpperCase() === open.code) return true;
    this.#wrong += 1;
    if (this.#wrong >= mostWrong) this.#open = undefined;
    return false;
  }

  /** Uses up the code; gives the token that only the device keeps, or `undefined` where the code is not open. */
  async pair(code: string, name: string): Promise<string | undefined> {
    if (!this.isOpen(code)) return undefined;
    this.#open = undefined; // before anything is waited for: a code lets in one device
    const token = randomBytes(tokenBytes).toString('base64url');
    await this.#store.pairDevice({ id: uuidv7(), name }, hashOf(token));
    return token;
  }

  deviceOf(token: string): Promise<Device | undefined> {
    return this.#store.deviceOf(hashOf(token));
  }

  /** Whether there was such a device; what it has open is closed at once. */
  async shutOut(id: string): Promise<boolean> {
    const was = await this.#store.unpairDevice(id);
    for (const close of this.#shutOut.get(id) ?? []) close();
    return was;
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

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');
