export type { Loaded } from './assemble.js';
export { CatalogError, type CatalogProblem, problemWords } from './error.js';
export { loadCatalog } from './load.js';
export type { Pack } from './pack-text.js';
