/** Fetched only when a store is opened: the databases' drivers are the slowest to load. */
export { openPostgres, openSqlite, restoreInto, verifyFile, verifyPostgres } from '../store/index.js';
