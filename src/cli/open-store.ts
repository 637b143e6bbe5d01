/** Fetched only when a store is opened: the databases' drivers are the slowest to load. */
export { openPostgres, openSqlite } from '../store/index.js';
