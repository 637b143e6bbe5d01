/**
 * What is given, with members that are worked out of it and of each other when first asked, and then kept. `tell` hears of
 * each one that is worked out, so that a test can count them.
 */
export function workedOutOnce<Whole extends object>(
  given: object,
  members: { readonly [member: string]: (whole: Whole) => unknown },
  tell?: (member: string) => void,
): Whole {
  const whole = { ...given } as Whole;
  for (const [member, work] of Object.entries(members))
    Object.defineProperty(whole, member, {
      configurable: true,
      get: () => {
        tell?.(member);
        const value = work(whole);
        Object.defineProperty(whole, member, { value });
        return value;
      },
    });
  return whole;
}

/** The last answer of a function is kept and given again while it is asked with the very same things. */
export function lastKept<A extends readonly unknown[], R>(work: (...asked: A) => R): (...asked: A) => R {
  let last: { readonly asked: A; readonly answer: R } | undefined;
  return (...asked) => {
    if (!last?.asked.every((x, i) => x === asked[i])) last = { asked, answer: work(...asked) };
    return last.answer;
  };
}
