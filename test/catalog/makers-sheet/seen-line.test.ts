import { describe, expect, test } from 'vitest';
import { asPrinted, builtInCatalog, doubtOfSeen, readSpecLines } from '../../../src/catalog/index.js';

const catalog = builtInCatalog();
const doubtIn = (text: string, sure = 95) => {
  const [line] = readSpecLines(catalog, text);
  return doubtOfSeen(
    catalog,
    line!,
    text.split(' ').map((word) => ({ text: word, sure })),
  );
};

describe('a line read from a picture', () => {
  test.each([
    // as a general reader of letters gave them from made pages
    ['Connecting rod bolts 112 in-1b', 'Connecting rod bolts 112 in-lb'],
    ['Cylinder head bolts 139 in-Ib', 'Cylinder head bolts 139 in-lb'],
    ['Flywheel nut 56 ft-1b', 'Flywheel nut 56 ft-lb'],
    ['Oil capacity 43 fl 0z', 'Oil capacity 43 fl oz'],
    ['Oil capacity 43 f1 0z.', 'Oil capacity 43 fl oz.'],
  ])('%s: what can only be a unit is written as that unit', (seen, printed) => {
    expect(asPrinted(seen)).toBe(printed);
  });
  test.each([
    'Top no-load speed 3150 rpm',
    'Idle 1750',
    'MODEL 100 Il',
    'Thread 1/4-20',
    'Oil SAE 10W-30',
    'Compression ratio 8.51',
  ])('%s stays as it is', (line) => {
    expect(asPrinted(line)).toBe(line);
  });

  test('a ratio without its colon is doubted, one with it is not', () => {
    expect(doubtIn('Compression ratio 8.51')).toContain('colon');
    expect(doubtIn('Compression ratio 8.5:1')).toBeUndefined();
  });
  test('a figure that was hard to read is doubted, a word is not', () => {
    expect(doubtIn('Spark plug gap 0.030 in', 60)).toBe('“0.030” was hard to read.');
    const [line] = readSpecLines(catalog, 'Spark plug gap 0.030 in');
    expect(
      doubtOfSeen(catalog, line!, [
        { text: 'Spark', sure: 30 },
        { text: '0.030', sure: 95 },
      ]),
    ).toBeUndefined();
  });
  test('a letter among figures is doubted', () => {
    expect(doubtIn('Cylinder head bolts 1O0 in-lb')).toContain('1O0');
  });
});
