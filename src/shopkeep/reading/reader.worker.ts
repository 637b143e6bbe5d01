import { parentPort } from 'node:worker_threads';
import { readPacks } from '../../job/index.js';
import { type ReadBundle, readBundle } from '../../record/index.js';
import { fileSource } from '../file-source.js';
import { readEach } from '../read-each.js';
import { type Asked, asFailure, type Told } from './messages.js';

/**
 * A thread that reads what came from outside, so that the server's own is never held: whatever it is given, the one who
 * started it ends it when its time is over, and it cannot take more memory than it was given.
 */
const port = parentPort;
if (!port) throw new Error('This is a thread of the server, not a program.');

let bundle: ReadBundle | undefined;

const tell = (told: Told, transferred: ArrayBuffer[] = []): void => port.postMessage(told, transferred);

port.on('message', async (asked: Asked) => {
  try {
    tell(...(await answer(asked)));
  } catch (error) {
    tell({ is: 'failed', failure: asFailure(error) });
  }
});

async function answer(asked: Asked): Promise<[Told, ArrayBuffer[]?]> {
  if (asked.what === 'packs') return [{ is: 'done', answer: readPacks(asked.packs) }];
  if (asked.what === 'picture') {
    const bytes = new Uint8Array(await bundle!.picture(asked.sha256)); // of its own, so that it can be handed over
    return [{ is: 'done', answer: bytes }, [bytes.buffer]];
  }
  bundle = await readBundle(await fileSource(asked.file));
  const { entries, pictures, digest } = bundle;
  for (const part of parts(readEach(entries))) tell({ is: 'part', part });
  return [{ is: 'done', answer: { pictures, digest } }];
}

/** What is taken over at once holds the thread that takes it. */
const partLength = 200_000;

function* parts<E>(entries: readonly E[]): Generator<E[]> {
  let part: E[] = [];
  let length = 0;
  for (const entry of entries) {
    part.push(entry);
    length += JSON.stringify(entry).length;
    if (length < partLength && part.length < 500) continue;
    yield part;
    part = [];
    length = 0;
  }
  yield part;
}
