import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const scripts = resolve(import.meta.dirname, '../../scripts');

/** What a script and all that it imports at its head ask for that neither Node nor this repository holds. */
function asksFor(file: string, seen = new Set<string>()): string[] {
  if (seen.has(file)) return [];
  seen.add(file);
  const heads = readFileSync(file, 'utf8').matchAll(/^(?:import|export)\s(?:[^;'"]*\sfrom\s)?'([^']+)'/gm);
  return [...heads].flatMap(([, name = '']) => {
    if (name.startsWith('node:')) return [];
    if (name.startsWith('.')) return asksFor(join(dirname(file), name), seen);
    return [`${file.slice(scripts.length + 1)}: ${name}`];
  });
}

describe('on a fresh machine nothing is installed when a script begins', () => {
  test.each(['test.mjs', 'start.mjs', 'bench.mjs', 'mutate.mjs', 'trust.mjs', 'package.mjs'])(
    '%s imports libraries only when it needs them',
    (name) => {
      expect(asksFor(join(scripts, name))).toEqual([]);
    },
  );

  test('a script that imports one at its head is found', () => {
    expect(asksFor(join(scripts, 'build.mjs'))).toEqual(['cli.mjs: vite']);
  });
});
