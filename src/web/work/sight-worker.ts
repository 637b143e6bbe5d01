import {
  type Comparison,
  compare,
  focalShareInJpeg,
  type Plate,
  type Seen,
  type SightOptions,
  type SightStep,
  see,
} from '../../sight/index.js';
import { opened } from './open-picture.js';

/** A photograph and how it is to be read. */
export interface SightAsked extends Pick<SightOptions, 'as' | 'thickness' | 'scale'> {
  readonly file: Blob;
}

/** Two parts that were read, to be laid over each other. */
export interface ComparisonAsked {
  readonly first: Plate;
  readonly second: Plate;
}

/** What comes back: each step as it begins, then what was seen or what went wrong. */
export type SightSaid =
  | { readonly step: SightStep | 'open' }
  | { readonly seen: Seen }
  | { readonly comparison: Comparison }
  | { readonly wrong: string };

const say = (said: SightSaid) => self.postMessage(said);

self.onmessage = async ({ data }: MessageEvent<SightAsked | ComparisonAsked>) => {
  try {
    say('first' in data ? { comparison: compare(data.first, data.second) } : { seen: await seenIn(data) });
  } catch (error) {
    say({ wrong: error instanceof Error ? error.message : String(error) });
  }
};

async function seenIn({ file, ...options }: SightAsked): Promise<Seen> {
  say({ step: 'open' });
  const picture = await opened(file);
  const share = focalShareInJpeg(new Uint8Array(await file.arrayBuffer()));
  const focal = share && { value: share * Math.max(picture.width, picture.height), share: 0.03 };
  const onStep = (step: SightStep) => say({ step });
  return see(picture, { ...options, ...(focal && { focal }), straight: true, onStep });
}
