import { expect, test } from 'vitest';
import { isAsLocked } from '../../scripts/ensure.mjs';

/** Whether what lies in node_modules can stay, so that nothing is fetched again without need. */
const locked = {
  '': { version: '0.1.0' },
  'node_modules/log': { version: '2.0.0' },
  'node_modules/tool': { version: '1.4.0' },
  'node_modules/tool-for-another-machine': { version: '1.4.0', optional: true },
};
const { 'node_modules/log': log, 'node_modules/tool': tool } = locked;

test('the same versions are as locked, with or without what only another machine needs', () => {
  expect(isAsLocked(locked, locked)).toBe(true);
  expect(isAsLocked(locked, { 'node_modules/log': log, 'node_modules/tool': tool })).toBe(true);
});

test.each([
  ['nothing', {}],
  ['one too few', { 'node_modules/log': log }],
  ['another version', { 'node_modules/log': log, 'node_modules/tool': { version: '1.4.1' } }],
  [
    'another version of what could be missing',
    {
      ...locked,
      'node_modules/tool-for-another-machine': { version: '1.3.0' },
    },
  ],
])('%s is not', (_, installed) => {
  expect(isAsLocked(locked, installed)).toBe(false);
});
