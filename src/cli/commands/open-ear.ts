import { createRequire } from 'node:module';
import { join } from 'node:path';
import { type Decoder, decoderRate, heardWell, tradeWords } from '../../hear/index.js';

/** A recognizer that is ready, and whether it knows a word. */
export interface OpenEar {
  readonly decoder: Decoder;
  readonly knows: (word: string) => boolean;
}

/** The general recognizer with its English model, both from its package: half a second and 30 MB. */
export async function openEar(): Promise<OpenEar> {
  const { default: createModule } = await import('soundswallower');
  const models = join(createRequire(import.meta.url).resolve('soundswallower'), '..', 'model');
  const before = process.listeners('uncaughtException');
  const library = await createModule();
  // it would throw again what somebody else has to hear of
  for (const added of process.listeners('uncaughtException').filter((each) => !before.includes(each)))
    process.off('uncaughtException', added);
  const decoder = new library.Decoder({ hmm: join(models, 'en-us'), samprate: decoderRate, ...heardWell });
  await decoder.initialize();
  decoder.add_words(...tradeWords);
  return { decoder, knows: (word) => decoder.lookup_word(word) !== null };
}
