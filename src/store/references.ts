/** The picture that an entry of kind `photograph` shows; a body of any other form refers to none. */
export function pictureOf(body: unknown): string | undefined {
  const shown = field(field(body, 'picture'), 'sha256');
  return typeof shown === 'string' ? shown : undefined;
}

export function isInvented(openBody: unknown): boolean {
  return field(openBody, 'invented') === true;
}

function field(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;
}
