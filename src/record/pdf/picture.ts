import { unzlibSync } from 'fflate';
import { concatenated } from '../bytes.js';

/** The two picture forms a PDF can hold; anything else must be converted by whoever hands it over. */
export type PrintableMime = 'image/jpeg' | 'image/png';

export interface PrintablePicture {
  readonly bytes: Uint8Array;
  readonly mime: PrintableMime;
}

/** A picture, or why it cannot be printed. */
export type Printable = PrintablePicture | { readonly problem: string };

/**
 * Why a picture cannot be printed, in words, or nothing when it can.
 *
 * A damaged PNG would otherwise throw from a callback inside the PDF library, where no caller can catch it; so its
 * pixel data is unpacked once here, bounded by the size that its header states.
 */
export function pictureProblem(bytes: Uint8Array): string | undefined {
  if (startsWith(bytes, [0xff, 0xd8])) return jpegProblem(bytes);
  if (startsWith(bytes, pngSignature)) return pngProblem(bytes);
  return 'neither JPEG nor PNG';
}

const pngSignature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, i) => bytes[i] === byte);
}

/** Frame headers of JPEG (ITU-T T.81, table B.1): SOF0 … SOF15 without DHT, JPG and DAC. */
const isFrameHeader = (marker: number) =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

function jpegProblem(bytes: Uint8Array): string | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 2; at + 9 < bytes.length; ) {
    if (view.getUint8(at) !== 0xff) return 'a damaged JPEG';
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) at += 1;
    else if (isFrameHeader(marker))
      return view.getUint16(at + 5) > 0 && view.getUint16(at + 7) > 0 ? undefined : 'an empty JPEG';
    else at += 2 + view.getUint16(at + 2);
  }
  return 'a damaged JPEG';
}

function pngProblem(bytes: Uint8Array): string | undefined {
  try {
    const { header, data } = pngChunks(bytes);
    const wanted = pngRawSize(header);
    return unzlibSync(data, { out: new Uint8Array(wanted) }).length === wanted ? undefined : 'a damaged PNG';
  } catch {
    return 'a PNG that is damaged, interlaced or too large';
  }
}

function pngChunks(bytes: Uint8Array): { header: DataView; data: Uint8Array } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const parts: Uint8Array[] = [];
  let header: DataView | undefined;
  for (let at = 8; at + 12 <= bytes.length; at += 12 + view.getUint32(at)) {
    const length = view.getUint32(at);
    const name = view.getUint32(at + 4);
    if (at + 12 + length > bytes.length) throw new RangeError('a chunk runs past the end');
    if (name === 0x49484452) header = new DataView(view.buffer, view.byteOffset + at + 8, length);
    if (name === 0x49444154) parts.push(bytes.subarray(at + 8, at + 8 + length));
    if (name === 0x49454e44 && header) return { header, data: concatenated(parts) };
  }
  throw new RangeError('no end chunk');
}

const channelsByColorType: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };
const mostPixels = 50_000_000;

/** Bytes of the unpacked pixel rows, each with its filter byte (ISO/IEC 15948, 7.2). Interlaced ones are refused. */
function pngRawSize(header: DataView): number {
  const width = header.getUint32(0);
  const height = header.getUint32(4);
  const channels = channelsByColorType[header.getUint8(9)];
  if (!channels || header.getUint8(12) !== 0 || width * height === 0 || width * height > mostPixels) {
    throw new RangeError('a form of PNG that is not printed');
  }
  return height * (1 + Math.ceil((width * channels * header.getUint8(8)) / 8));
}
