import type { Sound } from '../../listen/index.js';
import { type LineIn, openLineIn, wantedRate } from './line-in.js';
import worklet from './tape.worklet.ts?worker&url';

/** The microphone written down from its opening to its stop. */
export interface Tape {
  /** Closes the microphone and gives all that it heard, at the rate that is kept. */
  readonly stop: () => Promise<Sound>;
}

/** Resolves once sound comes in. @throws NoMicrophone */
export async function openTape(): Promise<Tape> {
  const line = await openLineIn();
  const parts: Float32Array[] = [];
  await writtenDown(line, (part) => void parts.push(part));
  return {
    stop: async () => {
      line.close();
      return kept(joined(parts), line.context.sampleRate);
    },
  };
}

/** Gives every part of what the line hears, in order; resolves with the first. A line that cannot be heard is closed. */
export async function writtenDown(line: LineIn, take: (part: Float32Array) => void): Promise<void> {
  try {
    await line.context.audioWorklet.addModule(worklet);
    const writer = new AudioWorkletNode(line.context, 'tape', { numberOfOutputs: 1 });
    const begun = new Promise<void>((resolve) => {
      writer.port.onmessage = ({ data }: MessageEvent<Float32Array>) => {
        take(data);
        resolve();
      };
    });
    // a node that leads nowhere is asked for nothing in some browsers; it gives no sound
    line.source.connect(writer).connect(line.context.destination);
    await begun;
  } catch (error) {
    line.close();
    throw error;
  }
}

export function joined(parts: readonly Float32Array[]): Float32Array<ArrayBuffer> {
  const whole = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** At the rate at which it is kept, whatever the device samples at. */
async function kept(samples: Float32Array<ArrayBuffer>, sampleRate: number): Promise<Sound> {
  if (sampleRate === wantedRate || samples.length === 0) return { samples, sampleRate };
  const length = Math.ceil((samples.length * wantedRate) / sampleRate);
  const context = new OfflineAudioContext(1, length, wantedRate);
  const buffer = context.createBuffer(1, samples.length, sampleRate);
  buffer.copyToChannel(samples, 0);
  const source = new AudioBufferSourceNode(context, { buffer });
  source.connect(context.destination);
  source.start();
  return { samples: (await context.startRendering()).getChannelData(0), sampleRate: wantedRate };
}
