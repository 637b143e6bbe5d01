import { type EngineNow, engineNow } from '../../../diagnose/index.js';
import type { Answers } from '../answers.js';
import { knownOfEngine } from './known.js';

/** This engine, here and now, as its log tells it. */
export const engineOf = (answers: Answers): EngineNow => engineNow(answers.catalog, knownOfEngine(answers));
