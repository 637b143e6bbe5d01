import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A printed page as a printer would lay it down: gray, one byte a dot. */
export interface Page {
  readonly width: number;
  readonly height: number;
  readonly gray: Uint8Array;
}

const dotsPerInch = 300;
export const mmPerDot = 25.4 / dotsPerInch;

/** Drawn by poppler, page by page. */
export function rasterPages(pdf: Uint8Array): Page[] {
  const folder = mkdtempSync(join(tmpdir(), 'raster-'));
  try {
    writeFileSync(join(folder, 'in.pdf'), pdf);
    execFileSync('pdftoppm', [
      '-gray',
      '-r',
      String(dotsPerInch),
      join(folder, 'in.pdf'),
      join(folder, 'page'),
    ]);
    return readdirSync(folder)
      .filter((name) => name.endsWith('.pgm'))
      .sort()
      .map((name) => readPgm(readFileSync(join(folder, name))));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function readPgm(bytes: Buffer): Page {
  const [head = '', width, height] =
    /^P5\s+(\d+)\s+(\d+)\s+\d+\s/.exec(bytes.toString('latin1', 0, 40)) ?? [];
  return { width: Number(width), height: Number(height), gray: bytes.subarray(head.length) };
}

/**
 * Where dashed lines run across a sheet, read from poppler's own drawing of its first page: millimeters from its left
 * edge (those that run down) and from its top (those that run across).
 */
export function dashedLines(pdf: Uint8Array): { readonly down: number[]; readonly across: number[] } {
  const folder = mkdtempSync(join(tmpdir(), 'raster-'));
  try {
    writeFileSync(join(folder, 'in.pdf'), pdf);
    execFileSync('pdftocairo', ['-svg', '-l', '1', join(folder, 'in.pdf'), join(folder, 'page.svg')]);
    const svg = readFileSync(join(folder, 'page.svg'), 'utf8');
    const ends = [...svg.matchAll(/stroke-dasharray[^>]*d="M ([\d.]+) ([\d.]+) L ([\d.]+) ([\d.]+) "/g)].map(
      (match) => match.slice(1).map((points) => (Number(points) / 72) * 25.4),
    );
    const once = (places: readonly number[]) =>
      [...new Set(places.map((mm) => mm.toFixed(3)))].map(Number).sort((a, b) => a - b);
    return {
      down: once(ends.flatMap(([x, , toX]) => (x === toX ? [x!] : []))),
      across: once(ends.flatMap(([, y, , toY]) => (y === toY ? [y!] : []))),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
