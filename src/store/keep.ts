import { appender } from './append.js';
import type { Backend } from './backend.js';
import { backup } from './backup.js';
import { carrierOf, deviceOf, devices, pairDevice, renewDevice, sawDevice, unpairDevice } from './devices.js';
import { closedError } from './error.js';
import { findJobs, foundWhere } from './finding.js';
import {
  behind,
  changedSince,
  forgetNotes,
  jobCounts,
  jobs,
  keepNotes,
  lessons,
  listJobs,
  notesState,
  opened,
  reindex,
  spanOf,
} from './job-notes.js';
import { hasPicture, picture, putPicture } from './pictures.js';
import { entriesOf, head, since } from './read.js';
import { removeInvented } from './remove.js';
import { restore } from './restore.js';
import { lastBackup } from './state.js';
import type { Store } from './store.js';
import { verify } from './verify.js';

/** The store over either database. */
export function keep(backend: Backend): Store {
  const { db } = backend;
  const { run, close } = door(backend);
  const append = appender(backend);
  const check = () => backend.snapshot((view) => verify(view, backend.dialect, backend.explain));
  return {
    append: (entries) => run(() => append(entries)),
    entries: (job, from) => run(() => entriesOf(db, job, from?.after ?? 0)),
    since: (seq) => run(() => since(db, seq)),
    jobs: () => run(() => jobs(db)),
    span: (job) => run(() => spanOf(db, job)),
    opened: (saying) => run(() => opened(db, saying)),
    changedSince: (seq) => run(() => changedSince(db, seq)),
    behind: (most, upTo) => run(() => behind(db, most, upTo)),
    keepNotes: (notes) => run(() => keepNotes(backend, notes)),
    forgetNotes: (exceptBy) => run(() => forgetNotes(backend, exceptBy)),
    listJobs: (asked) => run(() => listJobs(db, asked)),
    findJobs: (asked, most) => run(() => findJobs(db, backend.dialect, asked, most)),
    foundWhere: (jobs) => run(() => foundWhere(db, jobs)),
    jobCounts: () => run(() => jobCounts(db)),
    notesState: () => run(() => notesState(db)),
    lessons: (from) => run(() => lessons(db, from)),
    reindex: () => run(() => reindex(backend)),
    head: () => run(() => head(db)),
    putPicture: (facts, bytes) => run(() => putPicture(backend, facts, bytes)),
    picture: (sha256) => run(() => picture(db, sha256)),
    hasPicture: (sha256) => run(() => hasPicture(db, sha256)),
    removeInvented: (job) => run(() => removeInvented(backend, job)),
    pairDevice: (device, tokens, replaces) => run(() => pairDevice(backend, device, tokens, replaces)),
    renewDevice: (id, tokens) => run(() => renewDevice(backend, id, tokens)),
    sawDevice: (id, at) => run(() => sawDevice(backend, id, at)),
    devices: () => run(() => devices(db)),
    deviceOf: (token) => run(() => deviceOf(db, token)),
    carrierOf: (token) => run(() => carrierOf(db, token)),
    unpairDevice: (id) => run(() => unpairDevice(backend, id)),
    backup: (toFile, options) => run(() => backup(backend, toFile, options)),
    look: () => run(() => backend.look()),
    lastBackup: () => run(() => lastBackup(db)),
    restore: (fromFile) => run(() => restore(backend, fromFile).then(check)),
    verify: () => run(check),
    watch: backend.watch,
    close,
  };
}

/** Lets work in until closing time, explains what the database says, and closes when the last work is done. */
function door(backend: Backend): {
  run: <T>(work: () => Promise<T>) => Promise<T>;
  close: () => Promise<void>;
} {
  const underWay = new Set<Promise<unknown>>();
  let closing: Promise<void> | undefined;
  return {
    async run(work) {
      if (closing !== undefined) throw closedError();
      const working = work();
      underWay.add(working);
      try {
        return await working;
      } catch (error) {
        throw backend.explain(error);
      } finally {
        underWay.delete(working);
      }
    },
    close() {
      closing ??= Promise.allSettled(underWay).then(() => backend.close());
      return closing;
    },
  };
}
