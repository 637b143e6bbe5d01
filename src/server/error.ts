import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';

/** A request that is refused: the status, a code for programs, and a sentence that says what to do. */
export class ApiError extends Error {
  constructor(
    readonly status: ContentfulStatusCode,
    readonly code: string,
    message: string,
    readonly field?: string,
  ) {
    super(message);
    this.name = 'ApiError';
  }
}

/** What every refused request is answered with. */
export interface ErrorAnswer {
  readonly error: { readonly code: string; readonly message: string; readonly field?: string };
}

export function notFound(message: string): ApiError {
  return new ApiError(404, 'not-found', message);
}

export function answerError(c: Context, error: ApiError): Response {
  const { status, code, message, field } = error;
  const body: ErrorAnswer = { error: { code, message, ...(field !== undefined && { field }) } };
  return c.json(body, status);
}
