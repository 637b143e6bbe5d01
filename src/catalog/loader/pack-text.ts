import { type Document, isNode, LineCounter, parseDocument } from 'yaml';
import type { CatalogProblem } from './error.js';
import { type Path, type ReadPack, refusedPack, sortPack } from './pack.js';

/** A pack as it comes in: knowledge as YAML text. */
export interface Pack {
  readonly file: string;
  readonly text: string;
}

/** Reads one pack. Never throws: what is wrong stands in `problems`, each with its line. */
export function readPack({ file, text }: Pack): ReadPack {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines });
  const lineOf = (path: Path) => lineIn(document, lines, path);
  const errors = document.errors.map((error) => notYaml(file, lines, error.pos[0], error.message));
  if (errors.length > 0) return refusedPack(file, lineOf, errors);
  try {
    return sortPack(file, document.toJS(), lineOf);
  } catch (error) {
    // an alias to nothing, or so many that the text would blow up
    return refusedPack(file, lineOf, [
      notYaml(file, lines, 0, error instanceof Error ? error.message : String(error)),
    ]);
  }
}

function notYaml(file: string, lines: LineCounter, at: number, message: string): CatalogProblem {
  const reason = `not YAML: ${message.split('\n')[0]!.replace(/ at line \d+, column \d+:?$/, '')}`;
  return { file, line: Math.max(1, lines.linePos(at).line), path: '', reason };
}

function lineIn(document: Document, lines: LineCounter, path: Path): number {
  for (let length = path.length; length >= 0; length--) {
    const node = document.getIn(path.slice(0, length), true);
    if (isNode(node) && node.range) return Math.max(1, lines.linePos(node.range[0]).line);
  }
  return 1;
}
