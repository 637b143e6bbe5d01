import type { PackText, RawEntry } from '../../job/index.js';
import { RecordError } from '../../record/index.js';
import { ShopkeepError } from '../error.js';

/** What the server asks of a reading thread. */
export type Asked =
  | { readonly what: 'bundle'; readonly file: string }
  | { readonly what: 'picture'; readonly sha256: string }
  | { readonly what: 'packs'; readonly packs: readonly PackText[] };

export type Told =
  | { readonly is: 'part'; readonly part: readonly RawEntry[] }
  | { readonly is: 'done'; readonly answer: unknown }
  | { readonly is: 'failed'; readonly failure: Failure };

/** An error on its way from one thread to the other: what is told of it, and of which kind it is. */
export interface Failure {
  readonly name: string;
  readonly message: string;
  readonly stack?: string | undefined;
  readonly code?: string | undefined;
  readonly field?: string | undefined;
}

export function asFailure(error: unknown): Failure {
  if (!(error instanceof Error)) return { name: 'Error', message: String(error) };
  const { name, message, stack, code, field } = error as Error & { code?: string; field?: string };
  return { name, message, stack, code, field };
}

export function asError({ name, message, stack, code, field }: Failure): Error {
  if (name === 'RecordError') return new RecordError(message, field);
  if (name === 'ShopkeepError') return new ShopkeepError(code as ShopkeepError['code'], message, field);
  return Object.assign(new Error(message), { stack });
}
