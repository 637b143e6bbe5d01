export { jobDigest } from './chain.js';
export type { BundledPicture } from './form.js';
export type { ImportPlan, PlannedJob } from './import-plan.js';
export { type BundleLimits, type ReadBundle, readBundle, standardBundleLimits } from './read.js';
export { type Bundle, writeBundle } from './write.js';
export type { BundleSource } from './zip.js';
