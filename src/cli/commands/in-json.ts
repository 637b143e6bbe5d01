import { Failed } from '../command.js';
import { readWhole } from './in-file.js';

/** What a JSON file holds; what it means is for the room that asked. */
export async function readJson(file: string): Promise<unknown> {
  const bytes = await readWhole(file);
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (cause) {
    const why = cause instanceof SyntaxError ? cause.message : 'it is not UTF-8 text';
    throw new Failed(`${file} cannot be read as JSON: ${why}.`, { cause });
  }
}
