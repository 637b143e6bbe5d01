/**
 * The SHA-256 of what a line shows or plays and what is kept beside the log: the picture of a photograph, the sound of a
 * spoken note. Total: a body of any other form, one of a newer program or a damaged one refers to nothing.
 */
export function attachedTo({
  kind,
  body,
}: {
  readonly kind: string;
  readonly body: unknown;
}): string | undefined {
  if (kind === 'photograph') return hashIn(body, 'picture');
  if (kind === 'spoken-note') return hashIn(body, 'sound');
  return undefined;
}

function hashIn(body: unknown, name: 'picture' | 'sound'): string | undefined {
  const hash = field(field(body, name), 'sha256');
  return typeof hash === 'string' ? hash : undefined;
}

function field(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;
}
