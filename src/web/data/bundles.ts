import type { ImportPlan } from '../../record/index.js';
import { ask } from './api.js';

export interface Imported {
  readonly stored: readonly string[];
  readonly pictures: number;
  readonly sounds?: number;
  readonly leftOut: readonly { readonly job: string; readonly lines: number }[];
}

/** A large one is sent, unpacked and looked through before there is an answer. */
const longestMs = 180_000;

const send = <T>(query: string, bundle: Blob): Promise<T> =>
  ask<T>(`/api/bundles?${query}`, { method: 'POST', body: bundle }, longestMs);

/** Stores nothing. */
export const lookInto = (bundle: Blob): Promise<ImportPlan> => send('look', bundle);

/** Takes the jobs that are not here yet, and beyond them what the person said yes to. */
export function takeIn(bundle: Blob, into: readonly string[], shop: boolean): Promise<Imported> {
  const query = new URLSearchParams(into.map((job) => ['into', job]));
  if (shop) query.set('shop', 'yes');
  return send(query.toString(), bundle);
}
