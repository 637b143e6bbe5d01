import { expect, test } from 'vitest';
import { readPack } from '../../src/catalog/loader/pack-text.js';

test('a pack of hundreds of aliases to what they stand in is refused before they are followed', () => {
  const text = `pack: { id: ours, title: Ours }\nfaults: &a [${'*a,'.repeat(800)}]`;
  const { problems } = readPack({ file: 'ours.yaml', text });
  expect(problems).toEqual([
    { file: 'ours.yaml', line: 1, path: '', reason: 'not YAML: more than 20 aliases (*name) stand in it' },
  ]);
});
