/**
 * The bundle: a ZIP with `about.json`, `log.jsonl` (one entry a line) and `pictures/<sha256>.<ext>`, for spoken
 * notes `sounds/<sha256>.wav`, nothing else.
 */
export const bundleFormat = 'wristpin bundle';
export const bundleVersion = 1;

export const aboutName = 'about.json';
export const logName = 'log.jsonl';

export type PictureMime = 'image/jpeg' | 'image/png' | 'image/webp' | 'audio/wav';

export interface BundledPicture {
  readonly sha256: string;
  readonly mime: PictureMime;
  readonly bytes: Uint8Array;
}

export interface About {
  readonly format: typeof bundleFormat;
  readonly version: number;
  readonly entries: number;
  readonly pictures: number;
  /** of spoken notes; not stated where there are none, as in a bundle of an earlier program */
  readonly sounds?: number | undefined;
  /** of the bytes of log.jsonl: a damaged log must not be read as a shorter one */
  readonly logSha256: string;
  /** of the lines in their order, see `jobDigest`; a bundle of an earlier program states none */
  readonly digest?: string | undefined;
}

const extensions: Readonly<Record<PictureMime, string>> = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'audio/wav': 'wav',
};

export function pictureName({ sha256, mime }: Pick<BundledPicture, 'sha256' | 'mime'>): string {
  return `${isSound({ mime }) ? 'sounds' : 'pictures'}/${sha256}.${extensions[mime]}`;
}

export const isSound = ({ mime }: Pick<BundledPicture, 'mime'>): boolean => mime === 'audio/wav';

const mimes: Readonly<Record<string, PictureMime>> = {
  jpg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  wav: 'audio/wav',
};

/** The hash and form that a picture's name states; nothing for any other name, whatever it tries. */
export function readPictureName(name: string): Pick<BundledPicture, 'sha256' | 'mime'> | undefined {
  const [, sha256, extension] = /^(?:pictures|sounds)\/([0-9a-f]{64})\.(jpg|png|webp|wav)$/.exec(name) ?? [];
  const mime = extension && mimes[extension];
  return sha256 && mime && pictureName({ sha256, mime }) === name ? { sha256, mime } : undefined;
}

export async function sha256Of(bytes: Uint8Array): Promise<string> {
  // a copy, so that the digest is over an ArrayBuffer whatever the bytes are a view of
  const digest = await globalThis.crypto.subtle.digest('SHA-256', new Uint8Array(bytes));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
