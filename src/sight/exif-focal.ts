/** Exif 2.32 (CIPA DC-008), 4.6.5: the focal length of a 36 mm wide frame with the same view. */
const focalIn35mm = 0xa405;
const exifPart = 0x8769;
const short = 3;

/**
 * The focal length as a share of the picture’s longer side, where a file’s Exif block tells it; undefined elsewhere.
 * The 35 mm figure is by the diagonal of 36 × 24 mm (43.27 mm); a 4 : 3 picture of that diagonal is 34.6 mm long.
 */
export function focalShare(exif: Uint8Array): number | undefined {
  const head = String.fromCharCode(...exif.subarray(0, 4)) === 'Exif' ? 6 : 0;
  const view = new DataView(exif.buffer, exif.byteOffset + head, exif.byteLength - head);
  try {
    const little = view.getUint16(0) === 0x4949;
    const part = entry(view, view.getUint32(4, little), exifPart, little);
    if (part === undefined) return undefined;
    const at = entry(view, view.getUint32(part + 8, little), focalIn35mm, little);
    if (at === undefined || view.getUint16(at + 2, little) !== short) return undefined;
    const focal = view.getUint16(at + 8, little);
    return focal >= 10 && focal <= 200 ? focal / 34.6 : undefined;
  } catch (error) {
    if (error instanceof RangeError) return undefined; // a block that is cut off tells nothing
    throw error;
  }
}

/** The same of a JPEG file as it came from the camera (ITU-T T.81 annex B: segments before the first scan). */
export function focalShareInJpeg(bytes: Uint8Array): number | undefined {
  for (let at = 2; bytes[at] === 0xff && bytes[at + 1] !== 0xda; ) {
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    if (length < 2) return undefined;
    const block = bytes.subarray(at + 4, at + 2 + length);
    if (bytes[at + 1] === 0xe1 && String.fromCharCode(...block.subarray(0, 4)) === 'Exif')
      return focalShare(block);
    at += 2 + length;
  }
  return undefined;
}

/** Where the entry of a tag stands in a directory. */
function entry(view: DataView, directory: number, tag: number, little: boolean): number | undefined {
  const count = view.getUint16(directory, little);
  for (let i = 0; i < count; i += 1) {
    const at = directory + 2 + 12 * i;
    if (view.getUint16(at, little) === tag) return at;
  }
  return undefined;
}
