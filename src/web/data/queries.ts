import { QueryClient, useQuery } from '@tanstack/react-query';
import { createContext, useContext, useMemo } from 'react';
import type { Catalog } from '../../catalog/index.js';
import {
  type Answers,
  catalogOf,
  type Gate,
  type Job,
  type JobsTaught,
  nothingTaught,
  type OwnFrequencies,
  ownFrequencies,
  type RawEntry,
  type Shop,
  shopLog,
} from '../../job/index.js';
import type { UnitSystem } from '../../quantity/index.js';
import { api } from './api.js';
import { useDevice } from './device.js';
import { answersOf, linesOf, sameLines, shopOf } from './lines.js';
import { useOutbox, whenSaved } from './outbox.js';

export const queries = new QueryClient({ defaultOptions: { queries: { staleTime: 30_000, retry: 1 } } });

const jobsKey = ['jobs'] as const;
const pastKey = ['past'] as const;
const entriesKey = (job: string) => ['entries', job] as const;

/** Open pages follow the store: a change made on another device is fetched at once. */
export function followChanges(): void {
  const events = new EventSource('/api/events');
  events.addEventListener('changed', (event) => {
    const { jobs } = JSON.parse((event as MessageEvent<string>).data) as { jobs: string[] };
    void queries.invalidateQueries({ queryKey: jobsKey });
    if (jobs.includes(shopLog)) void queries.invalidateQueries({ queryKey: pastKey });
    for (const job of jobs) void queries.invalidateQueries({ queryKey: entriesKey(job) });
  });
  events.addEventListener('learned', () => void queries.invalidateQueries({ queryKey: pastKey }));
  // an acknowledged line moves from the outbox into what the store is known to hold, without a gap between
  whenSaved((saved) => {
    for (const job of new Set(saved.map((e) => e.job))) {
      queries.setQueryData<RawEntry[]>(entriesKey(job), (known) => [
        ...(known ?? []),
        ...sameLines(saved.filter((e) => e.job === job)),
      ]);
    }
    void queries.invalidateQueries({ queryKey: jobsKey });
  });
}

export const useOpenJobs = () => useQuery({ queryKey: [...jobsKey, 'open'], queryFn: api.openJobs });

export const useHandedOver = (most: number) =>
  useQuery({ queryKey: [...jobsKey, 'handed over', most], queryFn: () => api.handedOver(most) }).data ?? [];

export const useJobCounts = () => useQuery({ queryKey: [...jobsKey, 'counts'], queryFn: api.jobCounts }).data;

export const entriesQuery = (job: string) => ({
  queryKey: entriesKey(job),
  queryFn: async () => sameLines(await api.entries(job)),
  structuralSharing: false, // lines are told apart by their ids
});

export interface JobView {
  readonly answers: Answers;
  readonly job: Job;
  readonly gates: readonly Gate[];
  readonly loading: boolean;
  readonly error: Error | null;
}

/** A job from the store's lines and this device's unsent ones, with all that is computed from it. */
export function useJob(id: string): JobView {
  const { data, isPending, error } = useQuery(entriesQuery(id));
  const { waiting } = useOutbox();
  const lines = linesOf(id, data, waiting);
  const handedOver = lines.some(({ kind }) => kind === 'hand-over');
  const answers = answersOf(id, lines, useShop(), usePast(handedOver ? id : undefined));
  return { answers, job: answers.job, gates: answers.gates, loading: isPending, error };
}

const OnScreen = createContext<Answers | undefined>(undefined);
/** Gives the sheets what is computed from the job on screen. */
export const AnswersOnScreen = OnScreen.Provider;

/** All that is computed from the job on screen: one object for everybody until its log, the shop or its past changes. */
export function useAnswers(): Answers {
  const answers = useContext(OnScreen);
  if (!answers) throw new Error('no job is on screen here');
  return answers;
}

export function useShop(): Shop {
  const { data } = useQuery(entriesQuery(shopLog));
  const { waiting } = useOutbox();
  return shopOf(linesOf(shopLog, data, waiting));
}

/** What the shop computes with: the program's catalog with the shop's own packs on top. */
export const useCatalog = (): Catalog => catalogOf(useShop());

/**
 * What the shop's jobs so far have taught, a job that is asked about and handed over left out. While the store cannot be
 * reached the catalog speaks alone.
 */
export const usePast = (without?: string): JobsTaught =>
  useQuery({ queryKey: [...pastKey, without], queryFn: () => api.past(without) }).data ?? nothingTaught;

/** The shop's finished jobs, for its own list of them. */
export const usePastJobs = () => useQuery({ queryKey: [...pastKey, 'jobs'], queryFn: api.pastJobs }).data;

/** What the shop's finished jobs have taught. */
export function useOwnFrequencies(): OwnFrequencies {
  const shop = useShop();
  const past = usePast();
  return useMemo(() => ownFrequencies(shop, past, catalogOf(shop)), [shop, past]);
}

/** Which system's units come first: this device's choice, else the shop's, else inch. */
export function useUnits(): UnitSystem {
  const { system } = useDevice();
  const shop = useShop();
  return system ?? (shop.settings.units === 'metric' ? 'metric' : 'inch');
}
