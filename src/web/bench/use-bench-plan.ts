import { useQueries, useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import {
  type BenchAsked,
  type BenchPlan,
  type JobSummary,
  localTime,
  type RawEntry,
  shopLog,
} from '../../job/index.js';
import { linesOf } from '../data/lines.js';
import { useOutbox } from '../data/outbox.js';
import { entriesQuery, pastQuery, useLines } from '../data/queries.js';
import { useNow } from '../parts/now.js';
import type { Logs } from '../work/answers-worker.js';
import { benchBeside } from '../work/solve.js';
import { useBeside } from '../work/use-beside.js';

/** The plan over all open jobs, and what it was asked; nothing while the first one is being worked out. */
export interface BenchView {
  readonly asked?: BenchAsked;
  readonly plan?: BenchPlan;
  readonly wrong?: string;
}

export function useBenchPlan(summaries: readonly JobSummary[]): BenchView {
  const logs = useOpenLogs(summaries);
  const minute = localTime(new Date(useNow(30_000))).slice(0, 16);
  // the plan begins at a full five minutes: in between nothing about it changes
  const now = `${minute.slice(0, 15)}${Number(minute[15]) < 5 ? '0' : '5'}`;
  const { answer, wrong } = useBeside(logs, now, (of) => benchBeside(of, now));
  return useMemo(() => ({ ...answer, ...(wrong !== undefined && { wrong }) }), [answer, wrong]);
}

/** The logs of the open jobs, to be read beside the page; nothing until all are here. */
function useOpenLogs(summaries: readonly JobSummary[]): Logs | undefined {
  const ids = summaries.map((j) => j.id);
  const shop = useLines(shopLog).lines;
  const { waiting } = useOutbox();
  const { data: jobs } = useQuery(pastQuery());
  const lists = useQueries({ queries: ids.map(entriesQuery), combine: entriesOf });
  const key = ids.join(' ');
  return useMemo(() => {
    const all = key === '' ? [] : key.split(' ');
    if (all.length === 0 || lists.length < all.length || lists.some((list) => list === undefined))
      return undefined;
    const logs = all.map((id, i) => [id, linesOf(id, lists[i], waiting)] as const);
    return { shop, logs, ...(jobs && { jobs }) };
  }, [key, lists, waiting, shop, jobs]);
}

const entriesOf = (results: readonly { readonly data: RawEntry[] | undefined }[]) =>
  results.map(({ data }) => data);
