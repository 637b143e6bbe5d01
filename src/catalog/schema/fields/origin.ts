import { z } from 'zod';
import { originKinds } from '../../../quantity/index.js';
import { id } from './word.js';

/** Where a number comes from. In a pack an origin may be named by its id; the loader puts the origin in its place. */
export const origin = z.strictObject(
  { from: z.enum(originKinds), detail: z.string().min(1).max(400) },
  { error: 'say where it comes from: an "origin" known to the packs, here or in the defaults of the pack' },
);

export const namedOrigin = z.strictObject({ id, ...origin.shape });
