import { asJpeg } from '../data/smaller-picture.js';

/** A film as this device reads it: nothing of it is sent. */
export interface OpenFilm {
  readonly file: File;
  /** its length */
  readonly seconds: number;
  /** what a player shows */
  readonly address: string;
  /**
   * The picture that the film shows at a moment, as a JPEG.
   * @param longest its long side in pixels, at most
   * @throws Error in words when the browser cannot draw it
   */
  readonly pictureAt: (seconds: number, longest: number) => Promise<Blob>;
  readonly close: () => void;
}

const longestWaitMs = 20_000;
const longestDrawingMs = 5_000;
const seekPastItsEnd = 1e7;

/**
 * Opens a film by the browser's own player.
 * @throws Error in words when it cannot be read
 */
export async function openFilm(file: File): Promise<OpenFilm> {
  const address = URL.createObjectURL(file);
  const video = Object.assign(document.createElement('video'), { muted: true, playsInline: true });
  const close = () => {
    video.removeAttribute('src');
    video.load();
    URL.revokeObjectURL(address);
  };
  try {
    const first = nextPicture(video);
    await after(video, 'loadeddata', () => {
      Object.assign(video, { preload: 'auto', src: address });
    });
    if (video.videoWidth === 0) throw new Error('there is no picture in it');
    await soon(first);
    const seconds = await lengthOf(video);
    const inTurn = oneAfterTheOther();
    const pictureAt = (at: number, longest: number) =>
      inTurn(() => drawnAt(video, Math.min(at, seconds), longest));
    return { file, seconds, address, pictureAt, close };
  } catch (error) {
    close();
    throw new Error(
      `${file.name} cannot be read by this browser. MP4 with H.264 and WebM usually can; most cameras and phones can save one.`,
      { cause: error },
    );
  }
}

/** Runs an act and waits for what the player says of it. */
function after(video: HTMLVideoElement, event: string, act: () => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const heard = new AbortController();
    const end = (done: () => void) => () => {
      heard.abort();
      clearTimeout(late);
      done();
    };
    const late = setTimeout(
      end(() => reject(new Error('the player does not answer'))),
      longestWaitMs,
    );
    const { signal } = heard;
    video.addEventListener(event, end(resolve), { signal });
    const failed = end(() => reject(new Error(video.error?.message || 'the player cannot read it')));
    video.addEventListener('error', failed, { signal });
    act();
  });
}

/** A browser's own recording does not say its length: it is known once its end was sought. */
async function lengthOf(video: HTMLVideoElement): Promise<number> {
  if (!Number.isFinite(video.duration)) await seek(video, seekPastItsEnd);
  if (!Number.isFinite(video.duration)) throw new Error('its length is not known');
  return video.duration;
}

/**
 * Resolves when the player shows the picture of that moment. “seeked” alone does not say so: Chromium was seen to draw the
 * picture of the seek before it, 84 seconds off.
 */
async function seek(video: HTMLVideoElement, seconds: number): Promise<void> {
  if (Math.abs(video.currentTime - seconds) < 0.001) return;
  const shown = nextPicture(video);
  await after(video, 'seeked', () => {
    video.currentTime = seconds;
  });
  await soon(shown);
}

/** A player that shows the same picture need not tell of it. */
const soon = (drawn: Promise<unknown>): Promise<unknown> =>
  Promise.race([drawn, new Promise((late) => setTimeout(late, longestDrawingMs))]);

/** Where a player tells of none, “seeked” has to do. */
const nextPicture = (video: HTMLVideoElement): Promise<unknown> =>
  new Promise((drawn) =>
    'requestVideoFrameCallback' in video ? video.requestVideoFrameCallback(drawn) : drawn(undefined),
  );

/** One player stands at one moment: who asks next waits for the one before. */
function oneAfterTheOther(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const mine = last.then(work, work);
    last = mine;
    return mine;
  };
}

async function drawnAt(video: HTMLVideoElement, seconds: number, longest: number): Promise<Blob> {
  await seek(video, seconds);
  return asJpeg(video, { width: video.videoWidth, height: video.videoHeight }, longest);
}
