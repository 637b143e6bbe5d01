import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Slices } from '../../listen/index.js';
import { Failed } from '../command.js';
import { reasonOf } from './out-file.js';

export async function readWhole(file: string): Promise<Uint8Array> {
  const path = resolve(file);
  try {
    return new Uint8Array(await readFile(path));
  } catch (error) {
    throw unread(path, error);
  }
}

/** What is made of a file of which a part is read at a time, so that it never stands in memory whole. */
export async function readInParts<T>(file: string, use: (parts: Slices) => Promise<T>): Promise<T> {
  const path = resolve(file);
  let opened: { readonly descriptor: number; readonly length: number };
  try {
    const descriptor = openSync(path, 'r');
    opened = { descriptor, length: fstatSync(descriptor).size };
    readSync(descriptor, new Uint8Array(1), 0, 1, 0);
  } catch (error) {
    throw unread(path, error);
  }
  const { descriptor, length } = opened;
  const subarray = (from: number, to: number): Uint8Array => {
    const part = new Uint8Array(to - from);
    let held = 0;
    for (let got = -1; held < part.length && got !== 0; held += got)
      got = readSync(descriptor, part, held, part.length - held, from + held);
    return part.subarray(0, held);
  };
  try {
    return await use({ length, subarray });
  } finally {
    closeSync(descriptor);
  }
}

function unread(path: string, error: unknown): Failed {
  const reason = reasonOf(error) === 'there is no such folder' ? 'there is no such file' : reasonOf(error);
  return new Failed(`${path} cannot be read: ${reason}.`, { cause: error });
}
