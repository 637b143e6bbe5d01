import { fileTypeFromBuffer } from 'file-type';
import { ListenError, readWav, type Slices, type Sound } from '../../listen/index.js';
import { Failed } from '../command.js';

interface Decoded {
  readonly channelData: readonly Float32Array[];
  readonly sampleRate: number;
}

type Decode = (bytes: Slices) => Promise<Sound>;

/** All of it, for the forms that cannot be read piece by piece. */
const whole = (bytes: Slices): Uint8Array => bytes.subarray(0, bytes.length);

/** Each decoder is fetched when its form comes along: they are compiled on loading. */
const decoders: Readonly<Record<string, Decode>> = {
  wav: async (bytes) => readWav(bytes),
  mp3: async (bytes) => {
    const { MPEGDecoder } = await import('mpg123-decoder');
    const decoder = new MPEGDecoder();
    await decoder.ready;
    try {
      return mixed(decoder.decode(whole(bytes)));
    } finally {
      decoder.free();
    }
  },
  ogg: async (bytes) => {
    const { OggVorbisDecoder } = await import('@wasm-audio-decoders/ogg-vorbis');
    return decodedBy(new OggVorbisDecoder(), bytes);
  },
  opus: async (bytes) => {
    const { OggOpusDecoder } = await import('ogg-opus-decoder');
    return decodedBy(new OggOpusDecoder(), bytes);
  },
  flac: async (bytes) => {
    const { FLACDecoder } = await import('@wasm-audio-decoders/flac');
    return decodedBy(new FLACDecoder(), bytes);
  },
};

/** A form is told by its first bytes; an Ogg file says which one it is a little later. */
const enoughToTell = 65_536;

const browserOnly = new Set(['m4a', 'mp4', 'aac', 'mov', '3gp', 'webm', 'mkv', 'm4v', 'm4b']);
const takes = 'WAV, MP3, OGG (Vorbis or Opus) and FLAC';

/** The sound in a file of a form that the command line takes. Throws Failed, in words, for any other. */
export async function decodeSound(bytes: Slices, file: string): Promise<Sound> {
  if (bytes.length === 0) throw new Failed(`${file} is empty.`);
  const kind = (await fileTypeFromBuffer(bytes.subarray(0, Math.min(bytes.length, enoughToTell))))?.ext as
    | string
    | undefined;
  const name = kind === 'ogv' || kind === 'oga' ? 'ogg' : kind;
  if (name !== undefined && browserOnly.has(name))
    throw new Failed(
      `${file} is ${name.toUpperCase()}: the command line takes ${takes}; the application in the browser takes this one too.`,
    );
  const decode = name === undefined ? undefined : decoders[name];
  if (!decode) throw new Failed(`${file} is not a sound that can be read: the command line takes ${takes}.`);
  return decodedOrSaid(decode, bytes, file);
}

async function decodedOrSaid(decode: Decode, bytes: Slices, file: string): Promise<Sound> {
  try {
    const sound = await decode(bytes);
    if (sound.samples.length === 0) throw new Failed(`${file} holds no sound.`);
    return sound;
  } catch (cause) {
    if (cause instanceof Failed) throw cause;
    const why = cause instanceof ListenError ? cause.message : 'it is damaged or cut off.';
    throw new Failed(`${file} cannot be read as a sound: ${why}`, { cause });
  }
}

async function decodedBy(
  decoder: {
    readonly ready: Promise<void>;
    readonly decodeFile: (bytes: Uint8Array) => Promise<Decoded>;
    readonly free: () => void;
  },
  bytes: Slices,
): Promise<Sound> {
  await decoder.ready;
  try {
    return mixed(await decoder.decodeFile(whole(bytes)));
  } finally {
    decoder.free();
  }
}

function mixed({ channelData, sampleRate }: Decoded): Sound {
  const length = channelData[0]?.length ?? 0;
  const samples = new Float32Array(length);
  for (const channel of channelData)
    for (let i = 0; i < length; i += 1) samples[i]! += channel[i]! / channelData.length;
  return { samples, sampleRate };
}
