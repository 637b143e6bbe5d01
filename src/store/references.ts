export function isInvented(openBody: unknown): boolean {
  return field(openBody, 'invented') === true;
}

function field(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;
}
