import { sha256 as sha256Of } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { useSyncExternalStore } from 'react';
import { uuidv7 } from 'uuidv7';
import {
  type Body,
  barePicture,
  type EntryKind,
  entryVersion,
  isTooLarge,
  localTime,
  pictureFrame,
  type RawEntry,
  readEntry,
} from '../../job/index.js';
import { api, NotPaired, onContact, type PictureInfo, ServerError } from './api.js';
import { benchNow } from './bench-clock.js';
import { isElsewhere } from './contact.js';
import { signature } from './device.js';
import { forgetWritten, tellWritten } from './just-written.js';
import { contextOf } from './known-jobs.js';
import { shopSeen } from './lines.js';
import { deviceStorage } from './outbox/device-storage.js';
import type { Held, PictureWithBytes } from './outbox/kept.js';
import { DeviceOutbox, type Outbox } from './outbox/outbox.js';
import type { Refused } from './outbox/rules.js';
import { howMuch } from './outbox/words.js';
import { remember, remembered } from './remember.js';
import { smaller } from './smaller-picture.js';
import { rankHere, see } from './stands-after.js';

/** The outbox of this device, on this page. How it decides: `outbox/`. */
export type { Outbox };

const sha256 = (bytes: Uint8Array) => bytesToHex(sha256Of(bytes)); // not the browser's own: plain HTTP has none
const online = () => globalThis.navigator?.onLine !== false;
const heldKey = 'wristpin.held';
let others: BroadcastChannel | undefined;

const here: DeviceOutbox = new DeviceOutbox({
  storage: deviceStorage('wristpin-outbox', () => void here.reread()),
  store: api,
  sha256,
  later: (work, ms) => {
    const timer = setTimeout(work, ms);
    return () => clearTimeout(timer);
  },
  online,
  remembered: {
    get: () => {
      const text = remembered(heldKey);
      return text === undefined ? undefined : (JSON.parse(text) as Held);
    },
    set: (held) => remember(heldKey, howMuch(held) > 0 ? JSON.stringify(held) : undefined),
  },
  tellOthers: () => others?.postMessage('changed'),
});

/** Reads what an earlier visit left unsent, and tries again now and whenever the network comes back. */
export async function startOutbox(): Promise<void> {
  window.addEventListener('online', () => {
    void here.send();
    // with nothing to send nobody else would find out that the bench is there again
    api.health().catch(() => {});
  });
  window.addEventListener('offline', () => here.heard('no network'));
  others = new BroadcastChannel('wristpin-outbox');
  others.onmessage = () => void here.reread();
  onContact((found) => {
    if (found === 'reached') return here.heard('reached');
    if (found instanceof NotPaired) return here.heard('not paired');
    // a question that this store cannot answer says nothing of whether it keeps
    if (found instanceof ServerError)
      return found.status >= 502 ? here.heard('out of order', found.message) : undefined;
    void hearElsewhere();
  });
  await here.start();
}

/** What is written arrives at another address of the bench, if it is there; nobody need read "not reached" then. */
async function hearElsewhere(): Promise<void> {
  const arrives = online() && (await isElsewhere());
  here.heard(arrives ? 'reached' : online() ? 'no answer' : 'no network');
}

/** As when the page is left: nothing more is sent from here. @public for tests, which open several pages in one process */
export function stopOutbox(): void {
  here.stop();
  others?.close();
}

/**
 * Writes a line into a job's log. Resolves once the line is durable on this device; the store's word follows.
 * @throws EntryError when the body is not one the log takes
 */
export async function write<K extends EntryKind>(job: string, kind: K, body: Body<K>): Promise<RawEntry> {
  const [entry] = await writeAll(job, [{ kind, body }]);
  return entry!;
}

/** Several lines at once, in order; they reach the store together or not at all. */
export async function writeAll(
  job: string,
  lines: readonly { kind: EntryKind; body: unknown }[],
  pictures: readonly PictureWithBytes[] = [],
): Promise<RawEntry[]> {
  const made = await keepLines(job, lines, pictures);
  tellWritten(made);
  return made;
}

/** Strikes what was just written. */
export async function takeBack(written: readonly RawEntry[]): Promise<void> {
  const strikes = written.map(({ id }) => ({
    kind: 'strike' as const,
    body: { entry: id, reason: 'taken back at once' },
  }));
  if (written[0]) await keepLines(written[0].job, strikes);
  forgetWritten();
}

let isSpoken = false;

/** Every line that `act` writes is marked as spoken. */
export async function asSpoken<T>(act: () => T | Promise<T>): Promise<T> {
  isSpoken = true;
  try {
    return await act();
  } finally {
    isSpoken = false;
  }
}

async function keepLines(
  job: string,
  lines: readonly { kind: EntryKind; body: unknown }[],
  pictures: readonly PictureWithBytes[] = [],
): Promise<RawEntry[]> {
  const at = localTime(benchNow());
  const mark = isSpoken && { spoken: true };
  const frame = { job, at, ...rankHere(job, at), ...mark, by: signature(), v: entryVersion };
  const made = lines.map(({ kind, body }) =>
    readEntry({ ...frame, id: uuidv7(), kind, body: clean(body) }, contextOf(job)),
  );
  see(job, made);
  await here.keep(made, pictures);
  return made;
}

/** Drops fields left undefined, which JSON would drop anyway. */
function clean(body: unknown): unknown {
  return JSON.parse(JSON.stringify(body));
}

/** A photograph with the line that shows it: both are durable on this device, or neither. */
export async function writePhotograph(
  job: string,
  file: Blob,
  body: Omit<Body<'photograph'>, 'picture'>,
): Promise<RawEntry> {
  const kept = await readPicture(file);
  const [entry] = await writeAll(
    job,
    [{ kind: 'photograph', body: { ...body, picture: kept.picture } }],
    [kept],
  );
  return entry!;
}

/** What was said, with the line that plays it: both are durable on this device, or neither. */
export async function writeSpokenNote(
  job: string,
  { wav, seconds }: { readonly wav: Uint8Array<ArrayBuffer>; readonly seconds: number },
  body: Omit<Body<'spoken-note'>, 'sound'>,
): Promise<void> {
  const sound = { sha256: sha256(wav), mime: 'audio/wav', bytes: wav.length, seconds } as const;
  await writeAll(job, [{ kind: 'spoken-note', body: { ...body, sound } }], [{ picture: sound, bytes: wav }]);
}

/** @throws Error in words when this is no picture that the shop takes */
export async function readPicture(file: Blob): Promise<PictureWithBytes> {
  if (!['image/jpeg', 'image/png', 'image/webp'].includes(file.type))
    throw new Error('That is not a JPEG, PNG or WebP picture.');
  const taken = new Uint8Array(await file.arrayBuffer());
  // where it was taken, and with which camera, leaves this device only when the shop says so
  const bytes =
    shopSeen()?.settings['picture-origin'] === 'kept' ? taken : new Uint8Array(barePicture(taken));
  const frame = pictureFrame(taken);
  // what the store will not take is not unfolded here: it is kept, refused there, and the person decides
  const { width, height } = frame && isTooLarge(frame) ? frame : await sizeOf(file);
  const mime = file.type as PictureInfo['mime'];
  return { picture: { sha256: sha256(bytes), bytes: bytes.length, mime, width, height }, bytes };
}

async function sizeOf(file: Blob) {
  try {
    const bitmap = await createImageBitmap(file);
    const { width, height } = bitmap;
    bitmap.close?.();
    return { width, height };
  } catch {
    throw new Error('This picture cannot be read: it is damaged or cut off. Take it again.');
  }
}

/** A picture or a sound that has not reached the store yet, if this device holds it. */
export async function localPicture(sha256: string): Promise<Blob | undefined> {
  const bytes = await here.bytes(sha256);
  return bytes && new Blob([bytes]);
}

export const outboxNow = here.now;
export const whenSaved = here.whenSaved;

/** Calls back each time that the store is there again after it was not. */
export function whenBackAgain(tell: () => void): void {
  let { reach } = here.now();
  here.subscribe(() => {
    const before = reach;
    reach = here.now().reach;
    if (reach === 'reached' && before !== reach && before !== 'not asked') tell();
  });
}

export const tryAgain = (refused: Refused) => here.tryAgain(refused);
export const dropRefused = (refused: Refused) => here.drop(refused);
export const forgetMissing = () => here.forgetMissing();

/** A refused picture goes again as a smaller one. */
export async function sendSmaller(refused: Refused): Promise<void> {
  const bytes = refused.picture && (await here.bytes(refused.picture.sha256));
  if (bytes) await here.putInPlace(refused, await readPicture(await smaller(new Blob([bytes]))));
}

export const useOutbox = (): Outbox => useSyncExternalStore(here.subscribe, here.now);
