import { HTTPException } from 'hono/http-exception';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { EntryError } from '../job/index.js';
import { RecordError } from '../record/index.js';
import { ShopkeepError, TooMuch } from '../shopkeep/index.js';
import { StoreError, type StoreErrorCode } from '../store/index.js';
import { ApiError } from './error.js';

const storeStatus: Readonly<Record<StoreErrorCode, ContentfulStatusCode>> = {
  conflict: 409,
  'no-such-job': 404,
  'bad-entry': 422,
  'bad-picture': 422,
  'not-invented': 409,
  'not-empty': 409,
  exists: 409,
  'not-a-log': 500,
  'cut-short': 500,
  corrupt: 500,
  newer: 500,
  'no-permission': 500,
  'cannot-open': 500,
  gone: 503,
  unreachable: 503,
  busy: 503,
  unfit: 500,
  'disk-full': 507,
  'disk-failed': 500,
  closed: 503,
};

const shopkeepStatus: Readonly<Record<ShopkeepError['code'], ContentfulStatusCode>> = {
  'not-found': 404,
  'bad-file': 422,
  'no-demo': 404,
  'bad-entry': 422,
  'bad-picture': 422,
  'bad-demo': 500,
};

/** Any error as an answer; undefined when it is a fault of our own, of which the person learns the outline only. */
export function asApiError(error: unknown): ApiError | undefined {
  if (error instanceof ApiError) return error;
  if (error instanceof StoreError) return new ApiError(storeStatus[error.code], error.code, error.message);
  if (error instanceof ShopkeepError)
    return new ApiError(shopkeepStatus[error.code], error.code, error.message, error.field);
  if (error instanceof EntryError) return new ApiError(422, 'bad-entry', error.message, error.field);
  if (error instanceof TooMuch)
    return new ApiError(422, 'bad-record', `What was sent ${error.message}. Nothing was stored.`);
  if (error instanceof RecordError) return new ApiError(422, 'bad-record', error.message, error.field);
  if (error instanceof HTTPException) {
    return new ApiError(error.status, 'refused', error.message || 'The request was refused.');
  }
  return undefined;
}

export function ownFault(): ApiError {
  return new ApiError(
    500,
    'failed',
    'Wristpin failed at this. What was said to be saved is saved; nothing of this request was. The window in which the server runs shows the cause.',
  );
}
