/** One channel, as the ear takes it. */
export interface Sound {
  readonly samples: Float32Array;
  readonly sampleRate: number;
}

/** Enough for every order of an engine that a phone's microphone hears, and a third of the work of 48 kHz. */
const hearingRate = 16_000;

/**
 * The sound of a recording, or the sound track of a film, mixed to one channel. The browser's own decoder reads it: WAV,
 * MP3, M4A, OGG, WebM and MP4 in every common browser. Nothing leaves the device.
 */
export async function decode(file: Blob, name: string): Promise<Sound> {
  if (file.size === 0) throw new Error(`${name} is empty.`);
  const bytes = await file.arrayBuffer();
  const context = new OfflineAudioContext(1, 1, hearingRate);
  const buffer = await context.decodeAudioData(bytes).catch(() => {
    throw new Error(
      `${name} holds no sound that this browser can read. WAV, MP3, M4A, OGG and MP4 usually work.`,
    );
  });
  return { samples: mixed(buffer), sampleRate: buffer.sampleRate };
}

function mixed(buffer: AudioBuffer): Float32Array {
  const channels = Array.from({ length: buffer.numberOfChannels }, (_, c) => buffer.getChannelData(c));
  const [only] = channels;
  if (channels.length === 1 && only) return only;
  return Float32Array.from(
    { length: buffer.length },
    (_, i) => channels.reduce((sum, c) => sum + c[i]!, 0) / channels.length,
  );
}
