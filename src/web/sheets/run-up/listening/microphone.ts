import { useCallback, useEffect, useRef, useState } from 'react';
import { type LineIn, NoMicrophone, openLineIn } from '../../../talk/line-in.js';
import type { Sound } from './decode.js';

export type MicrophoneState = 'off' | 'asking' | 'on' | 'refused' | 'none';

/** 2 s lie in one analyser window, at the rate that is asked for. */
const windowSamples = 32_768;

export interface Microphone {
  readonly state: MicrophoneState;
  readonly open: () => Promise<void>;
  readonly close: () => void;
  /** the last seconds that came in; none while it is off */
  readonly last: () => Sound | undefined;
}

/** The microphone, where the page may use it. */
export function useMicrophone(): Microphone {
  const [state, setState] = useState<MicrophoneState>('off');
  const held = useRef<{ line: LineIn; analyser: AnalyserNode }>(undefined);
  const close = useCallback(() => {
    held.current?.line.close();
    held.current = undefined;
    setState('off');
  }, []);
  useEffect(() => close, [close]);
  const open = async () => {
    setState('asking');
    try {
      held.current = await listenOn();
      setState('on');
    } catch (error) {
      setState(error instanceof NoMicrophone && error.why !== 'refused' ? 'none' : 'refused');
    }
  };
  const last = () => {
    if (!held.current) return undefined;
    const { analyser, line } = held.current;
    const samples = new Float32Array(analyser.fftSize);
    analyser.getFloatTimeDomainData(samples);
    return { samples, sampleRate: line.context.sampleRate };
  };
  return { state, open, close, last };
}

async function listenOn() {
  const line = await openLineIn();
  const analyser = new AnalyserNode(line.context, { fftSize: windowSamples, smoothingTimeConstant: 0 });
  line.source.connect(analyser);
  return { line, analyser };
}
