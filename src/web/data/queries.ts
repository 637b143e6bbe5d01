import { QueryClient, useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import type { Catalog } from '../../catalog/index.js';
import {
  catalogOf,
  fold,
  foldShop,
  type Gate,
  gateRules,
  gates,
  type Job,
  type OwnFrequencies,
  type OwnSay,
  ownFrequencies,
  ownSay,
  type RawEntry,
  type Shop,
  shopLog,
} from '../../job/index.js';
import type { UnitSystem } from '../../quantity/index.js';
import { api } from './api.js';
import { useDevice } from './device.js';
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
    void queries.invalidateQueries({ queryKey: pastKey });
    for (const job of jobs) void queries.invalidateQueries({ queryKey: entriesKey(job) });
  });
  // an acknowledged line moves from the outbox into what the store is known to hold, without a gap between
  whenSaved((saved) => {
    for (const job of new Set(saved.map((e) => e.job))) {
      queries.setQueryData<RawEntry[]>(entriesKey(job), (known) => [
        ...(known ?? []),
        ...saved.filter((e) => e.job === job),
      ]);
    }
    void queries.invalidateQueries({ queryKey: jobsKey });
  });
}

export const useJobs = () => useQuery({ queryKey: jobsKey, queryFn: api.jobs });

export const entriesQuery = (job: string) => ({ queryKey: entriesKey(job), queryFn: () => api.entries(job) });

/** The store's lines and this device's unsent ones, together. */
function useEntries(job: string): { entries: readonly RawEntry[]; loading: boolean; error: Error | null } {
  const { data, isPending, error } = useQuery(entriesQuery(job));
  const { waiting } = useOutbox();
  const entries = useMemo(
    () => [...(data ?? []), ...waiting.filter((e) => e.job === job)],
    [data, waiting, job],
  );
  return { entries, loading: isPending, error };
}

export interface JobView {
  readonly job: Job;
  readonly gates: readonly Gate[];
  readonly loading: boolean;
  readonly error: Error | null;
}

export function useJob(id: string): JobView {
  const { entries, loading, error } = useEntries(id);
  const catalog = useCatalog();
  const own = useOwnFrequencies();
  return useMemo(() => {
    const job = fold(id, entries);
    const frequencies = ownSay(own, job, catalog)?.frequencies;
    return { job, gates: gates(job, gateRules(catalog, job, frequencies)), loading, error };
  }, [id, entries, loading, error, catalog, own]);
}

/** Folded once for all who ask: the store's lines and the outbox are the same for every part of the page. */
let shopKept: { readonly data: unknown; readonly waiting: unknown; readonly shop: Shop } | undefined;

export function useShop(): Shop {
  const { data } = useQuery({ queryKey: entriesKey(shopLog), queryFn: () => api.entries(shopLog) });
  const { waiting } = useOutbox();
  if (!shopKept || shopKept.data !== data || shopKept.waiting !== waiting) {
    const shop = foldShop([...(data ?? []), ...waiting.filter((e) => e.job === shopLog)]);
    shopKept = { data, waiting, shop };
  }
  return shopKept.shop;
}

/** What the shop computes with: the program's catalog with the shop's own packs on top. */
export const useCatalog = (): Catalog => catalogOf(useShop());

const nothing = { finished: [], minutes: {} };

/** What the shop's jobs so far tell. While the store cannot be reached the catalog speaks alone. */
const usePast = () => useQuery({ queryKey: pastKey, queryFn: api.past }).data ?? nothing;

/** The shop's own minutes by component or assembly, from the clock of its logs. */
export const useShopMinutes = (): Readonly<Record<string, number>> => usePast().minutes;

/** What the shop's finished jobs have taught. */
export function useOwnFrequencies(): OwnFrequencies {
  const shop = useShop();
  const { finished } = usePast();
  const catalog = catalogOf(shop);
  const { learning, settings } = shop;
  return useMemo(
    () => ownFrequencies({ learning, settings }, finished, catalog),
    [learning, settings, finished, catalog],
  );
}

/** What they say of machines like this job's; undefined while they say nothing. */
export function useOwnSay(job: Job): OwnSay | undefined {
  const own = useOwnFrequencies();
  const catalog = useCatalog();
  return useMemo(() => ownSay(own, job, catalog), [own, job, catalog]);
}

/** Which system's units come first: this device's choice, else the shop's, else inch. */
export function useUnits(): UnitSystem {
  const { system } = useDevice();
  const shop = useShop();
  return system ?? (shop.settings.units === 'metric' ? 'metric' : 'inch');
}
