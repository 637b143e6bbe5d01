import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Poppler reads a PDF back with code that shares nothing with what wrote it. */
export const hasPoppler = spawnSync('pdftotext', ['-v']).status === 0;
export const noPoppler = 'needs pdftotext and pdffonts (Debian: poppler-utils)';

export const pdfText = (pdf: Uint8Array) => withFile(pdf, (file) => run('pdftotext', ['-layout', file, '-']));
export const pdfFonts = (pdf: Uint8Array) => withFile(pdf, (file) => run('pdffonts', [file]));

/** The rightmost end of a word on any page, in points. */
export function pdfRightEdge(pdf: Uint8Array): number {
  const boxes = withFile(pdf, (file) => run('pdftotext', ['-bbox', file, '-']));
  return Math.max(...[...boxes.matchAll(/xMax="([\d.]+)"/g)].map((match) => Number(match[1])));
}

function run(program: string, args: readonly string[]): string {
  return execFileSync(program, args, { encoding: 'utf8', maxBuffer: 64e6 }).replaceAll('\u00a0', ' ');
}

function withFile<T>(bytes: Uint8Array, use: (file: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'record-'));
  try {
    const file = join(folder, 'record.pdf');
    writeFileSync(file, bytes);
    return use(file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
