import { expect } from 'vitest';
import { QuantityError, type QuantityErrorCode } from '../../src/quantity/index.js';

/** What `act` refuses with; fails the test when it answers or throws something else. */
export function refusal(act: () => unknown): QuantityError {
  try {
    const answer = act();
    expect.fail(`answered ${JSON.stringify(answer)} where a refusal was due`);
  } catch (error) {
    if (error instanceof QuantityError) return error;
    throw error;
  }
}

export function expectRefusal(
  act: () => unknown,
  code: QuantityErrorCode,
  ...words: readonly string[]
): QuantityError {
  const error = refusal(act);
  expect(error.code).toBe(code);
  for (const each of words) expect(error.message).toContain(each);
  return error;
}
