import { useCallback, useEffect, useRef, useState } from 'react';
import type { Sound } from './decode.js';

export type MicrophoneState = 'off' | 'asking' | 'on' | 'refused' | 'none';

/** 2 s at this rate lie in one analyser window; a phone that cannot sample so slowly gives its own rate. */
const wantedRate = 16_000;
const windowSamples = 32_768;

export interface Microphone {
  readonly state: MicrophoneState;
  readonly open: () => Promise<void>;
  readonly close: () => void;
  /** the last seconds that came in; none while it is off */
  readonly last: () => Sound | undefined;
}

/** The microphone, where the page may use it. Its own sound cleaning is switched off: it takes engines for noise. */
export function useMicrophone(): Microphone {
  const [state, setState] = useState<MicrophoneState>('off');
  const held = useRef<{ context: AudioContext; analyser: AnalyserNode; stream: MediaStream } | undefined>(
    undefined,
  );
  const close = useCallback(() => {
    held.current?.stream.getTracks().forEach((track) => {
      track.stop();
    });
    void held.current?.context.close();
    held.current = undefined;
    setState('off');
  }, []);
  useEffect(() => close, [close]);
  const open = async () => {
    if (!navigator.mediaDevices) return setState('none');
    setState('asking');
    try {
      held.current = await listenOn();
      setState('on');
    } catch (error) {
      const none = error instanceof DOMException && error.name === 'NotFoundError';
      setState(none ? 'none' : 'refused');
    }
  };
  const last = () => {
    if (!held.current) return undefined;
    const { analyser, context } = held.current;
    const samples = new Float32Array(analyser.fftSize);
    analyser.getFloatTimeDomainData(samples);
    return { samples, sampleRate: context.sampleRate };
  };
  return { state, open, close, last };
}

async function listenOn() {
  const stream = await navigator.mediaDevices.getUserMedia({
    audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
  });
  const context = contextFor(stream);
  const analyser = new AnalyserNode(context, { fftSize: windowSamples, smoothingTimeConstant: 0 });
  context.createMediaStreamSource(stream).connect(analyser);
  await context.resume();
  return { context, analyser, stream };
}

/** Some browsers refuse to connect a microphone to a context of another rate. */
function contextFor(stream: MediaStream): AudioContext {
  const slow = new AudioContext({ sampleRate: wantedRate });
  try {
    slow.createMediaStreamSource(stream).disconnect();
    return slow;
  } catch {
    void slow.close();
    return new AudioContext();
  }
}
