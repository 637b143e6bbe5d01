export {
  type Answering,
  type AnsweringAct,
  type AnsweringEvent,
  answering,
  atRest,
  changesAtMs,
  longestAnswerMs,
  type Nothing,
  type Press,
  type Sayable,
} from './answering.js';
export { atRate } from './at-rate.js';
export { type Decoder, decoderRate, generalEar, heardWell, type Recognizer } from './general-ear.js';
export { type Asked, type GeneralEar, type Heard, heard } from './hear.js';
export { PhraseError, readPhrases } from './phrases.js';
export type { Likeness } from './sounds-like.js';
export { mostPhrases, spokenForms } from './spoken-form.js';
export { mostNumbers, numberAloud, numbersNear, type Scale, steps } from './spoken-number.js';
export { type Takes, takeOf } from './takes.js';
export { tradeWords } from './trade-words.js';
