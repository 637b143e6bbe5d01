import { mostPixels, pictureFrame } from '../../job/index.js';

/** Long side in pixels: a nameplate filled by the picture can still be read. */
const longestSide = 2400;

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
  const by = Math.min(1, longestSide / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * by));
  canvas.height = Math.max(1, Math.round(bitmap.height * by));
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return new Promise((resolve, reject) => {
    const done = (blob: Blob | null) =>
      blob ? resolve(blob) : reject(new Error('This browser cannot make the picture smaller.'));
    canvas.toBlob(done, 'image/jpeg', 0.85);
  });
}
