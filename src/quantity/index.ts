export { convert, of, to, withOrigin, withUncertainty } from './convert.js';
export { QuantityError, type QuantityErrorCode } from './error.js';
export { findUnit, siUnitOf, unitsOf } from './find-unit.js';
export { examples } from './hint.js';
export { readNumber, type WrittenNumber } from './number.js';
export { type ParseOptions, parse } from './parse.js';
export { type PlausibleBounds, requirePlausible } from './plausible.js';
export {
  type Kind,
  kinds,
  type Origin,
  type OriginKind,
  originKinds,
  type Quantity,
  type UnitSystem,
} from './quantity.js';
export { parseRange, type QuantityRange } from './range.js';
export { readerUnit } from './reader-unit.js';
export { type ShowOptions, show, showAsWritten, showBoth } from './show.js';
export { readUnit } from './spelling.js';
export { parseThread, type ThreadName } from './thread.js';
export type { Unit } from './unit.js';
export { units } from './units.js';
