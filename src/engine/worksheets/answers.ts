import { refusingAs } from '../../worksheet/index.js';
import { EngineError } from '../error.js';

/** What this room refuses is refused by the field a person filled in. */
export const refusing = refusingAs((error): error is EngineError => error instanceof EngineError);
