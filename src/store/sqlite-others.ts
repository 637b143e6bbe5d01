import type Database from 'better-sqlite3';
import type { Backend } from './backend.js';
import type { Bell } from './bell.js';

const lookForOthersMs = 1_000;

/** Rings the bell for what other processes write to the file: SQLite counts their commits for us. */
export function lookForOthers(
  raw: Database.Database,
  bell: Bell,
): { watch: Backend['watch']; stop: () => void } {
  const version = () => Number(raw.pragma('data_version', { simple: true }));
  let timer: NodeJS.Timeout | undefined;
  let seen = version();
  const look = () => {
    try {
      if (raw.inTransaction || version() === seen) return;
      seen = version();
      bell.ring(Number(raw.prepare('select coalesce(max(seq), 0) from entries').pluck().get()));
    } catch {
      // the disk failed: whoever asks for entries is told; a timer has nobody to tell and must not end the program
    }
  };
  const stop = () => {
    clearInterval(timer);
    timer = undefined;
  };
  return {
    stop,
    watch(changed) {
      seen = timer === undefined ? version() : seen;
      timer ??= setInterval(look, lookForOthersMs).unref();
      const leave = bell.watch(changed);
      return () => {
        leave();
        if (bell.watchers === 0) stop();
      };
    },
  };
}
