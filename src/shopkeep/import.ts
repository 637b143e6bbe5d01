import { type RawEntry, shopLog } from '../job/index.js';
import {
  type BundleSource,
  type ImportPlan,
  jobDigest,
  type PlannedJob,
  type ReadBundle,
  RecordError,
  readBundle,
} from '../record/index.js';
import type { Store } from '../store/index.js';
import { inspectKept, keepPicture } from './keep-picture.js';
import { readEach } from './read-each.js';
import { heldAgainstStore } from './read-lines.js';
import { shownPictures } from './shown-pictures.js';

/** What a person said yes to, beyond the jobs that are not here yet. */
export interface ImportChoices {
  /** jobs that are here and may be added to */
  readonly into?: readonly string[];
  readonly shop?: boolean;
}

export interface Imported {
  readonly jobs: readonly string[];
  readonly stored: readonly string[];
  readonly already: readonly string[];
  readonly pictures: number;
  readonly sounds?: number;
  /** logs of which lines were not taken, for nobody said yes to them */
  readonly leftOut: readonly { readonly job: string; readonly lines: number }[];
}

/** A bundle that was read and looked at, of which nothing has been taken yet. */
export interface OpenedImport {
  readonly plan: ImportPlan;
  readonly take: (choices?: ImportChoices) => Promise<Imported>;
}

/** A bundle whose lines have each been read; what they say has not been held against the store. */
export interface OpenedBundle extends Pick<ReadBundle, 'pictures' | 'digest' | 'picture'> {
  readonly entries: RawEntry[];
}

/** Holds the thread until it is read. @throws RecordError, ShopkeepError when it is no bundle or breaks the rules */
export async function readBundleHere(source: Uint8Array | BundleSource): Promise<OpenedBundle> {
  const { pictures, digest, picture, entries } = await readBundle(source);
  return { pictures, digest, picture, entries: readEach(entries) };
}

/** Everything in it is looked at here. @throws ShopkeepError when it breaks the rules */
export async function openImport(store: Store, bundle: OpenedBundle): Promise<OpenedImport> {
  const entries = await heldAgainstStore(store, bundle.entries);
  await lookAtPictures(bundle);
  const logs = new Map<string, RawEntry[]>();
  for (const entry of entries) {
    const log = logs.get(entry.job);
    if (log) log.push(entry);
    else logs.set(entry.job, [entry]);
  }
  const { jobs, shopLines } = await planned(store, logs);
  return {
    plan: { jobs, shopLines, ...countsOf(bundle.pictures), digest: bundle.digest },
    take: (choices = {}) => take(store, bundle, entries, { jobs, shopLines }, choices),
  };
}

function countsOf(kept: OpenedBundle['pictures']): Pick<ImportPlan, 'pictures' | 'sounds'> {
  const sounds = kept.filter(({ mime }) => mime === 'audio/wav').length;
  return { pictures: kept.length - sounds, ...(sounds > 0 && { sounds }) };
}

const longestMs = 60_000;

/** Each must be one that a page can show. Twenty thousand that are slow to unfold would keep this computer busy for hours. */
async function lookAtPictures({ pictures, picture }: OpenedBundle): Promise<void> {
  const begun = performance.now();
  for (const { sha256 } of pictures) {
    await inspectKept(await picture(sha256));
    if (performance.now() - begun > longestMs)
      throw new RecordError(
        `The pictures of this bundle could not be looked at within ${longestMs / 1000} seconds; nothing was stored.`,
      );
  }
}

async function planned(
  store: Store,
  logs: ReadonlyMap<string, readonly RawEntry[]>,
): Promise<Pick<ImportPlan, 'jobs' | 'shopLines'>> {
  const jobs: PlannedJob[] = [];
  let shopLines = { fresh: 0, known: 0 };
  for (const [job, lines] of logs) {
    const kept = await store.entries(job);
    const ids = new Set(kept.map(({ id }) => id));
    const known = lines.filter(({ id }) => ids.has(id)).length;
    const counts = { fresh: lines.length - known, known };
    if (job === shopLog) shopLines = counts;
    else
      jobs.push({
        job,
        ...named(lines),
        ...counts,
        here: kept.length > 0,
        asKept: await isAsKept(kept, lines),
      });
  }
  return { jobs, shopLines };
}

function named(lines: readonly RawEntry[]): Pick<PlannedJob, 'tag' | 'title'> {
  const { tag, title } = (lines.find(({ kind }) => kind === 'open')?.body ?? {}) as Record<string, unknown>;
  return { ...(typeof tag === 'number' && { tag }), ...(typeof title === 'string' && { title }) };
}

async function isAsKept(kept: readonly RawEntry[], lines: readonly RawEntry[]): Promise<boolean> {
  if (kept.length < lines.length) return false;
  return (await jobDigest(kept.slice(0, lines.length))) === (await jobDigest(lines));
}

/** The pictures are kept before the lines that show them, so that a cut in between leaves no line without its picture. */
async function take(
  store: Store,
  bundle: OpenedBundle,
  entries: readonly RawEntry[],
  { jobs, shopLines }: Pick<ImportPlan, 'jobs' | 'shopLines'>,
  { into = [], shop = false }: ImportChoices,
): Promise<Imported> {
  const mayBeAddedTo = new Set(into);
  // where nothing new would come there is nothing to say yes to; a line that says otherwise is refused by the store
  const isTaken = ({ job, here, fresh }: PlannedJob) => !here || fresh === 0 || mayBeAddedTo.has(job);
  const logs = new Set(jobs.filter(isTaken).map(({ job }) => job));
  if (shop || shopLines.fresh === 0) logs.add(shopLog);
  const taken = entries.filter(({ job }) => logs.has(job));
  const shown = new Set([...logs].flatMap((job) => [...shownPictures(job, ofJob(taken, job))]));
  const wanted = bundle.pictures.filter(({ sha256 }) => shown.has(sha256));
  for (const { sha256 } of wanted) await keepPicture(store, await bundle.picture(sha256));
  const { stored, already } = await store.append(taken);
  const rest = [
    ...jobs.filter(({ job }) => !logs.has(job)).map(({ job, fresh }) => ({ job, lines: fresh })),
    ...(logs.has(shopLog) ? [] : [{ job: shopLog, lines: shopLines.fresh }]),
  ];
  const names = new Set(taken.map(({ job }) => job));
  return { jobs: [...names], stored, already, ...countsOf(wanted), leftOut: rest };
}

const ofJob = (entries: readonly RawEntry[], job: string) => entries.filter((entry) => entry.job === job);
