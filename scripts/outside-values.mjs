// Says how many values from outside the project a test run compared: test/support/published.ts leaves its count at
// each test, and only tests that passed are counted.

/** One line, or nothing when no outside value was among the tests. */
export function outsideValues(tests) {
  const all = tests
    .filter(({ status }) => status === 'passed')
    .map(({ meta }) => meta?.outside)
    .filter(Boolean);
  if (all.length === 0) return undefined;
  const perMark = new Map();
  for (const { mark, values } of all) perMark.set(mark, (perMark.get(mark) ?? 0) + values);
  const total = all.reduce((sum, { values }) => sum + values, 0);
  const sources = new Set(all.map(({ source }) => source)).size;
  const marks = [...perMark].sort(([, a], [, b]) => b - a).map(([mark, values]) => `${values} ${mark}`);
  return `${total} outside values from ${sources} sources compared: ${marks.join(', ')}`;
}
