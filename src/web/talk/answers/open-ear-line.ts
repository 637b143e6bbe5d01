import type { Sound } from '../../../listen/index.js';
import { openLineIn } from '../line-in.js';
import { joined, writtenDown } from '../tape.js';
import { isSpeaking, whenSpeaking } from './aloud.js';

/** What was said while it was held, and the noise before. */
export interface CameIn {
  readonly sound: Sound;
  readonly before: Sound;
}

/** A microphone that stays open from one press to the next, and is shut while the program speaks. */
export interface EarLine {
  /** The press was so long ago: what came before it is noise. */
  readonly press: (agoMs: number) => void;
  /** What came since the press. */
  readonly letGo: () => Promise<CameIn>;
  readonly close: () => void;
}

/** So much noise is kept from before the press. */
const beforeS = 1;
/** What is on its way from the microphone when it is let go. */
const underWayMs = 150;

/** Resolves once sound comes in. @throws NoMicrophone */
export async function openEarLine(): Promise<EarLine> {
  const line = await openLineIn();
  const rate = line.context.sampleRate;
  let parts: Float32Array[] = [];
  let have = 0;
  /** of the samples that lie in `parts`; nothing while nobody presses */
  let pressedAt: number | undefined;
  const dropOld = () => {
    while (pressedAt === undefined && parts[0] && have - parts[0].length > beforeS * rate)
      have -= parts.shift()!.length;
  };
  const shut = () => {
    line.shut(isSpeaking());
    if (isSpeaking()) [parts, have] = [[], 0];
  };
  await writtenDown(line, (part) => {
    if (isSpeaking()) return;
    parts.push(part);
    have += part.length;
    dropOld();
  });
  const leave = whenSpeaking(shut);
  shut();
  return {
    press: (agoMs) => {
      pressedAt = Math.max(0, have - Math.round((agoMs / 1000) * rate));
    },
    letGo: async () => {
      await new Promise((done) => setTimeout(done, underWayMs));
      const whole = joined(parts);
      const at = Math.min(pressedAt ?? 0, whole.length);
      pressedAt = undefined;
      dropOld();
      const part = (samples: Float32Array): Sound => ({ samples, sampleRate: rate });
      return { sound: part(whole.slice(at)), before: part(whole.slice(0, at)) };
    },
    close: () => {
      leave();
      line.close();
    },
  };
}
