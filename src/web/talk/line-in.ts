/** An open microphone. Its own sound cleaning is switched off: it takes engines for noise. */
export interface LineIn {
  readonly context: AudioContext;
  readonly source: MediaStreamAudioSourceNode;
  /** Lets nothing in, and lets it in again. */
  readonly shut: (isShut: boolean) => void;
  readonly close: () => void;
}

/** Enough for engines and for speech; a phone that cannot sample so slowly gives its own rate. */
export const wantedRate = 16_000;

/** Why no microphone can be had, in words. */
export class NoMicrophone extends Error {
  constructor(
    readonly why: 'none' | 'refused' | 'plain line',
    message: string,
  ) {
    super(message);
  }
}

/** Opens the microphone; the first time the browser asks the person. @throws NoMicrophone */
export async function openLineIn(): Promise<LineIn> {
  const stream = await askedFor();
  const { context, source } = contextFor(stream);
  await context.resume();
  return {
    context,
    source,
    shut: (isShut) => {
      for (const track of stream.getTracks()) track.enabled = !isShut;
    },
    close: () => {
      for (const track of stream.getTracks()) track.stop();
      void context.close();
    },
  };
}

async function askedFor(): Promise<MediaStream> {
  if (!navigator.mediaDevices)
    throw new NoMicrophone(
      'plain line',
      'This page came over a plain line, on which browsers open no microphone. It works on the bench computer, and on a phone over the secure line: see Shop, “Phones and tablets”.',
    );
  try {
    return await navigator.mediaDevices.getUserMedia({
      audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
    });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'NotFoundError')
      throw new NoMicrophone('none', 'No microphone is connected to this device.');
    throw new NoMicrophone(
      'refused',
      'The browser refused the microphone. Allow it for this page in the browser’s settings, and try again.',
    );
  }
}

/** Some browsers refuse to connect a microphone to a context of another rate. */
function contextFor(stream: MediaStream): Pick<LineIn, 'context' | 'source'> {
  const slow = new AudioContext({ sampleRate: wantedRate });
  try {
    return { context: slow, source: slow.createMediaStreamSource(stream) };
  } catch {
    void slow.close();
    const context = new AudioContext();
    return { context, source: context.createMediaStreamSource(stream) };
  }
}
