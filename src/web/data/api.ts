import type { FinishedHere, FoundJob, JobSummary, JobsTaught, RawEntry } from '../../job/index.js';
import type { MatPaper } from '../../sight/index.js';
import { fetchFromBench } from './contact.js';
import type { LabelPaper } from './device.js';
import { seen } from './seen.js';

/** What the shop's server said no to, in its own words. */
export class ServerError extends Error {
  constructor(
    message: string,
    readonly status: number,
    readonly code: string,
    readonly field?: string,
  ) {
    super(message);
    this.name = 'ServerError';
  }
}

/** The server cannot be reached: nothing is lost, the outbox keeps what was written. */
export class Unreachable extends Error {}

/** The server does not know this device, or no longer: as with one that cannot be reached, nothing is lost. */
export class NotPaired extends Unreachable {}

/** A server that takes a request and never answers is waited for so long, and then counts as one that is not there. */
const longestMs = { read: 60_000, readKnown: 10_000, write: 20_000, part: 45_000 };

/** What a request found at the other end. */
type Found = 'reached' | Error;
const listeners = new Set<(found: Found) => void>();

/** Calls back after each request with what it found. */
export const onContact = (tell: (found: Found) => void): void => void listeners.add(tell);

export const found = <E extends Found>(what: E): E => {
  for (const tell of listeners) tell(what);
  return what;
};

const away = 'The shop’s store cannot be reached. What you write is kept on this device and sent later.';

export async function ask<T>(path: string, init?: RequestInit, longest = longestMs.read): Promise<T> {
  let response: Response;
  try {
    response = await fetchFromBench(path, init ?? {}, longest);
  } catch {
    throw found(new Unreachable(away));
  }
  if (!response.ok) throw found(await refusal(response));
  try {
    const answer = (await response.json()) as T;
    found('reached');
    return answer;
  } catch {
    // a network's own page in place of the shop's answer, or a line that broke in the middle
    throw found(new Unreachable(away));
  }
}

/**
 * As `ask`, and what was answered is kept on this device: where the store cannot be reached, the last answer stands in for
 * it. A device that was shut out is shown nothing of the shop any more.
 */
async function askKept<T>(path: string): Promise<T> {
  const before = await seen.get<T>(path);
  try {
    const answer = await ask<T>(path, {}, before === undefined ? longestMs.read : longestMs.readKnown);
    await seen.keep(path, answer);
    return answer;
  } catch (error) {
    if (error instanceof NotPaired) await seen.forgetAll();
    else if (before !== undefined && isAway(error)) return before;
    throw error;
  }
}

export const isAway = (error: unknown): boolean =>
  error instanceof Unreachable || (error instanceof ServerError && error.status >= 502);

async function refusal(response: Response): Promise<ServerError | NotPaired> {
  const body = (await response.json().catch(() => undefined)) as
    | { error?: { message?: string; code?: string; field?: string } }
    | undefined;
  const { message = `The server answered ${response.status}.`, code = 'unknown', field } = body?.error ?? {};
  if (response.status === 401) return new NotPaired(message);
  return new ServerError(message, response.status, code, field);
}

const sendJson = (method: string, body: unknown): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

/** How far the store has a picture that is sent in parts. */
export interface PictureState {
  readonly whole: boolean;
  /** how many bytes have come in */
  readonly have: number;
}

export interface PictureInfo {
  readonly sha256: string;
  readonly mime: 'image/jpeg' | 'image/png' | 'image/webp';
  readonly bytes: number;
  readonly width: number;
  readonly height: number;
}

/** The sound of a spoken note, which goes every way that a picture goes. */
export interface SoundInfo {
  readonly sha256: string;
  readonly mime: 'audio/wav';
  readonly bytes: number;
  readonly seconds: number;
}

interface PairedDevice {
  readonly id: string;
  readonly name: string;
  readonly paired: string;
  /** when it last asked for anything */
  readonly seen?: string;
}

/** Who this device is for the shop, and where else the bench is found. */
interface Here {
  readonly here: PairedDevice | null;
  readonly origins: readonly string[];
  readonly carry?: string;
}

interface Devices {
  /** whether the shop's network is let in at all */
  readonly open: boolean;
  /** this device, where it is a paired one; null on the bench computer */
  readonly here: PairedDevice | null;
  readonly devices: readonly PairedDevice[];
  /** the shop's own authority, where encrypted lines are spoken too */
  readonly trust?: { readonly fingerprint: string };
}

export interface PairingLinks {
  readonly code: string;
  readonly until: string;
  readonly links: readonly string[];
}

/** The shop's finished jobs: those handed over last, and all that were left out. */
interface FinishedJobs {
  readonly jobs: readonly (Omit<FinishedHere, 'faults'> & { readonly counted: boolean })[];
  readonly all: number;
  readonly leftOut: number;
}

/** Whether the shop's store keeps what is written; it may be gone, away, or another one. */
export type Keeping =
  | { readonly ok: true }
  | { readonly ok: false; readonly code: string; readonly message: string };

export interface StoreState {
  readonly kind: 'sqlite' | 'postgres';
  readonly keeping: Keeping;
  /** the last one that was found whole */
  readonly backup: { readonly at: string; readonly file: string } | null;
}

interface JobsPage {
  readonly jobs: readonly { readonly summary: JobSummary }[];
  /** there where more jobs may follow */
  readonly beyond?: number;
}

const summariesOf = ({ jobs }: JobsPage): JobSummary[] => jobs.map(({ summary }) => summary);

export const api = {
  openJobs: async () => {
    const jobs: JobSummary[] = [];
    let page: JobsPage = await askKept('/api/jobs?state=open');
    jobs.push(...summariesOf(page));
    while (page.beyond !== undefined) {
      page = await askKept(`/api/jobs?state=open&beyond=${page.beyond}`);
      jobs.push(...summariesOf(page));
    }
    return jobs;
  },
  /** Those that were written to last. */
  handedOver: (most: number) =>
    askKept<JobsPage>(`/api/jobs?state=handed-over&order=newest+first&most=${most}`).then(summariesOf),
  find: (words: string) => ask<{ found: FoundJob[] }>(`/api/find?words=${encodeURIComponent(words)}`),
  jobCounts: () =>
    askKept<{ all: number; behind: number; handedOver: number; invented: number; greatestTag: number }>(
      '/api/jobs/counts',
    ),
  /** A job whose first line has not been sent yet has no lines in the store: that is not an error. */
  entries: (job: string) =>
    askKept<{ entries: RawEntry[] }>(`/api/jobs/${job}/entries`).then(
      (r) => r.entries,
      (error) => {
        if (error instanceof ServerError && error.status === 404) return [];
        throw error;
      },
    ),
  /** Lines that the store has just acknowledged belong to what it was last seen to hold. */
  alsoSeen: (job: string, lines: readonly RawEntry[]) =>
    seen.change<{ entries: RawEntry[] }>(`/api/jobs/${job}/entries`, ({ entries, ...rest }) => {
      const here = new Set(entries.map(({ id }) => id));
      return { ...rest, entries: [...entries, ...lines.filter(({ id }) => !here.has(id))] };
    }),
  health: () => ask<unknown>('/api/health'),
  append: (entries: readonly RawEntry[]) =>
    ask<{ stored: string[]; already: string[] }>(
      '/api/entries',
      sendJson('POST', { entries }),
      longestMs.write,
    ),
  pictureState: (sha256: string) => ask<PictureState>(`/api/pictures/${sha256}/parts`, {}, longestMs.write),
  putPart: (sha256: string, at: number, of: number, body: Uint8Array<ArrayBuffer>) =>
    ask<PictureState>(
      `/api/pictures/${sha256}/parts?at=${at}&of=${of}`,
      { method: 'PUT', body },
      longestMs.part,
    ),
  past: (without?: string) =>
    askKept<JobsTaught>(`/api/past${without === undefined ? '' : `?without=${without}`}`),
  pastJobs: () => askKept<FinishedJobs>('/api/past/jobs'),
  storeState: () => ask<StoreState>('/api/store'),
  devices: () => ask<Devices>('/api/devices'),
  hereAt: () => ask<Here>('/api/devices/here', { method: 'POST' }),
  /** The way by which this device goes on under the address at which the bench is now. */
  stepOver: () => ask<{ path: string }>('/api/devices/over', { method: 'POST' }),
  beginPairing: () => ask<PairingLinks>('/api/devices/code', { method: 'POST' }),
  withdrawCode: () => ask<unknown>('/api/devices/code', { method: 'DELETE' }),
  shutOut: (id: string) => ask<unknown>(`/api/devices/${id}`, { method: 'DELETE' }),
  loadDemo: () => ask<unknown>('/api/demo', { method: 'POST' }),
  removeDemo: () => ask<unknown>('/api/demo', { method: 'DELETE' }),
};

export const pictureUrl = (sha256: string, width?: number) =>
  `/api/pictures/${sha256}${width === undefined ? '' : `?width=${width}`}`;
export const recordUrl = (job: string, detail: 'brief' | 'full') =>
  `/api/jobs/${job}/record.pdf?detail=${detail}`;
/** The other documents of a job, by their name on the server. */
export const documentUrl = (
  job: string,
  name: 'calendar.ics' | `tables/${'measurements' | 'torques' | 'parts'}.csv`,
) => `/api/jobs/${job}/${name}`;
/** The chapters of a film that was named piece by piece, by its place among the films of a job. */
export const namedChaptersUrl = (job: string, n: number) => `/api/jobs/${job}/films/${n}/chapters.vtt`;
/** The log as the chapters of a film that ran along; ISO instants. */
export const logChaptersUrl = (job: string, { from, to }: { from: string; to: string | undefined }) =>
  `/api/jobs/${job}/chapters.vtt?${new URLSearchParams({ from, ...(to !== undefined && { to }) })}`;
/** Labels for the bags or the parts of a job, on that paper; a roll in millimeters. */
export const labelsUrl = (
  job: string,
  kind: 'bag' | 'part',
  on: { paper: LabelPaper['paper']; width: number | undefined; length: number | undefined },
) => {
  const roll = on.paper === 'roll' ? { width: String(on.width), length: String(on.length) } : {};
  return `/api/jobs/${job}/${kind}-labels.pdf?${new URLSearchParams({ paper: on.paper, ...roll })}`;
};
/** The mat to print. */
export const matUrl = (paper: MatPaper) => `/api/mat/${paper}.pdf`;
export const bundleUrl = (job: string) => `/api/jobs/${job}/bundle.zip`;
