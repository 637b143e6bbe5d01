/** What a line says without the entry's own marks: said again, changed or not, as a new line. */
export function asBody<T extends { entry: string; at: string; by: string }>(
  said: T,
): Omit<T, 'entry' | 'at' | 'by'> {
  const { entry: _entry, at: _at, by: _by, ...body } = said;
  return body;
}
