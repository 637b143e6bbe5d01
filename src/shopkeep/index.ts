export { appendWhereTheyCame } from './append-where-they-came.js';
export { type Exported, exportJob } from './bundle.js';
export { type Loaded, loadDemo, type RemovedDemo, removeDemo } from './demo.js';
export { ShopkeepError } from './error.js';
export { fileSource } from './file-source.js';
export { findAnything } from './find.js';
export { findJob } from './find-job.js';
export { recordFonts } from './fonts.js';
export {
  type ImportPlan,
  type OpenedImport,
  openImport,
  type PlannedJob,
  readBundleHere,
} from './import.js';
export { entriesOf } from './job-entries.js';
export { JobNotes, type ListedJob } from './job-notes.js';
export { keepPicture, sha256Of } from './keep-picture.js';
export { type Packaged, packaged } from './package.js';
export { type FinishedLine, PastJobs } from './past-jobs.js';
export { narrowed } from './picture.js';
export { readLines } from './read-lines.js';
export { readBundleApart, readPacksApart, TooMuch } from './reading/reading.js';
export { type PrintedRecord, printRecord } from './record.js';
export { readPacksBy, shopNow } from './shop-now.js';
