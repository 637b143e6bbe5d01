import dataUrl from '@tesseract.js-data/eng/4.0.0_best_int/eng.traineddata.gz?url';
import { createWorker, PSM } from 'tesseract.js';
import workerUrl from 'tesseract.js/dist/worker.min.js?url';
import coreUrl from 'tesseract.js-core/tesseract-core-simd-lstm.wasm.js?url';
import { type PageLine, type PageRefusal, pageRefusal } from '../../sight/index.js';
import { pageLines } from './page-lines.js';
import type { LaidPage, PageSaid } from './page-worker.js';
import { readerAway } from './reader-away.js';

export type PageStep = 'straighten' | 'read';

/** What a photograph of a page said. */
export interface PageRead extends LaidPage {
  readonly lines: readonly PageLine[];
  readonly refused?: PageRefusal;
}

interface Reading {
  readonly signal: AbortSignal;
  readonly onStep: (step: PageStep) => void;
}

/**
 * Lays a photographed page straight and reads its lines, both beside the page's own thread.
 * @throws DOMException AbortError once `signal` stops it, Error in words when the picture cannot be opened
 */
export async function readPage(photograph: Blob, { signal, onStep }: Reading): Promise<PageRead> {
  onStep('straighten');
  const laid = await straighten(photograph, signal);
  onStep('read');
  const lines = await linesOf(laid.file, signal);
  const refused = pageRefusal(lines, laid.hasEdges);
  return { ...laid, lines, ...(refused && { refused }) };
}

function straighten(photograph: Blob, signal: AbortSignal): Promise<LaidPage> {
  const worker = new Worker(new URL('./page-worker.ts', import.meta.url), { type: 'module' });
  return new Promise<LaidPage>((done, failed) => {
    signal.addEventListener('abort', () => failed(signal.reason));
    worker.onmessage = ({ data }: MessageEvent<PageSaid>) =>
      'laid' in data ? done(data.laid) : failed(new Error(data.wrong));
    worker.onerror = (event) => failed(new Error(event.message || 'the reading broke off'));
    worker.postMessage(photograph);
  }).finally(() => worker.terminate());
}

/** The reader is begun for one page and ended with it: its hundred megabytes are then free again. */
async function linesOf(page: Blob, signal: AbortSignal): Promise<readonly PageLine[]> {
  let fail: (why: unknown) => void = () => undefined;
  const broken = new Promise<never>((_, failed) => {
    fail = failed;
  });
  signal.addEventListener('abort', () => fail(signal.reason));
  const begun = createWorker('eng', 1, {
    workerPath: workerUrl,
    workerBlobURL: false,
    corePath: coreUrl,
    langPath: dataUrl.replace(/\/eng\.traineddata\.gz$/, ''),
    cacheMethod: 'none', // the browser keeps it as it keeps every file of the application
    errorHandler: () => fail(new Error(readerAway)),
  });
  try {
    const reader = await Promise.race([begun, broken]);
    await Promise.race([reader.setParameters({ tessedit_pageseg_mode: PSM.SINGLE_BLOCK }), broken]);
    const { data } = await Promise.race([reader.recognize(page, {}, { blocks: true, text: false }), broken]);
    return pageLines(data);
  } finally {
    void begun.then((reader) => reader.terminate());
  }
}
