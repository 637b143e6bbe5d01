import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';

/** House rule: nobody has to hold more than a screen in the head to read one function. */
const most = 60;

/** Every function of a file that is longer than that, from its first to its last line, as `file:line name: n lines`. */
function tooLong(file: string, text: string): string[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const lineOf = (at: number) => source.getLineAndCharacterOfPosition(at).line + 1;
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node) && 'body' in node && node.body) {
      const first = lineOf(node.getStart(source));
      const lines = lineOf(node.getEnd()) - first + 1;
      if (lines > most) found.push(`${file}:${first} ${nameOf(node)}: ${lines} lines`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** Its own name, or that of what it is given to. */
function nameOf(node: ts.SignatureDeclaration): string {
  const named = node.name ?? (node.parent as ts.NamedDeclaration).name;
  return named?.getText() ?? (ts.isConstructorDeclaration(node) ? 'constructor' : '(no name)');
}

test('no function of the program is longer than 60 lines', () => {
  const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((f) => /\.tsx?$/.test(f));
  expect(files.length).toBeGreaterThan(500);
  expect(files.flatMap((f) => tooLong(join('src', f), readFileSync(join('src', f), 'utf8')))).toEqual([]);
});

test('one line too many is found, wherever the function stands', () => {
  const filled = (lines: number) => Array.from({ length: lines - 2 }, (_, i) => `  work(${i});`).join('\n');
  const planted = (lines: number) =>
    [
      `function whole() {\n${filled(lines)}\n}`,
      `const arrow = () => {\n${filled(lines)}\n};`,
      `class Bench { lay() {\n${filled(lines)}\n} }`,
      `export const table = { row: () => {\n${filled(lines)}\n} };`,
      `run(async () => {\n${filled(lines)}\n});`,
    ].join('\n');
  expect(tooLong('planted.ts', planted(most))).toEqual([]);
  expect(tooLong('planted.ts', planted(most + 1))).toEqual([
    'planted.ts:1 whole: 61 lines',
    'planted.ts:62 arrow: 61 lines',
    'planted.ts:123 lay: 61 lines',
    'planted.ts:184 row: 61 lines',
    'planted.ts:245 (no name): 61 lines',
  ]);
});
