import { describe, expect, test } from 'vitest';
import { standardStoreFile } from '../../src/cli/data-folder.js';
import { nearest } from '../../src/cli/nearest.js';
import { exampleCall } from '../../src/cli/worksheet-help.js';

describe('the store’s standard place', () => {
  const places: readonly [NodeJS.Platform, string, Record<string, string>, string][] = [
    ['linux', '/home/ann', {}, '/home/ann/.local/share/wristpin/shop.db'],
    ['linux', '/home/ann', { XDG_DATA_HOME: '/data/ann' }, '/data/ann/wristpin/shop.db'],
    ['linux', '/home/ann', { XDG_DATA_HOME: 'relative' }, '/home/ann/.local/share/wristpin/shop.db'],
    ['linux', '/home/ann', { XDG_DATA_HOME: '' }, '/home/ann/.local/share/wristpin/shop.db'],
    ['darwin', '/Users/ann', {}, '/Users/ann/Library/Application Support/Wristpin/shop.db'],
    ['win32', 'C:\\Users\\Ann', { APPDATA: 'D:\\Roaming' }, 'D:\\Roaming\\Wristpin\\shop.db'],
    ['win32', 'C:\\Users\\Ann', {}, 'C:\\Users\\Ann\\AppData\\Roaming\\Wristpin\\shop.db'],
  ];
  test.each(places)('on %s for %s with %o is %s', (platform, home, env, file) => {
    expect(standardStoreFile({ platform, home, env })).toBe(file);
  });
});

describe('the word that was meant', () => {
  const words = ['serve', 'work', 'export', 'import', 'backup', 'verify'];
  test.each([
    ['serve', 'serve'],
    ['sevre', 'serve'],
    ['evrse', undefined],
    ['server', 'serve'],
    ['exprot', 'export'],
    ['impört', 'import'],
    ['veryfi', 'verify'],
    ['', undefined],
    ['x', undefined],
    ['carburetor', undefined],
  ])('“%s” is %s', (typed, meant) => {
    expect(nearest(typed, words)).toBe(meant);
  });
  test('the nearer of two', () => expect(nearest('imxport', words)).toBe('import'));
});

test('an example can be pasted into a shell', () => {
  expect(exampleCall('x', { a: '140 in-lb', b: '1/4-20', c: '.030"', d: "5'", e: 'plain' })).toBe(
    `wristpin work x "a=140 in-lb" b=1/4-20 'c=.030"' "d=5'" e=plain`,
  );
});
