import { Inflate } from 'fflate';
import { RecordError } from '../error.js';

/** A file that is read in pieces, so that a large one never lies in memory whole. */
export interface BundleSource {
  readonly size: number;
  /** the bytes from `from` on, up to `to`; fewer only where the file ends */
  slice(from: number, to: number): Promise<Uint8Array>;
}

export const inMemory = (bytes: Uint8Array): BundleSource => ({
  size: bytes.length,
  slice: async (from, to) => bytes.subarray(from, to),
});

export interface ZippedFile {
  readonly name: string;
  /** unpacked, as the ZIP states it */
  readonly size: number;
  readonly packed: number;
  readonly method: number;
  /** of its local header */
  readonly at: number;
}

const signatures = { end: 0x06054b50, central: 0x02014b50, local: 0x04034b50 };
const endBytes = 22;
const longestComment = 65_535;
const directoryBytesAFile = 400;

/**
 * The directory of a ZIP: PKWARE, ".ZIP File Format Specification", sections 4.3.12 and 4.3.16. No part of it is believed
 * further than it is used; neither ZIP64 nor encryption has a place in a bundle.
 */
export async function directoryOf(source: BundleSource, mostFiles: number): Promise<ZippedFile[]> {
  const tail = await source.slice(Math.max(0, source.size - endBytes - longestComment), source.size);
  const end = endOf(tail);
  const count = end.getUint16(10, true);
  const [length, start] = [end.getUint32(12, true), end.getUint32(16, true)];
  if (count > mostFiles) throw new RecordError(`This bundle holds more than ${mostFiles} files.`);
  if (length > count * directoryBytesAFile || start + length > source.size)
    throw damaged('its directory is damaged');
  return filesIn(await source.slice(start, start + length), count, source.size);
}

function endOf(tail: Uint8Array): DataView {
  for (let at = tail.length - endBytes; at >= 0; at--) {
    const view = viewOf(tail.subarray(at));
    if (
      view.getUint32(0, true) === signatures.end &&
      view.getUint16(20, true) === tail.length - at - endBytes
    )
      return view;
  }
  throw damaged('it has no end');
}

function filesIn(directory: Uint8Array, count: number, size: number): ZippedFile[] {
  const files: ZippedFile[] = [];
  let packed = 0;
  for (let at = 0; files.length < count; ) {
    if (at + 46 > directory.length) throw damaged('its directory is cut off');
    const view = viewOf(directory.subarray(at));
    if (view.getUint32(0, true) !== signatures.central) throw damaged('its directory is damaged');
    const nameEnd = 46 + view.getUint16(28, true);
    const file = {
      name: latin1(directory.subarray(at + 46, at + nameEnd)),
      size: view.getUint32(24, true),
      packed: view.getUint32(20, true),
      method: view.getUint16(10, true),
      at: view.getUint32(42, true),
    };
    packed += file.packed;
    // files that lie over each other are how a small ZIP unfolds without end
    if (packed > size) throw damaged('its files lie over each other');
    files.push(file);
    at += nameEnd + view.getUint16(30, true) + view.getUint16(32, true);
  }
  return files;
}

/** The bytes of one file; never more than the ZIP states for it. */
export async function unzipped(source: BundleSource, file: ZippedFile): Promise<Uint8Array> {
  const head = viewOf(await source.slice(file.at, file.at + 30));
  if (head.byteLength < 30 || head.getUint32(0, true) !== signatures.local)
    throw damaged(`“${file.name}” is not where it should be`);
  const from = file.at + 30 + head.getUint16(26, true) + head.getUint16(28, true);
  const packed = await source.slice(from, from + file.packed);
  if (packed.length !== file.packed) throw damaged(`“${file.name}” is cut off`);
  if (file.method === 0 && file.packed === file.size) return packed;
  if (file.method !== 8) throw damaged(`“${file.name}” is packed in a way that is not known here`);
  return inflated(packed, file);
}

/** What a piece of so many bytes can unfold to at once is some four megabytes: DEFLATE packs 1032 to 1 at most. */
const pieceBytes = 4096;

function inflated(packed: Uint8Array, { name, size }: ZippedFile): Uint8Array {
  const whole = new Uint8Array(size);
  let filled = 0;
  const inflate = new Inflate((piece) => {
    if (filled + piece.length > size) throw damaged(`“${name}” unpacks to more than it states`);
    whole.set(piece, filled);
    filled += piece.length;
  });
  for (let at = 0; at < packed.length; at += pieceBytes) {
    try {
      inflate.push(packed.subarray(at, at + pieceBytes), at + pieceBytes >= packed.length);
    } catch (error) {
      if (error instanceof RecordError) throw error;
      throw damaged(`“${name}” is damaged`);
    }
  }
  if (filled !== size) throw damaged(`“${name}” unpacks to less than it states`);
  return whole;
}

const viewOf = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
const latin1 = (bytes: Uint8Array) => String.fromCharCode(...bytes);

function damaged(why: string): RecordError {
  return new RecordError(`This ZIP cannot be unpacked: ${why}.`);
}
