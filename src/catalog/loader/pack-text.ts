import { type Document, isAlias, isNode, LineCounter, parseDocument, visit } from 'yaml';
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
  const unlike = unlikeAPack(text);
  if (unlike) return refusedPack(file, () => unlike.line, [{ file, path: '', ...unlike }]);
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  const lineOf = (path: Path) => lineIn(document, lines, path);
  const errors = document.errors.map((error) => notYaml(file, lines, error.pos[0], error.message));
  if (errors.length > 0) return refusedPack(file, lineOf, errors);
  if (aliasesIn(document) > mostAliases)
    return refusedPack(file, lineOf, [
      notYaml(file, lines, 0, `more than ${mostAliases} aliases (*name) stand in it`),
    ]);
  try {
    return sortPack(file, document.toJS(), lineOf);
  } catch (error) {
    // an alias to nothing, or so many that the text would blow up
    return refusedPack(file, lineOf, [
      notYaml(file, lines, 0, error instanceof Error ? error.message : String(error)),
    ]);
  }
}

/** An alias to what it stands in is followed again and again: with a thousand of them the reading takes minutes. */
const mostAliases = 20;

function aliasesIn(document: Document): number {
  let found = 0;
  visit(document, (_, node) => {
    if (isAlias(node)) found += 1;
    return found > mostAliases ? visit.BREAK : undefined;
  });
  return found;
}

const longestLine = 2_500;
const mostLines = 20_000;

/**
 * Why a text can be no pack, told before the parser sees it: on a wall of brackets or quotes that works for minutes.
 * The longest sentence that a schema takes has 2,000 letters; all the program's own packs together have 12,000 lines.
 */
function unlikeAPack(text: string): { line: number; reason: string } | undefined {
  const lines = text.split('\n');
  if (lines.length > mostLines)
    return {
      line: mostLines,
      reason: `it has ${lines.length} lines, and ${mostLines} are the most that is read`,
    };
  const long = lines.findIndex((line) => line.length > longestLine);
  if (long >= 0)
    return {
      line: long + 1,
      reason: `the line has ${lines[long]!.length} letters, and ${longestLine} are the most that is read`,
    };
  const signs = text.match(/["'[\]{}&*!|>%@`?]/g)?.length ?? 0;
  if (signs > 1_000 && signs > (text.match(/[\p{L}\p{N}]/gu)?.length ?? 0))
    return {
      line: 1,
      reason: 'more brackets, quotes and other signs stand in it than letters: this is no pack',
    };
  return undefined;
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
