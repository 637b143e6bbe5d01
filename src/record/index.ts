export {
  type Bundle,
  type BundledPicture,
  type BundleLimits,
  type BundleSource,
  type ImportPlan,
  jobDigest,
  type PlannedJob,
  type ReadBundle,
  readBundle,
  standardBundleLimits,
  writeBundle,
} from './bundle/index.js';
export { type CalendarOptions, calendar, undated } from './calendar.js';
export { type ChapterFile, chapters, chaptersOfLog } from './chapters.js';
export { RecordError } from './error.js';
export { type LabelKind, labelKinds, labelsOf } from './labels.js';
export { type LabelOptions, labelsPdf, type Roll, rollLimits } from './labels-pdf.js';
export { matPdf } from './mat-pdf.js';
export { type RecordFonts, readFonts } from './pdf/fonts.js';
export { type PrintablePicture, pictureProblem } from './pdf/picture.js';
export * from './service-record/index.js';
export { type ServiceRecordOptions, serviceRecordPdf } from './service-record-pdf.js';
export { type Tables, tables } from './tables.js';
