export { StoreError, type StoreErrorCode } from './error.js';
export { openPostgres, openSqlite } from './open.js';
export type {
  Appended,
  Device,
  JobCounts,
  JobNote,
  JobSpan,
  JobsAsked,
  ListedJob,
  Picture,
  PictureFacts,
  Removed,
  Store,
  StoredEntry,
  VerifyReport,
} from './store.js';
