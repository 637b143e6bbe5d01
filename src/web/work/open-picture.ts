import type { Picture } from '../../sight/index.js';

/**
 * The pixels of a picture file, upright as the camera held it.
 * @throws Error in words when it cannot be opened
 */
export async function opened(file: Blob): Promise<Picture> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    throw new Error('This picture cannot be read: it is damaged or cut off. Take it again.');
  }
  const { width, height } = bitmap;
  const canvas = new OffscreenCanvas(width, height);
  const drawn = canvas.getContext('2d', { willReadFrequently: true })!;
  drawn.drawImage(bitmap, 0, 0);
  bitmap.close();
  return { width, height, channels: 4, data: drawn.getImageData(0, 0, width, height).data };
}
