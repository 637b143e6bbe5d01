import { keepPreviousData, QueryClient, useQuery } from '@tanstack/react-query';
import {
  askedFor,
  type FoundJob,
  holds,
  type JobSummary,
  type RawEntry,
  type Shop,
  shopLog,
  tokensOf,
} from '../../job/index.js';
import type { UnitSystem } from '../../quantity/index.js';
import { api, isAway, type Keeping, type StoreState, Unreachable } from './api.js';
import { knowElsewhere } from './contact.js';
import { changeDevice, useDevice } from './device.js';
import { followEvents } from './follow.js';
import { linesOf, sameLines, shopOf } from './lines.js';
import { useOutbox, whenBackAgain, whenSaved } from './outbox.js';

export const queries = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: 30_000,
      // without a network the question is asked all the same: what was seen last answers it
      networkMode: 'always',
      retry: (failures, error) => failures < 1 && !(error instanceof Unreachable),
    },
  },
});

const jobsKey = ['jobs'] as const;
const pastKey = ['past'] as const;
const storeKey = ['store'] as const;
const entriesKey = (job: string) => ['entries', job] as const;

/** Open pages follow the store: a change made on another device is fetched at once. */
export function followChanges(): void {
  followEvents('open', () => void sayHere()); // each time that the bench is there again
  followEvents('changed', (data) => {
    const { jobs } = JSON.parse(data) as { jobs: string[] };
    void queries.invalidateQueries({ queryKey: jobsKey });
    if (jobs.includes(shopLog)) void queries.invalidateQueries({ queryKey: pastKey });
    for (const job of jobs) void queries.invalidateQueries({ queryKey: entriesKey(job) });
  });
  followEvents('keeping', (data) => {
    const keeping = JSON.parse(data) as Keeping;
    queries.setQueryData<StoreState>(storeKey, (known) => known && { ...known, keeping });
    void queries.invalidateQueries({ queryKey: storeKey });
  });
  followEvents('learned', () => void queries.invalidateQueries({ queryKey: pastKey }));
  // while it was away, what had been seen last stood in for it
  whenBackAgain(() => void queries.invalidateQueries());
  // an acknowledged line moves from the outbox into what the store is known to hold, without a gap between
  whenSaved(async (saved) => {
    for (const job of new Set(saved.map((e) => e.job))) {
      const mine = sameLines(saved.filter((e) => e.job === job));
      await api.alsoSeen(job, mine);
      // where the log has not been read yet, these lines alone must not stand for all of it
      const read = queries.setQueryData<RawEntry[]>(entriesKey(job), (known) => known && [...known, ...mine]);
      if (!read) void queries.invalidateQueries({ queryKey: entriesKey(job) });
    }
    void queries.invalidateQueries({ queryKey: jobsKey });
  });
}

/** Asks who this device is, where else the bench is found, and by the way what time it is there. */
async function sayHere(): Promise<void> {
  try {
    const { here, origins, carry } = await api.hereAt();
    changeDevice({ name: here?.name });
    knowElsewhere(carry === undefined ? undefined : { origins, carry });
  } catch {
    // asked again when the bench is there again; what was known stays
  }
}

export const useOpenJobs = () => useQuery({ queryKey: [...jobsKey, 'open'], queryFn: api.openJobs });

export const useHandedOver = (most: number) =>
  useQuery({ queryKey: [...jobsKey, 'handed over', most], queryFn: () => api.handedOver(most) }).data ?? [];

interface Found {
  readonly found: readonly FoundJob[];
  /** the store could not be asked */
  readonly onlyHere?: boolean;
}

/** As many as the store gives. */
const mostFound = 12;

/** What stands somewhere in the jobs; without the store, in what is known here of the `open` ones. */
export function useFound(words: string, open: readonly JobSummary[]) {
  const { data, error } = useQuery<Found>({
    queryKey: [...jobsKey, 'find', words],
    queryFn: () =>
      api.find(words).catch((away) => {
        if (isAway(away)) return { found: foundHere(words, open), onlyHere: true };
        throw away;
      }),
    placeholderData: keepPreviousData,
  });
  return { data, error, most: mostFound };
}

function foundHere(words: string, open: readonly JobSummary[]): FoundJob[] {
  const ways = askedFor(words);
  const fits = ({ tag, machine, title, complaint }: JobSummary) => {
    const tokens = tokensOf(['tag', tag, title, machine, complaint].filter(Boolean).join(' '));
    return ways.some((asked) => asked.every((word) => holds(tokens, word)));
  };
  return open.filter(fits).map((summary) => ({ summary, places: [] }));
}

export const useJobCounts = () => useQuery({ queryKey: [...jobsKey, 'counts'], queryFn: api.jobCounts }).data;

export const entriesQuery = (job: string) => ({
  queryKey: entriesKey(job),
  queryFn: async () => sameLines(await api.entries(job)),
  structuralSharing: false, // lines are told apart by their ids
});

/** The lines of a log as far as they are known, the store's and this device's unsent ones. */
export function useLines(log: string) {
  const { data, isLoading, error } = useQuery(entriesQuery(log));
  const { waiting } = useOutbox();
  return { lines: linesOf(log, data, waiting), isLoading, error };
}

export const useShop = (): Shop => shopOf(useLines(shopLog).lines);

/** What the shop's jobs so far have taught, a job that is asked about and handed over left out. */
export const pastQuery = (without?: string) => ({
  queryKey: [...pastKey, without],
  queryFn: () => api.past(without),
});

/** The shop's finished jobs, for its own list of them. */
export const usePastJobs = () => useQuery({ queryKey: [...pastKey, 'jobs'], queryFn: api.pastJobs }).data;

/** How the shop's store stands: whether it keeps what is written, as the server sees it, and its last backup. */
export const useStoreState = () => useQuery({ queryKey: storeKey, queryFn: api.storeState }).data;

/** Which system's units come first: this device's choice, else the shop's, else inch. */
export function useUnits(): UnitSystem {
  const { system } = useDevice();
  const shop = useShop();
  return system ?? (shop.settings.units === 'metric' ? 'metric' : 'inch');
}
