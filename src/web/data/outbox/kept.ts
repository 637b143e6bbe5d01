import type { RawEntry } from '../../../job/index.js';
import type { PictureInfo, PictureState, SoundInfo } from '../api.js';

/** A line on this device that the store has not acknowledged. */
export interface KeptLine {
  readonly entry: RawEntry;
  /** in which order this device wrote; a clock that was set back does not change it */
  readonly n: number;
  /** why the store will not take it: it stays until the person decides */
  readonly refused?: string;
}

/** A picture, or the sound of a spoken note, on this device that the store does not hold whole. Its bytes lie beside this. */
export type KeptPicture = (PictureInfo | SoundInfo) & { readonly refused?: string };

export interface Kept {
  readonly lines: readonly KeptLine[];
  readonly pictures: readonly KeptPicture[];
}

export interface PictureWithBytes {
  readonly picture: KeptPicture;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Where a device keeps what the store has not got. What `keep` resolved for outlives the page and a power cut. */
export interface DeviceStorage {
  read(): Promise<Kept>;
  /** All of it or nothing. @throws DeviceFull or another error: then nothing was kept */
  keep(lines: readonly KeptLine[], pictures?: readonly PictureWithBytes[]): Promise<void>;
  /** Words about what is kept change; bytes do not. */
  mark(lines: readonly KeptLine[], pictures: readonly KeptPicture[]): Promise<void>;
  drop(lines: readonly string[], pictures: readonly string[]): Promise<void>;
  bytes(sha256: string): Promise<Uint8Array<ArrayBuffer> | undefined>;
}

/** How much a device holds. */
export interface Held {
  readonly lines: number;
  readonly pictures: number;
  /** of spoken notes; not told by an older version */
  readonly sounds?: number;
}

/** The way to the shop's store. Each rejects when the answer is no yes. */
export interface WayToStore {
  append(entries: readonly RawEntry[]): Promise<{ readonly stored: string[]; readonly already: string[] }>;
  pictureState(sha256: string): Promise<PictureState>;
  putPart(sha256: string, at: number, of: number, part: Uint8Array<ArrayBuffer>): Promise<PictureState>;
}

export interface OutboxParts {
  readonly storage: DeviceStorage;
  readonly store: WayToStore;
  /** calls back after so many milliseconds; gives the way to take that back */
  readonly later: (work: () => void, ms: number) => () => void;
  readonly sha256: (bytes: Uint8Array) => string;
  /** how much was held is remembered elsewhere too: a browser that clears its storage does not say so */
  readonly remembered?: { get(): Held | undefined; set(held: Held): void };
  /** whether the device has a network at all, where it can tell */
  readonly online?: () => boolean;
  /** other pages of this device are told that what is kept has changed */
  readonly tellOthers?: () => void;
}

/** The browser gives this page no more room. */
export class DeviceFull extends Error {}
