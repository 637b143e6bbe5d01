import { expect, test } from 'vitest';
import { secondTries } from '../../scripts/run-tests.mjs';

test('a test that passed only at the second try is named with why, and no other', () => {
  const named = secondTries([
    { fullName: 'at once', status: 'passed', failureMessages: [] },
    { fullName: 'not at all', status: 'failed', failureMessages: ['Error: gone', 'Error: gone'] },
    { fullName: 'at last', status: 'passed', failureMessages: ['Error: too late\n    at a line'] },
  ]);
  expect(named).toEqual(['at last: Error: too late']);
});
