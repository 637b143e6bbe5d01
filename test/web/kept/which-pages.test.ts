import { expect, test } from 'vitest';
import { keptWith, pathKept } from '../../../src/web/kept/which-pages.js';

const origin = 'http://127.0.0.1:4310';
const asked = (path: string, mode: RequestMode = 'cors', method = 'GET') =>
  pathKept({ method, mode, url: path.startsWith('http') ? path : origin + path }, origin);

test('every page is the one application; its files are kept under their own names', () => {
  expect(asked('/', 'navigate')).toBe('/');
  expect(asked('/job/0198c0de/findings?x=1', 'navigate')).toBe('/');
  expect(asked('/assets/index-abc.js')).toBe('/assets/index-abc.js');
  expect(asked('/pin.svg', 'navigate')).toBe('/pin.svg');
});

test.each(['/api/jobs', '/api/pictures/abc', '/pair/ABCD', '/trust/'])('%s is the server’s alone', (path) => {
  expect(asked(path, 'navigate')).toBeUndefined();
  expect(asked(path)).toBeUndefined();
});

test('what is sent, and what is asked of another address, is never answered from the device', () => {
  expect(asked('/', 'navigate', 'POST')).toBeUndefined();
  expect(asked('http://192.0.2.1/assets/index-abc.js')).toBeUndefined();
});

test('the version that takes over and the one before it stay; older ones and no other cache go', () => {
  expect(keptWith('wristpin 3', ['other', 'wristpin 1', 'wristpin 2', 'wristpin 3'])).toEqual(['wristpin 1']);
  expect(keptWith('wristpin 1', ['wristpin 1'])).toEqual([]);
});
