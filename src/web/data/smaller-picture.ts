import { mostPixels, pictureFrame } from '../../job/index.js';

/** Long side in pixels: a nameplate filled by the picture can still be read. */
export const longestSide = 2400;

/**
 * The picture as a JPEG whose long side is at most 2,400 pixels.
 * @throws Error in words when the browser cannot draw it, or it has more pixels than are unfolded anywhere: at the most,
 * 150 million, Chromium takes 1.6 GB for it (measured)
 */
export async function smaller(picture: Blob): Promise<Blob> {
  const frame = pictureFrame(new Uint8Array(await picture.arrayBuffer()));
  const pixels = frame ? frame.width * frame.height : 0;
  if (pixels > mostPixels.inLines)
    throw new Error(
      `This picture has ${Math.round(pixels / 1e6)} million pixels, too many to be made smaller here. Take it again with a smaller size set on the camera.`,
    );
  const bitmap = await createImageBitmap(picture);
  try {
    return await asJpeg(bitmap, bitmap, longestSide);
  } finally {
    bitmap.close();
  }
}

/**
 * What can be drawn as a JPEG whose long side is at most `longest` pixels.
 * @throws Error in words when the browser cannot draw it
 */
export function asJpeg(
  drawn: CanvasImageSource,
  { width, height }: { readonly width: number; readonly height: number },
  longest: number,
): Promise<Blob> {
  const by = Math.min(1, longest / Math.max(width, height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * by));
  canvas.height = Math.max(1, Math.round(height * by));
  canvas.getContext('2d')?.drawImage(drawn, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => {
    const done = (blob: Blob | null) =>
      blob ? resolve(blob) : reject(new Error('This browser cannot make a picture of it.'));
    canvas.toBlob(done, 'image/jpeg', 0.85);
  });
}
