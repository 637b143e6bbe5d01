import type { Sharp } from 'sharp';
import { mostPixels } from '../job/index.js';
import { ShopkeepError } from './error.js';

export const pictureTypes = ['image/jpeg', 'image/png', 'image/webp'] as const;
export type PictureType = (typeof pictureTypes)[number];

/** What is known of a picture once it was looked into. */
export interface PictureFacts {
  readonly mime: PictureType;
  readonly bytes: number;
  /** as it is shown, after the turn that its EXIF orientation asks for */
  readonly width: number;
  readonly height: number;
}

/** Past this they are unfolded one after the other. */
const manyPixels = 25_000_000;

/**
 * Looks into the bytes, whatever the file is called: a picture of a type that every browser shows, whole enough to
 * be decoded.
 *
 * @throws ShopkeepError saying what it is instead and what to do
 */
export async function inspectPicture(bytes: Uint8Array): Promise<PictureFacts> {
  const mime = await sniff(bytes);
  try {
    const { autoOrient, width, height, isProgressive } = await (await open(bytes)).metadata();
    const isHeld = mime !== 'image/jpeg' || isProgressive;
    if (isHeld && width * height > mostPixels.held) throw tooManyPixels(mime, mostPixels.held);
    // decodes all of it: a cut-off picture fails here
    await unfolded(bytes, (picture) => picture.resize(8, 8, { fit: 'fill' }).raw().toBuffer());
    return { mime, bytes: bytes.byteLength, width: autoOrient.width, height: autoOrient.height };
  } catch (error) {
    throw undecodable(mime, error);
  }
}

/** The picture turned upright and no wider than `width`, as WebP. */
export async function narrowed(bytes: Uint8Array, width: number): Promise<Uint8Array<ArrayBuffer>> {
  const small = await unfolded(bytes, (picture) =>
    picture.autoOrient().resize({ width, withoutEnlargement: true }).webp({ quality: 80 }).toBuffer(),
  );
  return new Uint8Array(small);
}

/** The picture turned upright, as a JPEG of the size that a printed page can show. */
export async function printable(bytes: Uint8Array): Promise<Uint8Array> {
  const within = { fit: 'inside', withoutEnlargement: true } as const;
  return unfolded(bytes, (picture) =>
    picture
      .autoOrient()
      .resize(1200, 1200, within)
      .flatten({ background: '#fff' })
      .jpeg({ quality: 82 })
      .toBuffer(),
  );
}

let turn: Promise<unknown> = Promise.resolve();

async function unfolded<T>(bytes: Uint8Array, work: (picture: Sharp) => Promise<T>): Promise<T> {
  const picture = await open(bytes);
  const { width, height } = await picture.metadata();
  if (width * height <= manyPixels) return work(picture);
  const mine = turn.then(() => work(picture));
  turn = mine.catch(() => {});
  return mine;
}

/** @throws ShopkeepError when the store holds a picture or a sound of a type that it cannot have taken */
export function asKeptType(mime: string): PictureType | 'audio/wav' {
  const known = mime === 'audio/wav' ? mime : pictureTypes.find((each) => each === mime);
  if (known) return known;
  throw refused(`A picture of the type ${mime} cannot be passed on.`);
}

/** The libraries are large, and loaded only when there is a picture: most commands never see one. */
async function open(bytes: Uint8Array): Promise<Sharp> {
  const { default: sharp } = await import('sharp');
  // it keeps the last pictures unfolded, a large one 300 MB each: nobody asks for the same again so soon
  sharp.cache(false);
  return sharp(bytes, { limitInputPixels: mostPixels.inLines, failOn: 'error' });
}

async function sniff(bytes: Uint8Array): Promise<PictureType> {
  const { fileTypeFromBuffer } = await import('file-type');
  const type = await fileTypeFromBuffer(bytes);
  const known = pictureTypes.find((mime) => mime === type?.mime);
  if (known) return known;
  if (type && /^image\/hei[cf]/.test(type.mime)) throw heic();
  const what = type ? `of the type ${type.ext.toUpperCase()}` : 'not a picture, whatever its name says';
  throw refused(`This file is ${what}. Pictures are taken as JPEG, PNG or WebP; nothing was stored.`);
}

function heic(): ShopkeepError {
  return refused(
    'This picture is HEIC, which most browsers cannot show. Set the phone’s camera to its most compatible format, or send the picture as JPEG; nothing was stored.',
  );
}

function undecodable(mime: PictureType, error: unknown): ShopkeepError {
  if (error instanceof ShopkeepError) return error;
  if (error instanceof Error && /pixel limit/i.test(error.message))
    return tooManyPixels(mime, mostPixels.inLines);
  return refused(
    `This ${nameOf(mime)} is damaged or cut off and cannot be shown. Send it again; nothing was stored.`,
  );
}

const nameOf = (mime: PictureType): string => mime.slice('image/'.length).toUpperCase();

function tooManyPixels(mime: PictureType, most: number): ShopkeepError {
  return refused(
    `This ${nameOf(mime)} unfolds to more than ${most / 1e6} million pixels; nothing was stored.`,
  );
}

function refused(message: string): ShopkeepError {
  return new ShopkeepError('bad-picture', message, 'picture');
}
