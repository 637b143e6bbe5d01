import { focalShare, type Picture } from '../../sight/index.js';
import { Failed } from '../command.js';

const takes = 'JPEG, PNG, WebP, TIFF and AVIF';
/** a telephone’s largest; beyond it memory runs short */
const mostPixels = 60e6;

export interface DecodedPicture {
  readonly picture: Picture;
  /** in pixels, where the file says it */
  readonly focal?: { readonly value: number; readonly share: number };
}

/** The pixels of a photograph, upright as the camera held it. Throws Failed, in words, for what is not one. */
export async function decodePicture(bytes: Uint8Array, file: string): Promise<DecodedPicture> {
  if (bytes.length === 0) throw new Failed(`${file} is empty.`);
  const { default: sharp } = await import('sharp');
  try {
    const source = sharp(bytes, { limitInputPixels: mostPixels });
    const { exif } = await source.metadata();
    const { data, info } = await source
      .rotate()
      .toColorspace('srgb')
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const share = exif && focalShare(exif);
    const focal = share ? { focal: { value: share * Math.max(info.width, info.height), share: 0.03 } } : {};
    return { picture: { data, width: info.width, height: info.height, channels: 3 }, ...focal };
  } catch (cause) {
    const words = cause instanceof Error ? cause.message : '';
    if (/pixel limit/i.test(words))
      throw new Failed(`${file} is larger than ${mostPixels / 1e6} million pixels.`, { cause });
    if (/unsupported image format/i.test(words))
      throw new Failed(`${file} is not a picture that can be read: the command line takes ${takes}.`, {
        cause,
      });
    throw new Failed(`${file} cannot be read as a picture: it is damaged or cut off.`, { cause });
  }
}
