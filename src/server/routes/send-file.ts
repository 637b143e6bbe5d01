import type { Context } from 'hono';

const types = {
  pdf: 'application/pdf',
  zip: 'application/zip',
  ics: 'text/calendar; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  vtt: 'text/vtt; charset=utf-8',
} as const;

/** A document under a name that a download keeps. */
export function sendFile(c: Context, body: Uint8Array | string, name: string, way: 'inline' | 'attachment') {
  const ending = name.slice(name.lastIndexOf('.') + 1) as keyof typeof types;
  const headers = { 'Content-Type': types[ending], 'Content-Disposition': `${way}; filename="${name}"` };
  return typeof body === 'string' ? c.body(body, 200, headers) : c.body(new Uint8Array(body), 200, headers);
}
