export { type Applies, applies, type Facts } from './applies.js';
export { builtInState } from './built-in.gen.js';
export { builtInCatalog } from './built-in.js';
export type * from './catalog.js';
export * from './loader/index.js';
export {
  byId,
  cautionsFor,
  componentsOf,
  judgementOf,
  measurementAs,
  type Occasion,
  roleOf,
} from './lookup.js';
export * from './makers-sheet/index.js';
export { type PlatePart, type PlateReading, readPlate } from './plates/read-plate.js';
export * from './schema/index.js';
export { type GivenEntry, type OwnPack, packHead, withPacks } from './with-packs.js';
