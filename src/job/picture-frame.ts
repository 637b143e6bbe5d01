/** What the head of a picture says of its pixels, before any of them is unfolded. */
export interface PictureFrame {
  /** as they are stored, before any turn */
  readonly width: number;
  readonly height: number;
  /** all of it has to be in memory before any of it can be shown: all but a JPEG that comes line after line */
  readonly isHeld: boolean;
}

/**
 * A few kilobytes can unfold to gigabytes of pixels. Phones with a fine sensor make JPEGs of 108 million, line after line,
 * which are read at an eighth of their size; whatever else there is has to be held whole.
 */
export const mostPixels = { inLines: 150_000_000, held: 50_000_000 };

/** Whether it is more than is taken, here and at the bench. */
export const isTooLarge = ({ width, height, isHeld }: PictureFrame): boolean =>
  width * height > (isHeld ? mostPixels.held : mostPixels.inLines);

/**
 * Formats: JPEG, ITU-T T.81 B.2.2 (frame header); PNG, third edition, 11.2.1; WebP, RFC 9649, 2.5 to 2.7.
 * @returns undefined where the head is of another form or cut off: whoever unfolds it finds out
 */
export function pictureFrame(bytes: Uint8Array): PictureFrame | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    if (view.getUint16(0) === 0xffd8) return jpegFrame(view);
    if (view.getUint32(0) === 0x89504e47 && view.getUint32(12) === words('IHDR'))
      return { width: view.getUint32(16), height: view.getUint32(20), isHeld: true };
    if (view.getUint32(0) === words('RIFF') && view.getUint32(8) === words('WEBP')) return webpFrame(view);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
  return undefined;
}

const words = (four: string) => [...four].reduce((sum, sign) => sum * 256 + sign.charCodeAt(0), 0);

/** Of the sixteen markers 0xc0 to 0xcf three begin tables or extensions, the others a frame. */
const noFrames = [0xc4, 0xc8, 0xcc];
const progressive = [0xc2, 0xc6, 0xca, 0xce];

function jpegFrame(view: DataView): PictureFrame | undefined {
  for (let at = 2; view.getUint8(at) === 0xff; ) {
    const kind = view.getUint8(at + 1);
    if (kind === 0xff) {
      at += 1; // a fill byte
      continue;
    }
    if (kind >= 0xc0 && kind <= 0xcf && !noFrames.includes(kind))
      return {
        width: view.getUint16(at + 7),
        height: view.getUint16(at + 5),
        isHeld: progressive.includes(kind),
      };
    at += 2 + view.getUint16(at + 2);
  }
  return undefined;
}

function webpFrame(view: DataView): PictureFrame | undefined {
  const kind = view.getUint32(12);
  if (kind === words('VP8X')) {
    const less = (at: number) => view.getUint16(at, true) + 65_536 * view.getUint8(at + 2) + 1;
    return { width: less(24), height: less(27), isHeld: true };
  }
  if (kind === words('VP8 '))
    return {
      width: view.getUint16(26, true) & 0x3fff,
      height: view.getUint16(28, true) & 0x3fff,
      isHeld: true,
    };
  if (kind !== words('VP8L')) return undefined;
  const bits = view.getUint32(21, true);
  return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1, isHeld: true };
}
