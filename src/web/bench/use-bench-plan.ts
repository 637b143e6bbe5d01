import { keepPreviousData, useQueries, useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import {
  type BenchAsked,
  type BenchPlan,
  benchPlanOf,
  benchProblemOf,
  fold,
  type Job,
  type JobSummary,
  localTime,
  type RawEntry,
} from '../../job/index.js';
import { useOutbox } from '../data/outbox.js';
import { entriesQuery, useCatalog, useShop } from '../data/queries.js';
import { useNow } from '../parts/now.js';
import { solveBench } from '../work/solve.js';

/** The plan over all open jobs, and what it was asked; nothing while the first one is being worked out. */
export interface BenchView {
  readonly asked?: BenchAsked;
  readonly plan?: BenchPlan;
  readonly wrong?: string;
}

export function useBenchPlan(summaries: readonly JobSummary[]): BenchView {
  const catalog = useCatalog();
  const jobs = useJobs(summaries);
  const shop = useShop();
  const minute = localTime(new Date(useNow(30_000))).slice(0, 16);
  // the plan begins at a full five minutes: in between nothing about it changes
  const now = `${minute.slice(0, 15)}${Number(minute[15]) < 5 ? '0' : '5'}`;
  const asked = useMemo(
    () => (jobs ? benchProblemOf(jobs, catalog, shop, now) : undefined),
    [jobs, catalog, shop, now],
  );
  const { data, error } = useQuery({
    queryKey: ['bench', asked?.origin, JSON.stringify(asked?.problem)],
    queryFn: async () => ({ asked: asked!, schedule: await solveBench(asked!.problem) }),
    enabled: asked !== undefined && asked.jobs.length > 0,
    staleTime: Number.POSITIVE_INFINITY,
    networkMode: 'always', // the worker needs no network
    retry: false,
    placeholderData: keepPreviousData,
  });
  return useMemo(
    () => ({
      ...(data && { asked: data.asked, plan: benchPlanOf(data.asked, data.schedule) }),
      ...(error && { wrong: error.message }),
    }),
    [data, error],
  );
}

/** The open jobs from their logs; nothing until all are here. */
function useJobs(summaries: readonly JobSummary[]): Job[] | undefined {
  const ids = summaries.filter((j) => !j.handedOver).map((j) => j.id);
  const { waiting } = useOutbox();
  const lists = useQueries({ queries: ids.map(entriesQuery), combine: entriesOf });
  const key = ids.join(' ');
  return useMemo(() => {
    const all = key === '' ? [] : key.split(' ');
    if (lists.length < all.length || lists.some((list) => list === undefined)) return undefined;
    return all.map((id, i) => fold(id, [...lists[i]!, ...waiting.filter((e) => e.job === id)]));
  }, [key, lists, waiting]);
}

const entriesOf = (results: readonly { readonly data: RawEntry[] | undefined }[]) =>
  results.map(({ data }) => data);
