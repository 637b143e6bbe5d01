import { expect, test } from 'vitest';
import { consentOf } from '../../../../src/web/sheets/intake/consent.js';

test('how somebody agreed is never made up, and nobody named is no consent', () => {
  expect(consentOf({ by: 'Ida Brekke' })).toEqual({ given: true, by: 'Ida Brekke', how: '' });
  expect(consentOf({})).toEqual({ given: false, by: '', how: '' });
  expect(consentOf({ by: 'Ida Brekke', how: 'telephone' }).how).toBe('telephone');
});
