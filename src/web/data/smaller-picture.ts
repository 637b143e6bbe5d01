/** Long side in pixels: a nameplate filled by the picture can still be read. */
const longestSide = 2400;

/** The picture as a JPEG whose long side is at most 2,400 pixels. @throws Error when the browser cannot draw it */
export async function smaller(picture: Blob): Promise<Blob> {
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
