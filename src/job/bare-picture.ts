/**
 * A picture without what the camera wrote beside it: where it was taken, when, with which device and its serial number,
 * a small second picture, a film after its end. How it is to be turned stays, and its colors.
 *
 * Formats: JPEG, ITU-T T.81 annex B and JEITA CP-3451 (Exif); PNG, W3C "Portable Network Graphics" third edition, 11.3;
 * WebP, RFC 9649. The image itself is not touched. Bytes of another form come back as they are: whoever takes them in looks
 * into them and refuses what is no picture.
 */
export function barePicture(bytes: Uint8Array): Uint8Array {
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return bareJpeg(bytes) ?? bytes;
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return barePng(bytes) ?? bytes;
  if (latin1(bytes, 0, 4) === 'RIFF' && latin1(bytes, 8, 12) === 'WEBP') return bareWebp(bytes) ?? bytes;
  return bytes;
}

const marker = {
  app0: 0xe0,
  app1: 0xe1,
  app2: 0xe2,
  app14: 0xee,
  app15: 0xef,
  comment: 0xfe,
  scan: 0xda,
  end: 0xd9,
};

function bareJpeg(bytes: Uint8Array): Uint8Array | undefined {
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  let turn = 1;
  for (let at = 2; ; ) {
    if (bytes[at] !== 0xff) return undefined;
    const kind = bytes[at + 1];
    if (kind === undefined) return undefined;
    if (kind === 0xff) {
      at += 1; // a fill byte
      continue;
    }
    if (kind === marker.end) {
      kept.push(bytes.subarray(at, at + 2));
      break; // what follows is no part of this picture
    }
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    let end = at + 2 + length;
    if (length < 2 || end > bytes.length) return undefined;
    const segment = bytes.subarray(at, end);
    if (kind === marker.app1 && latin1(segment, 4, 10) === 'Exif\0\0')
      turn = turnIn(segment.subarray(10)) ?? turn;
    if (kind === marker.scan) {
      const next = endOfScan(bytes, end);
      if (next === undefined) return undefined;
      kept.push(bytes.subarray(at, next));
      end = next;
    } else if (!isBeside(kind, segment)) kept.push(segment);
    at = end;
  }
  if (turn !== 1) kept.splice(1, 0, exifSegment(turn));
  return joined(kept);
}

/** What stands beside the image: application segments but those that say how its colors are meant, and comments. */
function isBeside(kind: number, segment: Uint8Array): boolean {
  if (kind === marker.comment) return true;
  if (kind < marker.app0 || kind > marker.app15) return false;
  if (kind === marker.app0) return latin1(segment, 4, 9) !== 'JFIF\0';
  if (kind === marker.app2) return latin1(segment, 4, 16) !== 'ICC_PROFILE\0';
  return !(kind === marker.app14 && latin1(segment, 4, 9) === 'Adobe');
}

/** The first byte of the marker after a scan; within one, 0xff stands before a zero or a restart marker only. */
function endOfScan(bytes: Uint8Array, from: number): number | undefined {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next === undefined) return undefined;
    if (next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
  }
  return undefined;
}

const orientationTag = 0x0112;

/** The turn that a TIFF structure asks for, 1 to 8 (Exif, "Orientation"). */
function turnIn(tiff: Uint8Array): number | undefined {
  if (tiff.length < 14) return undefined;
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  const little = latin1(tiff, 0, 2) === 'II';
  const start = view.getUint32(4, little);
  if (start + 2 > tiff.length) return undefined;
  const count = view.getUint16(start, little);
  for (let i = 0; i < count; i++) {
    const at = start + 2 + 12 * i;
    if (at + 12 > tiff.length) return undefined;
    if (view.getUint16(at, little) !== orientationTag) continue;
    const turn = view.getUint16(at + 8, little);
    return turn >= 1 && turn <= 8 ? turn : undefined;
  }
  return undefined;
}

/** A TIFF structure that says the turn and nothing else. */
const tiffSaying = (turn: number) =>
  Uint8Array.of(0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, turn, 0, 0, 0, 0, 0, 0);

function exifSegment(turn: number): Uint8Array {
  const body = joined([Uint8Array.from('Exif\0\0', (sign) => sign.charCodeAt(0)), tiffSaying(turn)]);
  return joined([Uint8Array.of(0xff, marker.app1, 0, body.length + 2), body]);
}

const besidePng = new Set(['tEXt', 'zTXt', 'iTXt', 'tIME', 'eXIf']);

function barePng(bytes: Uint8Array): Uint8Array | undefined {
  const kept: Uint8Array[] = [bytes.subarray(0, 8)];
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 8; at + 12 <= bytes.length; ) {
    const end = at + 12 + view.getUint32(at);
    if (end > bytes.length) return undefined;
    const kind = latin1(bytes, at + 4, at + 8);
    const turn = kind === 'eXIf' ? turnIn(bytes.subarray(at + 8, end - 4)) : undefined;
    if (turn !== undefined && turn !== 1) kept.push(pngChunk('eXIf', tiffSaying(turn)));
    if (!besidePng.has(kind)) kept.push(bytes.subarray(at, end));
    if (kind === 'IEND') return joined(kept);
    at = end;
  }
  return undefined;
}

function pngChunk(kind: string, data: Uint8Array): Uint8Array {
  const named = joined([Uint8Array.from(kind, (sign) => sign.charCodeAt(0)), data]);
  const chunk = new Uint8Array(named.length + 8);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, data.length);
  chunk.set(named, 4);
  view.setUint32(named.length + 4, crc32(named));
  return chunk;
}

/** CRC-32 of ISO 3309 as PNG uses it, bit by bit: it is asked for some thirty bytes. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

/** In the head of an extended file: that it holds Exif, and that it holds XMP. */
const webpFlags = { exif: 0x08, xmp: 0x04 };

function bareWebp(bytes: Uint8Array): Uint8Array | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const whole = Math.min(bytes.length, 8 + view.getUint32(4, true));
  const kept: Uint8Array[] = [];
  let turn = 1;
  for (let at = 12; at + 8 <= whole; ) {
    const size = view.getUint32(at + 4, true);
    const end = at + 8 + size + (size % 2);
    if (at + 8 + size > whole) return undefined;
    const kind = latin1(bytes, at, at + 4);
    const data = bytes.subarray(at + 8, at + 8 + size);
    if (kind === 'EXIF') turn = turnIn(latin1(data, 0, 6) === 'Exif\0\0' ? data.subarray(6) : data) ?? turn;
    else if (kind !== 'XMP ') kept.push(bytes.slice(at, end));
    at = end;
  }
  const head = kept.find((chunk) => latin1(chunk, 0, 4) === 'VP8X');
  if (head) head[8]! &= ~(webpFlags.exif | webpFlags.xmp);
  if (head && turn !== 1) {
    head[8]! |= webpFlags.exif;
    kept.push(riffChunk('EXIF', tiffSaying(turn)));
  }
  const body = joined(kept);
  return joined([riffChunk('RIFF', new Uint8Array(0), body.length + 4), ascii('WEBP'), body]);
}

function riffChunk(kind: string, data: Uint8Array, length = data.length): Uint8Array {
  const size = new Uint8Array(4);
  new DataView(size.buffer).setUint32(0, length, true);
  return joined([ascii(kind), size, data]);
}

const ascii = (text: string) => Uint8Array.from(text, (sign) => sign.charCodeAt(0));
const latin1 = (bytes: Uint8Array, from: number, to: number) =>
  String.fromCharCode(...bytes.subarray(from, to));
const startsWith = (bytes: Uint8Array, signs: readonly number[]) =>
  signs.every((sign, i) => bytes[i] === sign);

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
