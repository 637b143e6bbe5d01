export { type Applies, applies, type Facts } from './applies.js';
export { builtInState } from './built-in.gen.js';
export { builtInCatalog } from './built-in.js';
export type * from './catalog.js';
export * from './loader/index.js';
export {
  byId,
  canHurt,
  cautionsFor,
  componentsOf,
  judgementOf,
  keptPerCatalog,
  measurementAs,
  type Occasion,
  roleOf,
} from './lookup.js';
export * from './makers-sheet/index.js';
export { type PlatePart, type PlateReading, readPlate } from './plates/read-plate.js';
export * from './schema/index.js';
export { type GivenEntry, type OwnPack, packHead, type WithPacks, withPacks } from './with-packs.js';
