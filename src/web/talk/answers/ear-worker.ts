import createModule from 'soundswallower';
import dict from '../../../../node_modules/soundswallower/model/en-us/dict.txt?url&no-inline';
import featparams from '../../../../node_modules/soundswallower/model/en-us/feat_params.json?url&no-inline';
import mdef from '../../../../node_modules/soundswallower/model/en-us/mdef?url&no-inline';
import mean from '../../../../node_modules/soundswallower/model/en-us/means?url&no-inline';
import fdict from '../../../../node_modules/soundswallower/model/en-us/noisedict.txt?url&no-inline';
import sendump from '../../../../node_modules/soundswallower/model/en-us/sendump?url&no-inline';
import tmat from '../../../../node_modules/soundswallower/model/en-us/transition_matrices?url&no-inline';
import variances from '../../../../node_modules/soundswallower/model/en-us/variances?url&no-inline';
import {
  atRate,
  decoderRate,
  generalEar,
  type Heard,
  heard,
  heardWell,
  type Likeness,
  type Takes,
  takeOf,
  tradeWords,
} from '../../../hear/index.js';
import type { Sound } from '../../../listen/index.js';
import { answerAll } from '../../work/ask-worker.js';

/** What came in, at whatever rate the device samples. */
interface CameIn {
  readonly sound: Sound;
  readonly before: Sound;
}
export type EarQuestion =
  | { readonly ask: 'which words are not known'; readonly words: readonly string[] }
  | ({ readonly ask: 'what was said'; readonly phrases: readonly string[]; readonly takes: Takes } & CameIn)
  | ({ readonly ask: 'for a take' } & CameIn);
export type EarAnswer = { readonly words: readonly string[] } | Heard | { readonly take?: Likeness };

/** The model has none; the recognizer asks for one all the same and takes a refusal for no. Our server would answer with a page. */
const lda = 'no feature transform';
const fetched = self.fetch;
self.fetch = (file, how) => (file === lda ? Promise.resolve(Response.error()) : fetched(file, how));

/** The general recognizer out of its package: fetched from our own server, or where it is kept on this device. */
async function open() {
  const library = await createModule();
  const decoder = new library.Decoder({
    ...{ featparams, mdef, tmat, mean, var: variances, sendump, dict, fdict, lda },
    ...{ samprate: decoderRate, ...heardWell },
  });
  await decoder.initialize();
  decoder.add_words(...tradeWords);
  return { decoder, general: generalEar(decoder) };
}

let opened: ReturnType<typeof open> | undefined;
function ear() {
  opened ??= open().catch((cause) => {
    opened = undefined; // the next question asks anew
    throw new Error(
      'What hears you has not reached this device yet. It comes from the bench once; hold again when it is reached.',
      { cause },
    );
  });
  return opened;
}

const evened = ({ sound, before }: CameIn) => ({
  sound: atRate(sound, decoderRate),
  before: atRate(before, decoderRate),
});

answerAll<EarQuestion, EarAnswer>(async (question) => {
  if (question.ask === 'for a take') {
    const { sound, before } = evened(question);
    const take = takeOf(sound, before);
    return take ? { take } : {};
  }
  const { decoder, general } = await ear();
  if (question.ask === 'which words are not known')
    return { words: question.words.filter((word) => decoder.lookup_word(word) === null) };
  const { phrases, takes } = question;
  return heard({ ...evened(question), phrases, takes, general });
});
