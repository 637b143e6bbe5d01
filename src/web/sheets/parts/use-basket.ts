import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { Alternatives, BasketProblem } from '../../../supply/index.js';
import { solveBasket } from '../../work/solve.js';

/** The cheapest basket and its alternatives, worked out beside the page; asked again only when the problem changes. */
export function useBasket(problem: BasketProblem): {
  readonly found: Alternatives | undefined;
  readonly working: boolean;
  readonly wrong: string | undefined;
} {
  const asks = Object.keys(problem.need).length > 0;
  const { data, isFetching, error } = useQuery({
    queryKey: ['basket', JSON.stringify(problem)],
    queryFn: () => solveBasket(problem),
    enabled: asks,
    staleTime: Number.POSITIVE_INFINITY,
    networkMode: 'always', // the worker needs no network
    retry: false,
    placeholderData: keepPreviousData,
  });
  return {
    found: asks && !error ? data : undefined,
    working: isFetching,
    wrong: asks ? error?.message : undefined,
  };
}
