import { hearing } from '../../../../job/index.js';
import { spectrogram } from '../../../../listen/index.js';
import type { Answer, Heard, Question } from './ear.js';

self.onmessage = ({ data: { id, sound, engine, look } }: MessageEvent<Question>) => {
  self.postMessage(
    answered(id, () => ({
      hearing: hearing(sound, engine),
      ...(look && { look: spectrogram(sound) }),
    })),
  );
};

function answered(id: number, work: () => Heard): Answer {
  try {
    return { id, ...work() };
  } catch (error) {
    return { id, wrong: error instanceof Error ? error.message : String(error) };
  }
}
