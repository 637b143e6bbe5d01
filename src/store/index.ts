export { StoreError, type StoreErrorCode } from './error.js';
export { openPostgres, openSqlite, verifyPostgres } from './open.js';
export { restoreInto } from './restore.js';
export type {
  Appended,
  Device,
  DeviceTokens,
  JobCounts,
  JobNote,
  JobSpan,
  JobsAsked,
  LastBackup,
  ListedJob,
  Picture,
  PictureFacts,
  Removed,
  Store,
  StoredEntry,
  VerifyReport,
} from './store.js';
export { verifyFile } from './verify-file.js';
