import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { Failed } from '../command.js';
import { reasonOf } from './out-file.js';

export async function readWhole(file: string): Promise<Uint8Array> {
  const path = resolve(file);
  try {
    return new Uint8Array(await readFile(path));
  } catch (error) {
    const reason = reasonOf(error) === 'there is no such folder' ? 'there is no such file' : reasonOf(error);
    throw new Failed(`${path} cannot be read: ${reason}.`, { cause: error });
  }
}
