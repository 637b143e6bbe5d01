import { type BigIntStats, closeSync, openSync, readSync, statSync } from 'node:fs';
import { StoreError } from './error.js';
import { applicationId } from './sqlite-file.js';

/**
 * Sees whether the file under this name is still the one that was opened: a connection goes on writing into a file that
 * was deleted, or over which another was laid, and would call saved what nobody finds again.
 */
export interface Guard {
  /** @throws StoreError 'gone' */
  look(): void;
  /** only after the last connection to the file was closed, see `handles` */
  close(): void;
}

/**
 * One handle a file for the whole process. On POSIX systems closing any handle of a file drops all locks that the
 * process holds on it, those of SQLite too; SQLite, "How To Corrupt An SQLite Database File", section 2.2.
 */
const handles = new Map<string, { readonly handle: number; users: number }>();

interface Seen {
  size: bigint;
  counter: number;
  /** the journal that the connection writes to; unknown until it is there */
  journal: bigint | undefined;
}

/** `identity` is the file's own number, in its header from the moment it was made, 0 where it has none yet. */
export function guardOf(file: string, identity: number): Guard {
  const begun = stat(file);
  if (begun === undefined) throw gone(file, 'has been deleted or moved away');
  const handle = hold(file, begun);
  const seen: Seen = { size: begun.size, counter: 0, journal: undefined };
  /** what was laid over it once stays, whatever lies there now */
  let overlaid: StoreError | undefined;
  return {
    look() {
      if (overlaid) throw overlaid;
      const now = stat(file);
      if (now === undefined) throw gone(file, 'has been deleted or moved away');
      if (now.ino !== begun.ino || now.dev !== begun.dev)
        throw gone(file, 'is another file now: one was put in its place');
      requireJournal(file, seen);
      if (sameContent(handle, identity, now, seen)) return;
      overlaid = gone(file, 'was written over by another program');
      throw overlaid;
    },
    close: () => letGo(begun),
  };
}

const name = ({ dev, ino }: BigIntStats): string => `${dev}:${ino}`;

function hold(file: string, found: BigIntStats): number {
  const held = handles.get(name(found)) ?? { handle: openSync(file, 'r'), users: 0 };
  held.users += 1;
  handles.set(name(found), held);
  return held.handle;
}

function letGo(found: BigIntStats): void {
  const held = handles.get(name(found));
  if (held === undefined || --held.users > 0) return;
  handles.delete(name(found));
  closeSync(held.handle);
}

function stat(file: string): BigIntStats | undefined {
  try {
    return statSync(file, { bigint: true, throwIfNoEntry: false });
  } catch {
    return undefined; // its folder is no folder any more, or its disk is away
  }
}

/** The newest lines are in the journal alone until SQLite moves them over. */
function requireJournal(file: string, seen: Seen): void {
  const journal = stat(`${file}-wal`)?.ino;
  if (seen.journal !== undefined && journal !== seen.journal)
    throw gone(file, 'has lost its journal, the file named like it with -wal');
  seen.journal = journal;
}

/** A log never shrinks, and its count of changes never goes back. The header's layout: SQLite, "Database File Format". */
function sameContent(handle: number, identity: number, { size }: BigIntStats, seen: Seen): boolean {
  const header = Buffer.alloc(100);
  if (size < seen.size || readSync(handle, header, 0, 100, 0) < 100) return false;
  const counter = header.readUInt32BE(24);
  const named = header.readInt32BE(60);
  const same =
    header.readUInt32BE(68) === applicationId &&
    (named === identity || named === 0) &&
    counter >= seen.counter;
  seen.size = size;
  seen.counter = counter;
  return same;
}

function gone(file: string, what: string): StoreError {
  return new StoreError(
    'gone',
    `The shop’s store ${file} ${what} while Wristpin was running.`,
    'Nothing is written any more, so that nothing can be lost: what you write stays on your device. What was said to be saved before is in the last backup and, where it was moved away, in the file itself.',
    'Put the file back and close and open Wristpin; else restore the last backup.',
  );
}
