import { straightPage } from '../../sight/index.js';
import { opened } from './open-picture.js';

/** A page laid straight, as a picture file and its size. */
export interface LaidPage {
  readonly file: Blob;
  readonly hasEdges: boolean;
}

export type PageSaid = { readonly laid: LaidPage } | { readonly wrong: string };

self.onmessage = async ({ data }: MessageEvent<Blob>) => {
  try {
    self.postMessage({ laid: await laid(data) } satisfies PageSaid);
  } catch (error) {
    self.postMessage({ wrong: error instanceof Error ? error.message : String(error) } satisfies PageSaid);
  }
};

async function laid(photograph: Blob): Promise<LaidPage> {
  const { picture, hasEdges } = straightPage(await opened(photograph));
  const { width, height, data } = picture;
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext('2d')!.putImageData(new ImageData(new Uint8ClampedArray(data), width, height), 0, 0);
  return { file: await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 }), hasEdges };
}
