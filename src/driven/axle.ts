import { requirePositive } from './error.js';

export interface Cart {
  readonly weightN: number;
  /** from the front support back to the rear one */
  readonly wheelbaseM: number;
  /** from the front support back to where the weight acts */
  readonly gravityFromFrontM: number;
}

/**
 * What each of two supports of a cart carries, N: axles, or an axle and a hitch or handle.
 * Source: statics, moments about a support. Exact on level ground. A weight that acts outside the supports lifts the
 * other one: its share comes out below 0. Example: 1000 N, 2 m, 0.5 m from the front: 750 and 250 N.
 */
export function supportLoads({ weightN, wheelbaseM, gravityFromFrontM }: Cart): {
  readonly front: number;
  readonly rear: number;
} {
  const rear =
    (requirePositive(weightN, 'weight') * gravityFromFrontM) / requirePositive(wheelbaseM, 'wheelbase');
  return { front: weightN - rear, rear };
}
