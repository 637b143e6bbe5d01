import { keepPreviousData, useQueries, useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import {
  type Answers,
  type BenchAsked,
  type BenchPlan,
  benchPlanOf,
  benchProblemOf,
  type JobSummary,
  localTime,
  type RawEntry,
  type Shop,
} from '../../job/index.js';
import { answersOf, linesOf } from '../data/lines.js';
import { useOutbox } from '../data/outbox.js';
import { entriesQuery, usePast, useShop } from '../data/queries.js';
import { useNow } from '../parts/now.js';
import { solveBench } from '../work/solve.js';

/** The plan over all open jobs, and what it was asked; nothing while the first one is being worked out. */
export interface BenchView {
  readonly asked?: BenchAsked;
  readonly plan?: BenchPlan;
  readonly wrong?: string;
}

export function useBenchPlan(summaries: readonly JobSummary[]): BenchView {
  const shop = useShop();
  const doors = useDoors(summaries, shop);
  const minute = localTime(new Date(useNow(30_000))).slice(0, 16);
  // the plan begins at a full five minutes: in between nothing about it changes
  const now = `${minute.slice(0, 15)}${Number(minute[15]) < 5 ? '0' : '5'}`;
  const asked = useMemo(() => (doors ? benchProblemOf(doors, shop, now) : undefined), [doors, shop, now]);
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
function useDoors(summaries: readonly JobSummary[], shop: Shop): Answers[] | undefined {
  const ids = summaries.map((j) => j.id);
  const { waiting } = useOutbox();
  const jobs = usePast();
  const lists = useQueries({ queries: ids.map(entriesQuery), combine: entriesOf });
  const key = ids.join(' ');
  return useMemo(() => {
    const all = key === '' ? [] : key.split(' ');
    if (lists.length < all.length || lists.some((list) => list === undefined)) return undefined;
    return all.map((id, i) => answersOf(id, linesOf(id, lists[i], waiting), shop, jobs));
  }, [key, lists, waiting, shop, jobs]);
}

const entriesOf = (results: readonly { readonly data: RawEntry[] | undefined }[]) =>
  results.map(({ data }) => data);
