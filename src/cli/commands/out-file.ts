import { existsSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { Failed, type Option } from '../command.js';

export const forceOption: Option = { type: 'boolean', help: 'replace the file if it is there' };

/** Refuses before any work is done; `writeWhole` makes sure of it again. */
export function requireFree(file: string, force: boolean): string {
  const path = resolve(file);
  if (!force && existsSync(path)) throw taken(path);
  return path;
}

/** The whole file or none: written beside its place first, then put there. */
export function writeWhole(path: string, bytes: Uint8Array, force: boolean): void {
  if (force) replace(path, bytes);
  else writeNew(path, bytes);
}

function replace(path: string, bytes: Uint8Array): void {
  const part = `${path}.part-${process.pid}`;
  try {
    writeFileSync(part, bytes, { flag: 'wx' });
    renameSync(part, path);
  } catch (error) {
    rmSync(part, { force: true });
    throw cannotWrite(path, error);
  }
}

function writeNew(path: string, bytes: Uint8Array): void {
  try {
    writeFileSync(path, bytes, { flag: 'wx' });
  } catch (error) {
    if (errorCode(error) === 'EEXIST') throw taken(path);
    rmSync(path, { force: true }); // a part of the file is worse than none
    throw cannotWrite(path, error);
  }
}

export function errorCode(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error ? String(error.code) : undefined;
}

function taken(path: string): Failed {
  return new Failed(`There is already a file ${path}; it was not touched. Name another, or add --force.`);
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder',
  EACCES: 'this is not permitted',
  EPERM: 'this is not permitted',
  EROFS: 'the disk can only be read',
  ENOSPC: 'the disk is full',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of the path is not a folder',
  EEXIST: 'a part of the path is not a folder',
};

export function reasonOf(error: unknown): string {
  return reasons[errorCode(error) ?? ''] ?? (error instanceof Error ? error.message : String(error));
}

function cannotWrite(path: string, error: unknown): Failed {
  return new Failed(`${path} cannot be written: ${reasonOf(error)}.`, { cause: error });
}
