import type { Context, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { z } from 'zod';
import { ApiError } from './error.js';

export const megabyte = 1024 * 1024;

/**
 * Refuses a body larger than `limit` before it is kept in memory: at once when the request says its length, else as
 * soon as more than that has come in.
 */
export function atMost(limit: number, what: string): MiddlewareHandler {
  return bodyLimit({
    maxSize: limit,
    onError: () => {
      const size = limit < megabyte ? `${Math.round(limit / 1024)} kB` : `${Math.round(limit / megabyte)} MB`;
      throw new ApiError(
        413,
        'too-large',
        `${what} may be at most ${size}; this is more. Nothing was stored.`,
      );
    },
  });
}

/** The request's body as JSON that fits the schema. @throws ApiError 400 when it is not JSON, 422 when it does not fit */
export async function readJson<S extends z.ZodType>(c: Context, schema: S): Promise<z.output<S>> {
  const value = parseJson(await c.req.arrayBuffer());
  requireShallow(value);
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  const issue = read.error.issues[0];
  const field = issue?.path.join('.') ?? '';
  const message = `${field || 'The request'}: ${issue?.message ?? 'does not fit'}. Nothing was stored.`;
  throw new ApiError(422, 'bad-request-body', message, field || undefined);
}

/** Bytes that are not UTF-8 are refused, not replaced: a log must hold what was sent. */
function parseJson(bytes: ArrayBuffer): unknown {
  if (bytes.byteLength === 0) throw badJson('it is empty');
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    throw badJson(error instanceof SyntaxError ? error.message : 'it is not UTF-8 text');
  }
}

const deepest = 64;

/** Nesting far beyond any log would exhaust the stack of whatever writes it down later. */
function requireShallow(value: unknown): void {
  let level = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > deepest) {
      const message = `The request is nested deeper than ${deepest} levels. Nothing was stored.`;
      throw new ApiError(422, 'bad-request-body', message);
    }
    level = level.flatMap((each) => (typeof each === 'object' && each !== null ? Object.values(each) : []));
  }
}

function badJson(why: string): ApiError {
  return new ApiError(400, 'bad-json', `The request cannot be read as JSON: ${why}. Nothing was stored.`);
}
