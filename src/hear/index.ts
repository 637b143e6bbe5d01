export { atRate } from './at-rate.js';
export { type Decoder, decoderRate, generalEar, heardWell } from './general-ear.js';
export { type Asked, type GeneralEar, type Heard, heard } from './hear.js';
export { PhraseError, readPhrases } from './phrases.js';
export { type Takes, takeOf } from './takes.js';
